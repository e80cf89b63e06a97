import { expect, test } from 'vitest'
import { coolingRate } from '#lib/domain/newton.ts'
import { safeCores } from '#lib/domain/safe-core.ts'
import { coolsInTime, keepsStages } from '#lib/safety/cool.ts'
import { holdAt, holdMinutes, SFBB, Z_C } from '#lib/safety/lethality.ts'
import { alsoSaid, COOLING, REHEATING, safetyRules } from '#lib/safety/rules.ts'

// FSAI 2018 (z of Listeria 7.5 °C; abstract read); the printed set: FSA, Safer Food Better Business (quoted in several logs and courses).
test.each([
  [60, 43.1],
  [65, 9.28],
  [70, 2],
  [75, 25.9 / 60],
  [80, 5.6 / 60],
])('SF1 at %d °C %d min are worth two minutes at 70 °C where z is 7.5 °C', (celsius, minutes) => {
  const found = holdMinutes(celsius, Z_C.listeria)
  expect(found).toBeCloseTo(minutes, minutes > 1 ? 1 : 2)
  const printed = SFBB.rows.find((row) => row.celsius === celsius)?.seconds ?? 0
  // The printed set rounds up: it never asks for less.
  expect(printed).toBeGreaterThanOrEqual(Math.floor(found * 60))
})

// ACMSF, Report on the safe cooking of burgers, March 2007, Summary paragraph 3 (read): 65 °C 13.6 min, 75 °C 18 s; 60 °C 93 min (quoted).
test.each([
  [60, 93],
  [65, 13.6],
  [75, 18 / 60],
])('SF1 at %d °C %d min are worth two minutes at 70 °C where z is 6 °C', (celsius, minutes) => {
  expect(Math.abs(holdMinutes(celsius, Z_C.coli) - minutes)).toBeLessThanOrEqual(minutes * 0.03)
})

test('SF1 of the two the longer counts: below 70 °C that of E. coli, above it that of Listeria', () => {
  expect(holdAt(65).minutes).toBe(holdMinutes(65, Z_C.coli))
  expect(holdAt(75).minutes).toBe(holdMinutes(75, Z_C.listeria))
  expect(holdAt(70).minutes).toBe(2)
})

test('SF1 cooling in two stages, FDA Food Code 2022 3-501.14(A) (read in a state’s adoption): at 3 °C the one limit is met exactly as the other is', () => {
  const rate = coolingRate(COOLING.fromC, COOLING.first.toC, COOLING.first.minutes / 60, 3)
  expect(rate).toBeCloseTo(Math.log(3) / 2, 12)
  expect(keepsStages(rate, 3)).toBe(true)
  expect(keepsStages(rate * 0.99, 3)).toBe(false)
  // In a room of 20 °C nothing ever is as cold as 5.
  expect(keepsStages(5, 20)).toBe(false)
  expect(REHEATING.minutes).toBe(120)
})

test('SF1 a pot of four litres in a fridge is too slow for the two stages, a shallow box may do: common practice, no source', () => {
  expect([coolsInTime('pot'), coolsInTime('shallow box')]).toEqual(['no', 'perhaps'])
})

test('SF1 each rules has its own figures', () => {
  const figures = (rules: Parameters<typeof safetyRules>[0]) => {
    const { coldC, hotC, out, outHot, riceIntoFridge, keeps, riceKeeps, reheatC } = safetyRules(rules)
    return [coldC, hotC, out, outHot, riceIntoFridge, keeps, riceKeeps, reheatC].map(({ value }) => value)
  }
  // USDA FSIS danger zone 40–140 °F and 2 h, 1 h above 90 °F, leftovers 3–4 days and 165 °F: quoted.
  expect(figures('us')).toEqual([4, 60, 120, 60, 120, 3 * 1440, 3 * 1440, 74])
  // Food Standards Scotland fridge 0–5 °C, 2 days: read. Food Hygiene Regulations hot holding 63 °C: read. FSA rice 1 h, 24 h, SFBB 70 °C 2 min: quoted.
  expect(figures('uk')).toEqual([5, 63, 120, 60, 60, 2 * 1440, 1440, 70])
  // FSANZ 5–60 °C: quoted.
  expect(figures('au').slice(0, 3)).toEqual([5, 60, 120])
  expect(figures('strictest')).toEqual([4, 63, 120, 60, 60, 2 * 1440, 1440, 74])
  expect(figures('eu')).toEqual(figures('strictest'))
  expect(alsoSaid('uk')).toEqual(['uk-hot-two-hours', 'uk-cold-four-hours', 'scotland-party-four-hours'])
  expect(alsoSaid('au')).toEqual(['fsanz-four-hours'])
})

// FoodSafety.gov, Cook to a Safe Minimum Internal Temperature (read): the °C as printed.
test.each([
  ['whole chicken', 74, 0],
  ['minced beef', 71, 0],
  ['minced turkey', 74, 0],
  ['lamb leg', 63, 3],
  ['pork loin', 63, 3],
  ['salmon fillet', 63, 0],
  ['venison haunch', 71, 0],
])('SF1 %s is to be %d °C inside, with %d min of rest', (food, atLeastC, restMinutes) => {
  expect(safeCores([{ food, contains: [] }])[0]).toMatchObject({ atLeastC, restMinutes })
})

import { describe, expect, test } from 'vitest'
import { coolingRate, coolingTime } from '#lib/domain/newton.ts'
import { celsiusOf, fahrenheitOf, OVEN_MARKS, ovenMark } from '#lib/domain/oven-marks.ts'
import { boilMinutes, heatSeconds } from '#lib/quantities/boil.ts'
import { chillMinutes } from '#lib/quantities/chill.ts'
import { dialFor, markNear } from '#lib/quantities/heat.ts'
import { preheatMinutes } from '#lib/quantities/preheat.ts'
import { JOINTS, ROAST_RULES, roastByRule, roastMinutes } from '#lib/quantities/roast.ts'
import { ROASTS } from '#lib/quantities/roasting-rows.ts'

const LB = 0.45359237

describe('the oven dial', () => {
  test('Q9 marks 1 to 9 are 250 + 25 × mark °F (cookery tables that agree; no official standard)', () => {
    expect(OVEN_MARKS).toHaveLength(11)
    for (let mark = 1; mark <= 9; mark += 1) expect(ovenMark(String(mark))?.fahrenheit).toBe(250 + 25 * mark)
    expect(ovenMark('10')).toBeNull()
  })
  test('Q9 350 °F is 176.667 °C (exactly (350 − 32) × 5/9) and mark 4, printed 180', () => {
    expect(celsiusOf(350)).toBeCloseTo(176.6667, 4)
    expect(fahrenheitOf(celsiusOf(350))).toBeCloseTo(350, 9)
    expect(ovenMark('4')).toMatchObject({ fahrenheit: 350, printedC: 180 })
  })
  test('Q9 200 °C is 180 with a fan (NSW Health, Conversion chart: about 20 lower) and mark 6', () => {
    expect(dialFor(200)).toEqual({ still: 200, fan: 180, mark: '6', fahrenheit: 390 })
    expect(markNear(60)).toBeNull()
  })
})

describe('water to the boil', () => {
  // Q = m c ΔT with c = 4.186 kJ/(kg K), 15 → 100 °C; efficiencies attributed to US DOE, 74 FR 16040 (2009).
  test.each([
    [1, 2, 0.84, 3.53],
    [4, 2, 0.84, 14.12],
    [1, 1.8, 0.74, 4.45],
    [4, 1.8, 0.74, 17.81],
    [1, 2.6, 0.4, 5.7],
    [4, 2.6, 0.4, 22.81],
    [4, 2.6, 0.32, 28.51],
  ])('Q10 %d l at %d kW, %d of which arrives: %d min', (litres, kW, reaches, minutes) => {
    expect(heatSeconds(litres, 15, 100, kW, reaches) / 60).toBeCloseTo(minutes, 2)
  })
  test('Q10 an estimate says so, with its spread, what it assumes and its sources', () => {
    const estimate = boilMinutes({ litres: 4, hob: 'induction' })
    expect(estimate).toMatchObject({
      kind: 'estimate',
      likely: 14.1,
      assumes: { litres: 4, fromC: 15, powerKW: 2, reaches: 0.84 },
    })
    expect(estimate.least).toBeLessThan(14.1)
    expect(estimate.most).toBeGreaterThan(14.1)
    expect(estimate.sources.map((source) => source.ref)).toContain('74 FR 16040')
    expect(() => boilMinutes({ litres: 0, hob: 'gas' })).toThrow(RangeError)
    expect(boilMinutes({ litres: 4, hob: 'induction', fromC: 60 }).likely).toBeLessThan(7)
  })
})

describe('roasting', () => {
  // FoodSafety.gov, Meat and Poultry Roasting Charts, reviewed 21 September 2023; minutes a pound × pounds.
  test.each([
    ['beef rib, bone-in', 5, 115, 125, 163],
    ['lamb shoulder', 3.5, 105, 122.5, 163],
    ['pork loin', 4, 80, 80, 177],
    ['pork shoulder (butt)', 4, 180, 180, 177],
    ['chicken', 3.5, 75, 90, 177],
    ['chicken', 6, 120, 135, 177],
    ['duck', 5, 150, 175, 177],
    ['lamb leg, bone-in', 8, 80, 120, 163],
  ])('Q11 %s of %d lb: %d to %d min at %d °C (FoodSafety.gov)', (joint, lb, least, most, ovenC) => {
    const roast = roastMinutes(joint, lb * LB)
    if (!roast.ok) throw new Error(roast.error.kind)
    expect(roast.value).toMatchObject({ kind: 'estimate', least, most })
    expect(Math.round(roast.value.ovenC)).toBe(ovenC)
    expect(roast.value.sources[0]?.publisher).toBe('FoodSafety.gov')
  })
  test('Q11 a turkey of 6 kg, unstuffed: 3 to 3¾ h at 163 °C, the 12 to 14 lb row of USDA FSIS', () => {
    const roast = roastMinutes('turkey', 6)
    expect(roast.ok && roast.value).toMatchObject({ least: 180, most: 225 })
  })
  test('Q11 the least inside temperature and the rest come with it: 145 °F and 3 min, poultry 165 °F (FoodSafety.gov)', () => {
    for (const row of ROASTS)
      expect([row.coreF, row.restMinutes]).toEqual(/chick|turk|capon|duck|goose/.test(row.joint) ? [165, 0] : [145, 3])
    const lamb = roastMinutes('lamb shoulder', 3.5 * LB)
    expect(lamb.ok && lamb.value.coreC).toBeCloseTo(62.78, 2)
    for (const row of ROASTS) expect(row.ovenF).toBeGreaterThanOrEqual(325)
  })
  test('Q11 a weight outside the rows is refused with the rows, never stretched', () => {
    const roast = roastMinutes('chicken', 4.5 * LB)
    expect(roast.ok).toBe(false)
    if (!roast.ok && roast.error.kind === 'weight-outside') expect(roast.error.rows).toHaveLength(2)
    expect(roastMinutes('unicorn', 2)).toEqual({ ok: false, error: { kind: 'unknown-joint' } })
    expect(JOINTS.length).toBeGreaterThan(15)
  })
  test('Q11 where two rows meet both count', () => {
    const roast = roastMinutes('lamb leg, bone-in', 7 * LB)
    expect(roast.ok && [roast.value.least, roast.value.most]).toEqual([70, 175])
  })
  test('Q11 a chicken of 1.6 kg by 45 min a kilogram and 20: 92 min; by 20 min each 450 g: 91.1 (rules of thumb, no official source)', () => {
    const [kilo, pound] = ROAST_RULES
    if (!kilo || !pound) throw new Error('the rules are gone')
    expect(roastByRule(kilo, 1.6).likely).toBe(92)
    expect(kilo.source.standing).toBe('practice')
    expect(roastByRule(pound, 1.6).likely).toBeCloseTo(91.1, 1)
  })
})

describe('heat that comes and goes', () => {
  test("Q12 Newton's law: a cheesecake at 165 °F in 35 °F, 150 °F after 10 min, is 70 °F after 1 h 47 (OpenStax College Algebra 2e)", () => {
    const rate = coolingRate(165, 150, 10, 35)
    expect(rate).toBeCloseTo(0.01226, 4)
    expect(Math.round(coolingTime(165, 70, 35, rate) ?? 0)).toBe(107)
  })
  test('Q12 and warming: water of 40 °F in 70 °F, 45 °F after an hour, is 60 °F after about 6.026 h (OpenStax, Try It)', () => {
    expect(coolingTime(40, 60, 70, coolingRate(40, 45, 1, 70))).toBeCloseTo(6.026, 3)
  })
  test('Q12 with 3 °C around, 57 → 21 °C in 2 h and 57 → 5 °C in 6 h are one curve (54/18 = 3, 54/2 = 27 = 3³)', () => {
    const rate = coolingRate(57, 21, 2, 3)
    expect(coolingTime(57, 5, 3, rate)).toBeCloseTo(6, 9)
  })
  test('Q12 nothing gets colder than what is around it', () => {
    expect(coolingTime(60, 5, 20, 0.5)).toBeNull()
    expect(coolingTime(60, 20, 20, 0.5)).toBeNull()
    expect(coolingTime(20, 60, 10, 0.5)).toBeNull()
    expect(chillMinutes('pot', 60, 4)).toBeNull()
  })
  test('Q12 a pot chills slower than a shallow box, and both say that nobody has published it', () => {
    const [box, pot] = [chillMinutes('shallow box', 60, 8), chillMinutes('pot', 60, 8)]
    if (!box || !pot) throw new Error('never cold')
    expect(pot.least).toBeGreaterThan(box.most)
    expect(box.least).toBeLessThan(box.likely)
    expect(box.sources.map((source) => source.standing)).toContain('practice')
  })
  test('Q13 preheating by the oven that is known, else by its sort (common practice, no official source)', () => {
    expect(preheatMinutes(180, { upPerMin: 8 }).likely).toBe(20)
    expect(preheatMinutes(200, 'electric')).toMatchObject({ least: 10, most: 15 })
    expect(preheatMinutes(240, 'gas')).toMatchObject({ least: 20, most: 25 })
    expect(preheatMinutes(200, 'fan').sources[0]?.standing).toBe('practice')
    expect(() => preheatMinutes(10, 'fan')).toThrow(RangeError)
  })
})

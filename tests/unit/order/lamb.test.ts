import { describe, expect, test } from 'vitest'
import { planEvening } from '#lib/order/engine.ts'
import { loadEvening } from '#tests/support/load-evening.ts'

const lamb = loadEvening('a-lamb')
const order = planEvening(lamb, { budget: { steps: 6000, seed: 1 } })
const cueOf = (step: string) => {
  const cue = order.cues.find((one) => one.step === step)
  if (!cue) throw new Error(`no cue for ${step}`)
  return cue
}
const clock = (instant: string): string => instant.slice(11, 16)
const minutes = (instant: string): number => Number(instant.slice(11, 13)) * 60 + Number(instant.slice(14, 16))

describe('evening A, the lamb, planned for a good chance', () => {
  test('M9 O9 fact A1: the potatoes go in at 19:06 to 19:13, and are turned before both ladle', () => {
    expect(clock(cueOf('B6a').start) >= '19:06' && clock(cueOf('B6a').start) <= '19:13').toBe(true)
    expect(cueOf('B6t').end <= cueOf('A8').start).toBe(true)
  })

  test('M9 O9 fact A2: the oven has its 7 min from 155 to 205 °C', () => {
    expect(minutes(cueOf('B6a').start) - minutes(cueOf('B2').end)).toBeGreaterThanOrEqual(7)
  })

  test('M8 O9 fact A3: the lamb is out in time in at least 95 of 100 cases', () => {
    // 240/270/320 min, triangular: P(X ≤ x) = 1 − (320 − x)²/(80·50) above 270.
    const room = minutes(cueOf('B6a').start) - 7 - minutes(cueOf('B2').start)
    expect(room).toBeGreaterThan(270)
    expect(room >= 320 ? 1 : 1 - (320 - room) ** 2 / 4000).toBeGreaterThanOrEqual(0.95)
  })

  test('M8 O20 fact A3: the courses are far likelier to be on time than just-in-time they are', () => {
    const quick = planEvening(lamb, { budget: { steps: 6000, seed: 1 }, quick: true })
    const least = (of: typeof order) => Math.min(...of.courses.map(({ onTime }) => onTime ?? 0))
    expect(least(order)).toBeGreaterThan(0.8)
    expect(least(order)).toBeGreaterThan(least(quick))
  })

  test('C5 O9 towards fact A4 (17 min): once the soup is on the table all sit for at least ten', () => {
    const [soup, meat] = order.courses.map(({ toTable }) => minutes(toTable))
    const up = order.cues.filter(
      ({ cooks, start, end }) =>
        cooks.length > 0 && minutes(start) < (meat ?? 0) && minutes(end) > (soup ?? 0) && start >= '2026-11-07',
    )
    expect(up.length).toBeGreaterThan(0)
    for (const { step, start } of up) expect(minutes(start) - (soup ?? 0), step).toBeGreaterThanOrEqual(10)
  })

  test('M9 O9 fact A5: gravy and cheese-out are done before 19:45', () => {
    for (const step of ['B12', 'C1']) expect(clock(cueOf(step).end) <= '19:45', step).toBe(true)
  })

  test('O9 fact A6: bowls are warmed in the sink, not in the oven', () => {
    expect(cueOf('A7').kit.map(({ id }) => id)).not.toContain('oven')
    expect(cueOf('A7').kit.length).toBe(1)
    expect(order.clashes).toEqual([])
  })
})

import { describe, expect, test } from 'vitest'
import { DEFAULT_BUDGET, planEvening } from '#lib/order/engine.ts'
import { loadEvening } from '#tests/support/load-evening.ts'

const lamb = loadEvening('a-lamb')
const order = planEvening(lamb, { budget: DEFAULT_BUDGET })
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

  test('M8 O9 fact A3: the lamb goes in at 13:50 to 14:00, and is out in time in at least 95 of 100 cases', () => {
    expect(clock(cueOf('B2').start) >= '13:50' && clock(cueOf('B2').start) <= '14:00', cueOf('B2').start).toBe(true)
    // 240/270/320 min, triangular: P(X ≤ x) = 1 − (320 − x)²/(80·50) above 270.
    const room = minutes(cueOf('B6a').start) - 7 - minutes(cueOf('B2').start)
    expect(room).toBeGreaterThan(270)
    expect(room >= 320 ? 1 : 1 - (320 - room) ** 2 / 4000).toBeGreaterThanOrEqual(0.95)
  })

  test('M8 O20 fact A3: the courses are far likelier to be on time than just-in-time they are', () => {
    const quick = planEvening(lamb, { budget: DEFAULT_BUDGET, quick: true })
    const least = (of: typeof order) => Math.min(...of.courses.map(({ onTime }) => onTime ?? 0))
    expect(least(order)).toBeGreaterThan(0.75)
    expect(least(order)).toBeGreaterThan(least(quick))
  })

  test('C5 M9 O9 fact A4: nobody is in the kitchen from 19:45 to 20:02', () => {
    const onTheDay = (time: string) => `${lamb.date}T${time}:00`
    const hands = order.cues.flatMap(({ step, cooks, start, end, touches }) => [
      ...(cooks.length > 0 ? [{ step, start, end }] : []),
      ...touches.map(({ at }) => ({ step, start: at, end: at })),
    ])
    const between = (from: string, to: string) =>
      hands.filter(({ start, end }) => start < onTheDay(to) && end > onTheDay(from)).map(({ step }) => step)
    expect(between('19:46', '20:02')).toEqual([])
    expect(between('20:02', '20:16')).toContain('B13')
    for (const { sits } of order.cooks)
      expect(sits.some(({ from, to }) => clock(from) === '19:45' && clock(to) >= '20:02')).toBe(true)
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

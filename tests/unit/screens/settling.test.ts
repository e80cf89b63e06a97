import { expect, test } from 'vitest'
import { couldBeDone } from '#app/_order/ahead.ts'
import { doings } from '#app/_order/picture/doings.ts'
import { movesOf } from '#app/_order/use-settling.ts'
import { zoomBy, zoomsOf } from '#app/_order/zoom.ts'
import { dayOf } from '#app/_words/clock.ts'
import { namesOf } from '#app/_words/names.ts'
import { planEvening } from '#lib/order/engine.ts'
import { loadEvening } from '#tests/support/load-evening.ts'
import { planned } from './planned.ts'

test('U20 the zoom goes step by step and stays at its ends; without days ahead it begins with the evening', () => {
  const all = zoomsOf(true)
  expect(all).toEqual(['days', 'evening', 'hour', 'ten'])
  expect(zoomsOf(false)).toEqual(['evening', 'hour', 'ten'])
  expect(zoomBy(all, 'evening', 1)).toBe('hour')
  expect(zoomBy(all, 'evening', -1)).toBe('days')
  expect(zoomBy(all, 'ten', 1)).toBe('ten')
  expect(zoomBy(zoomsOf(false), 'evening', -1)).toBe('evening')
})

test('U22 what moved is what begins at another moment or is new, and for a minute', () => {
  const evening = loadEvening('a-lamb')
  const { order, names } = planned(evening)
  const before = doings(order, names)
  expect(movesOf(before, before, new Map(), 0).size).toBe(0)
  const [first, second] = before
  if (!first || !second) throw new Error('evening A has steps')
  const after = [{ ...first, from: first.from + 60_000 }, second, { ...second, key: 'another' }, ...before.slice(2)]
  const moved = movesOf(before, after, new Map(), 1_000)
  expect([...moved]).toEqual([
    [first.key, 61_000],
    ['another', 61_000],
  ])
  expect([...movesOf(after, after, moved, 60_999).keys()]).toEqual([first.key, 'another'])
  expect(movesOf(after, after, moved, 61_000).size).toBe(0)
})

test('U23 what is said to be possible on a day ahead can be planned there, with no more clashes than before', () => {
  const evening = loadEvening('a-lamb')
  const { order } = planned(evening)
  const could = couldBeDone(evening, order, -1)
  expect(could.length).toBeGreaterThan(0)
  for (const cue of could) {
    const steps = evening.steps.map((step) =>
      step.id === cue.step ? { ...step, earliest: { day: -1, time: '00:00' }, latest: { day: -1, time: '23:59' } } : step,
    )
    const moved = { ...evening, steps }
    const again = planEvening(moved, { budget: { steps: 400, seed: 1 } })
    const placed = again.cues.filter((each) => each.step === cue.step)
    expect(placed.length, namesOf(moved).stepName(cue.step)).toBeGreaterThan(0)
    for (const each of placed) expect(dayOf(moved, each.end)).toBe(-1)
    expect(again.clashes.length).toBeLessThanOrEqual(order.clashes.length)
  }
})

test('U23 nothing is said to be possible on a day that its method, its keeping or its cook rules out', () => {
  const evening = loadEvening('a-lamb')
  const { order } = planned(evening)
  const names = (steps: readonly string[]) => steps.map((id) => evening.steps.find((step) => step.id === id)?.role)
  expect(names(couldBeDone(evening, order, -1).map((cue) => cue.step))).not.toContain('plate')
  expect(
    couldBeDone(
      {
        ...evening,
        cooks: evening.cooks.map((cook) => ({ ...cook, presence: cook.presence.filter(({ from }) => from.day === 0) })),
      },
      order,
      -1,
    ),
  ).toEqual([])
  const never = evening.steps.map((step) => ({ ...step, earliest: { day: 0, time: '08:00' } }))
  expect(couldBeDone({ ...evening, steps: never }, order, -1)).toEqual([])
})

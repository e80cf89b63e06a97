import { expect, test } from 'vitest'
import { lastMinuteMinutes, lastMinutesOfCooks } from '#app/_order/last-minute.ts'
import { seatedOf } from '#app/_order/seated.ts'
import { minutesOf } from '#lib/domain/duration.ts'
import type { Evening } from '#lib/domain/evening.ts'
import { randomEvening } from '#tests/support/random-evening.ts'
import { planned } from './planned.ts'

const SHORTEST_SIT_MIN = 3

test('P13 who sits, who is up and what they miss fill the time between the first course and the last', () => {
  let cooks = 0
  for (const seed of [1, 4, 6]) {
    const { evening, order } = planned(randomEvening(seed))
    const seated = seatedOf(evening, order)
    const minutes = (seated.to - seated.from) / 60_000
    for (const { missed, sits, ups } of seated.cooks) {
      cooks += 1
      const sum = (all: typeof sits) => all.reduce((total, { from, to }) => total + (to - from) / 60_000, 0)
      expect(sum(sits) + sum(ups)).toBeCloseTo(minutes)
      // Gaps that are too short to sit down in are no minutes missed.
      expect(sum(ups)).toBeGreaterThanOrEqual(missed - 1e-9)
      expect(sum(ups) - missed).toBeLessThan(SHORTEST_SIT_MIN * (order.cues.length + 1))
      for (const [at, up] of ups.entries()) expect(up.from).toBeGreaterThan(ups[at - 1]?.to ?? Number.NEGATIVE_INFINITY)
    }
  }
  expect(cooks).toBeGreaterThan(3)
})

test('P13 a cook who does not eat has no seat, and the drawing keeps to the order when the plan has moved on', () => {
  const { evening, order } = planned(randomEvening(4))
  const [first] = evening.cooks
  const changed: Evening = {
    ...evening,
    cooks: evening.cooks.map((cook) => (cook === first ? { ...cook, eats: false } : cook)),
    steps: evening.steps.map((step) => ({ ...step, where: 'table' })),
  }
  const [before, after] = [seatedOf(evening, order), seatedOf(changed, order)]
  expect(after.cooks).toEqual(before.cooks.filter(({ cook }) => cook !== first?.id))
  expect(seatedOf({ ...evening, courses: [] }, { ...order, courses: [] })).toMatchObject({ from: 0, to: 0 })
  for (const { cook, missed } of before.cooks)
    expect(missed).toBe(minutesOf(order.cooks.find((one) => one.cook === cook)?.missed ?? ''))
})

test('P13 the last minutes of a cook are at most a quarter of an hour a course, and no more than those of its dishes', () => {
  const { evening, order, names } = planned(randomEvening(6))
  const byDish = lastMinuteMinutes(order, names)
  const courses = lastMinutesOfCooks(order, names)
  expect(courses.length).toBeGreaterThan(0)
  for (const { course, cooks } of courses) {
    const dishes = evening.dishes.filter((dish) => dish.course === course)
    const ofDishes = dishes.reduce((sum, { id }) => sum + (byDish.get(id) ?? 0), 0)
    const longest = Math.max(...dishes.map(({ id }) => byDish.get(id) ?? 0))
    const sum = cooks.reduce((total, { minutes }) => total + minutes, 0)
    expect(sum).toBeLessThanOrEqual(ofDishes + 1e-9)
    expect(sum).toBeGreaterThanOrEqual(Math.min(15, longest / evening.cooks.length))
    for (const { minutes } of cooks) expect(minutes).toBeLessThanOrEqual(15)
    expect(cooks.map(({ minutes }) => minutes)).toEqual(cooks.map(({ minutes }) => minutes).toSorted((a, b) => b - a))
  }
})

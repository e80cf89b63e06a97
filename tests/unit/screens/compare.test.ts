import { expect, test } from 'vitest'
import { comparedText } from '#app/_words/compare.ts'
import { movesBetween, moveText } from '#app/_words/moves.ts'
import type { Clash, RunningOrder } from '#lib/domain/running-order.ts'
import { instantOfMs } from '#lib/domain/time.ts'
import { loadEvening } from '#tests/support/load-evening.ts'
import { planned } from './planned.ts'

const { evening, order, names } = planned(loadEvening('a-lamb'))
const later = (instant: string, minutes: number) => instantOfMs(evening, Date.parse(instant) + minutes * 60_000)
const changed = (more: Partial<RunningOrder>): RunningOrder => ({ ...order, ...more })

const clash = (by: string, more: Partial<Clash> = {}): Clash => ({
  kind: 'keeps',
  steps: [],
  dish: evening.dishes[0]?.id ?? null,
  course: null,
  kit: null,
  from: order.origin,
  to: order.origin,
  by,
  ways: [],
  ...more,
})

test('U26 an order against itself is the same', () => {
  expect(comparedText(order, order, names)).toEqual({ better: [], worse: [], moved: null, same: true })
})

test('U26 a course, a cook and hosts away are compared by the minute, and less than a minute is not said', () => {
  const [first, second, ...rest] = order.courses
  const [kim, ...others] = order.cooks
  if (!first || !second || !kim) throw new Error('the evening has two courses and a cook')
  const base = changed({ cooks: [{ ...kim, missed: 'PT10M' }, ...others], allHostsAway: 'PT5M' })
  const after = {
    ...base,
    courses: [first, { ...second, toTable: later(second.toTable, 8) }, ...rest],
    cooks: [{ ...kim, missed: 'PT4M' }, ...others.map((cook) => ({ ...cook, missed: cook.missed }))],
    allHostsAway: 'PT5M30S',
  }
  expect(comparedText(base, after, names)).toEqual({
    better: [`${names.cookName(kim.cook)} is up 6 min less`],
    worse: [`${names.courseName(second.course)} to table 8 min later`],
    moved: null,
    same: false,
  })
  expect(comparedText(after, base, names).worse).toEqual([`${names.cookName(kim.cook)} is up 6 min more`])
})

test('U26 courses that move together are said together, and one that is not served is worse', () => {
  const all = order.courses.map((course) => ({ ...course, toTable: later(course.toTable, 15) }))
  const [said] = comparedText(order, changed({ courses: all }), names).worse
  for (const { course } of order.courses) expect(said).toContain(names.courseName(course))
  expect(said).toContain('to table 15 min later')
  const [first] = order.courses
  expect(comparedText(order, changed({ courses: order.courses.slice(1) }), names).worse).toContain(
    `${names.courseName(first?.course ?? '')} is not served`,
  )
})

test('U26 a clash is gone, new, less or more, told apart by what it is of and not by when it is', () => {
  const dish = names.dishName(evening.dishes[0]?.id ?? '')
  const [without, small, great] = [
    changed({ clashes: [] }),
    changed({ clashes: [clash('PT5M')] }),
    changed({ clashes: [clash('PT9M')] }),
  ]
  const moved = changed({ clashes: [clash('PT5M', { from: later(order.origin, 30) })] })
  expect(comparedText(small, without, names).better).toEqual([`The clash about ${dish} is gone`])
  expect(comparedText(without, small, names).worse).toEqual([`A new clash about ${dish}, of 5 min`])
  expect(comparedText(great, small, names).better).toEqual([`The clash about ${dish} is 4 min less`])
  expect(comparedText(small, great, names).worse).toEqual([`The clash about ${dish} is 4 min more`])
  expect(comparedText(small, moved, names).same).toBe(true)
})

test('U26 a chance is said when it differs by two evenings in twenty', () => {
  const chance = (onTime: number | null) => changed({ courses: order.courses.map((course) => ({ ...course, onTime })) })
  expect(comparedText(chance(0.9), chance(0.81), names).same).toBe(true)
  expect(comparedText(chance(null), chance(0.2), names).same).toBe(true)
  expect(comparedText(chance(0.95), chance(0.75), names).worse[0]).toContain('is on time 15 evenings in 20 instead of 19')
})

test('U26 a step that begins elsewhere, goes to another cook or is left out has moved', () => {
  const [cue, ...rest] = order.cues
  const other = evening.cooks.find(({ id }) => !cue?.cooks.includes(id))
  if (!cue || !other) throw new Error('there is a cue and another cook')
  const said = (cues: RunningOrder['cues']) =>
    movesBetween(order, changed({ cues })).map((move) => moveText(move, names, evening.zone))
  const name = names.stepName(cue.step)
  const half = { ...cue, start: later(cue.start, 0.5), end: later(cue.end, 0.5) }
  expect(said([half, ...rest])).toEqual([])
  const sooner = { ...cue, start: later(cue.start, -20), end: later(cue.end, -20) }
  expect(said([sooner, ...rest])[0]).toMatch(new RegExp(`^“${name}” at \\d\\d:\\d\\d instead of \\d\\d:\\d\\d\\.$`))
  expect(said([{ ...cue, cooks: [other.id] }, ...rest])[0]).toContain(`by ${other.name} instead of`)
  expect(said(rest)).toEqual([`“${name}” is left out.`])
  expect(comparedText(order, changed({ cues: rest }), names).moved).toBe('One step moves.')
})

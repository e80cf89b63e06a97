import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { sameProblem } from '#app/_sync/same-problem.ts'
import type { Evening } from '#lib/domain/evening.ts'
import { parseEvening } from '#lib/domain/parse.ts'
import { problemHash } from '#lib/order/hash.ts'

const lamb = (): Evening => {
  const read = parseEvening(JSON.parse(readFileSync(new URL('../../support/evenings/a-lamb.json', import.meta.url), 'utf8')))
  if (!read.ok) throw new Error('evening A is not an evening')
  return read.value
}

const said = 'Said otherwise'
const words: Readonly<Record<string, (evening: Evening) => Evening>> = {
  'the evening’s name': (evening) => ({ ...evening, name: said }),
  'a kitchen’s name': (evening) => ({ ...evening, kitchens: evening.kitchens.map((one) => ({ ...one, name: said })) }),
  'a cook’s name': (evening) => ({ ...evening, cooks: evening.cooks.map((one) => ({ ...one, name: said })) }),
  'a course’s name and service': (evening) => ({
    ...evening,
    courses: evening.courses.map((one) => ({ ...one, name: said, service: 'platters' })),
  }),
  'a dish’s name, notes and source': (evening) => ({
    ...evening,
    dishes: evening.dishes.map((one) => ({ ...one, name: said, notes: said, source: 'https://example.org/' })),
  }),
  'what a step does and how it is known to be done': (evening) => ({
    ...evening,
    steps: evening.steps.map((one) => ({ ...one, does: said, until: { sign: said } })),
  }),
  'a drink': (evening) => ({
    ...evening,
    drinks: [{ id: 'tea', course: evening.courses[0]?.id ?? '', order: 'a0', name: said, role: 'without', mlEach: 200, abv: 0 }],
  }),
}

test.each(Object.entries(words))('%s is words: the problem stays the same', (_name, change) => {
  const before = lamb()
  const after = change(lamb())
  expect(after).not.toEqual(before)
  expect(sameProblem(before, after)).toBe(true)
  expect(problemHash(after)).toBe(problemHash(before))
})

const deeds: Readonly<Record<string, (evening: Evening) => Evening>> = {
  'when the guests sit down': (evening) => ({ ...evening, sitDown: { day: 0, time: '20:10' } }),
  'the date': (evening) => ({ ...evening, date: '2026-11-21' }),
  covers: (evening) => ({ ...evening, covers: evening.covers + 1 }),
  'a cook’s hours': (evening) => ({
    ...evening,
    cooks: evening.cooks.map((one) => ({ ...one, presence: one.presence.slice(1) })),
  }),
  'a step less': (evening) => ({ ...evening, steps: evening.steps.slice(1) }),
  'how long a step takes': (evening) => ({
    ...evening,
    steps: evening.steps.map((one) => ({
      ...one,
      ways: one.ways.map((way) => ({ ...way, takes: { least: 'PT9M', likely: 'PT9M', most: 'PT9M' } })),
    })),
  }),
  'a claim': (evening) => ({ ...evening, claims: [{ target: evening.dishes[0]?.id ?? '', cook: evening.cooks[0]?.id ?? '' }] }),
}

test.each(Object.entries(deeds))('%s is not words', (_name, change) => {
  expect(sameProblem(lamb(), change(lamb()))).toBe(false)
})

test('two readings of one plan are the same', () => {
  expect(sameProblem(lamb(), lamb())).toBe(true)
})

import { expect, test } from 'vitest'
import { swapped, takeTurns } from '#app/_cooks/turns.ts'
import { checkEvening } from '#lib/domain/check.ts'
import { parseEvening, printEvening } from '#lib/domain/parse.ts'
import { setBusy } from '#lib/plan/commands/presence.ts'
import { setEvening, setFields } from '#lib/plan/commands/set.ts'
import { readPlan } from '#lib/plan/read.ts'
import { openUndo } from '#lib/plan/undo.ts'
import { coverage } from '#lib/table/coverage.ts'
import { at, cook, course, courseWith, dish, evening, min, step } from '#tests/support/evening-builders.ts'
import { planOf } from './open-plan.ts'

const made = evening(
  course('nibbles', courseWith({ welcome: true }), dish('olives', step('put-out', 2))),
  course('tea', courseWith({ welcome: true, children: { at: at('18:00'), covers: 3 } }), dish('pasta', step('boil', 12))),
  course('main', courseWith({ lead: 'kim', hosts: 'lou' }), dish('roast', step('cook', 60))),
  course('sweet', dish('tart', step('cut', 4))),
  {
    quietBefore: min(25),
    cooks: [
      cook('kim', undefined, { drinks: true }),
      cook('lou', undefined, { busy: [{ name: 'Bedtime', from: at('19:00'), to: at('19:25') }] }),
    ],
  },
)

test('L1 D5 what a couple says reads back as it was, and is left out where nothing is said', () => {
  const { evening: read, reports } = readPlan(planOf(made))
  expect([read, reports]).toEqual([made, []])
  expect(parseEvening(JSON.parse(printEvening(made)))).toEqual({ ok: true, value: made })
  const plain = evening(course('main', dish('roast', step('cook', 60))))
  expect(Object.keys(readPlan(planOf(plain)).evening).toSorted()).toEqual(Object.keys(plain).toSorted())
})

test('G10 quiet minutes and what keeps a cook are set, taken away and undone; what ends before it begins is refused', () => {
  const doc = planOf(made)
  const undo = openUndo(doc)
  expect(undo.edit((plan) => setEvening(plan, { quietBefore: undefined }))).toMatchObject({ ok: true })
  expect('quietBefore' in readPlan(doc).evening).toBe(false)
  undo.undo()
  expect(readPlan(doc).evening.quietBefore).toBe(min(25))
  const backwards = [{ name: 'Bedtime', from: at('19:30'), to: at('19:00') }]
  expect(undo.edit((plan) => setBusy(plan, 'lou', backwards))).toMatchObject({ ok: false, error: { kind: 'refused' } })
  expect(undo.edit((plan) => setBusy(plan, 'lou', []))).toMatchObject({ ok: true })
  expect(readPlan(doc).evening.cooks.map((one) => 'busy' in one)).toEqual([false, false])
})

test('C25 D3 children eat before everybody sits: a course that says otherwise is refused, and read as an ordinary one', () => {
  const late = { at: at('20:00'), covers: 2 }
  const paths = (of: typeof made) => checkEvening(of).map(({ path }) => path)
  const tea = (fields: object) => ({
    ...made,
    courses: made.courses.map((one) => (one.id === 'tea' ? { ...one, ...fields } : one)),
  })
  expect(paths(made)).toEqual([])
  expect(paths(tea({ children: late }))).toEqual(['courses[1].children.at'])
  expect(paths(tea({ welcome: undefined }))).toEqual(['courses[1].children'])
  const doc = planOf(made)
  setFields(doc, 'courses', 'tea', { children: late })
  const { evening: read, reports } = readPlan(doc)
  expect(read.courses.find(({ id }) => id === 'tea')).not.toHaveProperty('children')
  expect([checkEvening(read), reports.length]).toEqual([[], 2])
})

test('G11 turns alternate over the courses at the table, and nobody both leads and hosts', () => {
  expect(takeTurns(made, ['kim', 'lou'])).toEqual([
    ['main', { lead: 'kim', hosts: 'lou' }],
    ['sweet', { lead: 'lou', hosts: 'kim' }],
  ])
  const [main] = made.courses.filter(({ id }) => id === 'main')
  expect(main && swapped(main)).toEqual({ lead: 'lou', hosts: 'kim' })
})

test('C25 who can eat what of the children’s course is asked of the children; of everybody while none is known', () => {
  const eater = (id: string, child: boolean) => ({ id, child, reply: 'yes' as const, needs: [], drinks: 'unknown' as const })
  const of = (...eaters: ReturnType<typeof eater>[]) =>
    coverage(made, eaters).map(({ course: id, guests }) => [id, guests.map(({ guest }) => guest)])
  expect(of(eater('ida', true), eater('ada', false))).toEqual([
    ['nibbles', ['ida', 'ada']],
    ['tea', ['ida']],
    ['main', ['ida', 'ada']],
    ['sweet', ['ida', 'ada']],
  ])
  expect(of(eater('ada', false))[1]).toEqual(['tea', ['ada']])
})

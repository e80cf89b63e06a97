import { expect, test } from 'vitest'
import { parseEvening } from '#lib/domain/parse.ts'
import { problemHash } from '#lib/order/hash.ts'
import { remove } from '#lib/plan/commands/remove.ts'
import { setFields } from '#lib/plan/commands/set.ts'
import { readPlan } from '#lib/plan/read.ts'
import * as make from '#tests/support/evening-builders.ts'
import { planOf } from './open-plan.ts'

const dinner = make.evening(
  make.course('first', make.dish('soup', make.step('stir', 10)), make.courseWith({ lead: 'kim', pours: 'kim', clears: 'lou' })),
  make.course('second', make.dish('roast', make.step('carve', 10))),
  { cooks: [make.cook('kim'), make.cook('lou')] },
)

test('G3 who leads, pours and clears is kept, can be changed and taken away, and nobody unknown is let in from a file', () => {
  const doc = planOf(dinner)
  expect(readPlan(doc).evening.courses[0]).toMatchObject({ lead: 'kim', pours: 'kim', clears: 'lou' })
  expect(setFields(doc, 'courses', 'second', { pours: 'lou' })).toMatchObject({ ok: true })
  expect(setFields(doc, 'courses', 'first', { clears: undefined })).toMatchObject({ ok: true })
  const [first, second] = readPlan(doc).evening.courses
  expect(second?.pours).toBe('lou')
  expect(first).not.toHaveProperty('clears')
  for (const part of ['lead', 'pours', 'clears'])
    expect(parseEvening({ ...dinner, courses: dinner.courses.map((course) => ({ ...course, [part]: 'nobody' })) })).toMatchObject(
      {
        ok: false,
        error: [{ path: `courses[0].${part}`, kind: 'unknown-id' }, { path: `courses[1].${part}` }],
      },
    )
})

test('G3 a cook who is gone leads, pours and clears nothing, and no order depends on who pours and clears', () => {
  const doc = planOf(dinner)
  remove(doc, 'cooks', 'lou')
  const { evening } = readPlan(doc)
  expect(evening.courses[0]).toMatchObject({ lead: 'kim', pours: 'kim' })
  expect(evening.courses[0]).not.toHaveProperty('clears')
  expect(parseEvening(evening)).toMatchObject({ ok: true })
  const bare = { ...dinner, courses: dinner.courses.map(({ pours: _pours, clears: _clears, ...course }) => course) }
  expect(problemHash(bare)).toBe(problemHash(dinner))
  expect(problemHash({ ...bare, courses: bare.courses.map(({ lead: _lead, ...course }) => course) })).not.toBe(
    problemHash(dinner),
  )
})

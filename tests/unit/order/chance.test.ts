import { expect, test } from 'vitest'
import { msOfInstant } from '#lib/domain/time.ts'
import { planEvening } from '#lib/order/engine.ts'
import { course, dish, evening, follows, leave, role, step } from '#tests/support/evening-builders.ts'

const dinner = (night: Parameters<typeof evening>[0]) =>
  evening(
    night,
    course(
      'main',
      dish('pie', step('bake', [20, 30, 60], leave), step('plate', [4, 5, 6], follows('bake', 0, 20), role('plate'))),
    ),
    course('sweet', dish('ice', step('scoop', [4, 5, 6], role('plate')))),
  )

test('O20 each course tells its chance, who decides it, and until when it can wait', () => {
  const order = planEvening(dinner({}), { budget: { steps: 100, seed: 1 }, quick: true })
  const [main, sweet] = order.courses
  expect(main?.onTime).toBeGreaterThan(0)
  expect(main?.onTime).toBeLessThan(1)
  expect(main?.decidedBy).toBe('bake')
  expect(sweet?.onTime).not.toBeNull()
  for (const { toTable, waitFreeUntil } of order.courses)
    expect(msOfInstant(waitFreeUntil ?? '')).toBeGreaterThanOrEqual(msOfInstant(toTable))
})

test('O20 what has been served has no chance any more and cannot wait', () => {
  const before = planEvening(dinner({}), { budget: { steps: 100, seed: 1 }, quick: true })
  const toTable = before.courses[0]?.toTable ?? ''
  const of = dinner({ night: [{ course: 'main', toTable, by: 'kim' }] })
  const [main, sweet] = planEvening(of, { budget: { steps: 100, seed: 1 }, now: toTable, quick: true }).courses
  expect(main).toMatchObject({ onTime: null, decidedBy: null, waitFreeUntil: null })
  expect(sweet?.onTime).not.toBeNull()
})

import { expect, test } from 'vitest'
import { msOfInstant } from '#lib/domain/time.ts'
import { planEvening } from '#lib/order/engine.ts'
import { cook, course, dish, dishWith, evening, follows, leave, min, role, step } from '#tests/support/evening-builders.ts'

const keeps = (most: number) => dishWith({ keeps: { how: 'hot', most: min(most), kind: 'quality', uses: [] } })

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

// Hot pie keeps for ten minutes from its plate, the cook goes at 21:00, and the ice is not far behind.
test('O21 a course tells what gives first beyond its free wait, and until when', () => {
  const of = evening(
    { cooks: [cook('kim', ['home 12:00 21:00'])] },
    course('main', dish('pie', keeps(10), step('bake', 30), step('plate', 5, follows('bake', 0, 20), role('plate')))),
    course('sweet', dish('ice', keeps(600), step('scoop', 5, role('plate')))),
  )
  const [main, sweet] = planEvening(of, { budget: { steps: 300, seed: 1 } }).courses
  expect(main?.waitBeyond?.suffers).toEqual([{ kind: 'dish', dish: 'pie' }])
  expect(msOfInstant(main?.waitBeyond?.until ?? '')).toBeGreaterThan(msOfInstant(main?.waitFreeUntil ?? ''))
  expect(sweet?.waitBeyond).toEqual({ suffers: [{ kind: 'cook', cook: 'kim' }], until: null })
})

test('O20 what has been served has no chance any more and cannot wait', () => {
  const before = planEvening(dinner({}), { budget: { steps: 100, seed: 1 }, quick: true })
  const toTable = before.courses[0]?.toTable ?? ''
  const of = dinner({ night: [{ course: 'main', toTable, by: 'kim' }] })
  const [main, sweet] = planEvening(of, { budget: { steps: 100, seed: 1 }, now: toTable, quick: true }).courses
  expect(main).toMatchObject({ onTime: null, decidedBy: null, waitFreeUntil: null })
  expect(sweet?.onTime).not.toBeNull()
})

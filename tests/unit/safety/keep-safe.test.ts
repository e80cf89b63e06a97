import { expect, test } from 'vitest'
import type { Evening } from '#lib/domain/evening.ts'
import type { SafeFix } from '#lib/domain/safe-fix.ts'
import { planEvening } from '#lib/order/engine.ts'
import { keepSafe } from '#lib/plan/commands/keep-safe.ts'
import { putChore } from '#lib/plan/commands/put-chore.ts'
import { remove } from '#lib/plan/commands/remove.ts'
import { setFields } from '#lib/plan/commands/set.ts'
import { readPlan } from '#lib/plan/read.ts'
import { safetyOf, softLimits } from '#lib/safety/safety-of.ts'
import { course, dish, evening, eye, follows, oven, ring, role, step } from '#tests/support/evening-builders.ts'
import { copyOf, exchange, planOf } from '#tests/unit/plan/open-plan.ts'
import { food } from './by-hand.ts'

/** Beans are simmered in the morning, for that is when there is time, and baked in the evening. */
const beans = (): Evening =>
  evening(
    course(
      'main',
      dish(
        'beans',
        step('simmer', 30, eye, ring('medium'), (each) => ({ ...each, latest: { day: 0, time: '14:00' } })),
        step('bake', 30, follows('simmer'), oven(180, 200), (each) => ({ ...each, earliest: { day: 0, time: '18:00' } })),
        step('plate', 4, follows('bake', 0, 5), role('plate')),
      ),
    ),
    { ingredients: [food('beans', 'simmer', 'white beans from a tin')] },
  )
const planned = (plan: Evening) => planEvening(plan, { budget: { steps: 300, seed: 1 }, quick: true })
const outs = (plan: Evening) => safetyOf(plan, planned(plan)).filter(({ kind }) => kind === 'out')

test('SF5 the fridge that is offered, taken as one edit, is planned by the engine and the finding is gone', () => {
  const plan = beans()
  const [out] = outs(plan)
  expect(out).toMatchObject({ weight: 'beyond', stage: 'before-heat' })
  const fix = out?.kind === 'out' ? out.fixes.find(({ kind }) => kind === 'fridge') : undefined
  if (!fix) throw new Error('no fridge was offered')
  const doc = planOf(plan)
  let updates = 0
  doc.on('update', () => {
    updates += 1
  })
  expect(doc.transact(() => keepSafe(doc, fix, { id: 'cold', does: 'Keep the beans cold' }))).toMatchObject({ ok: true })
  expect(updates).toBe(1)
  const { evening: kept, reports } = readPlan(doc)
  expect(reports).toEqual([])
  const order = planned(kept)
  expect(order.clashes).toEqual([])
  expect(order.cues.map((cue) => cue.step)).toContain('cold')
  expect(outs(kept)).toEqual([])
})

test('SF5 the fridge is put in whole or not at all: not before a step that waits for too many others', () => {
  const plan = beans()
  const doc = planOf(plan)
  const lag = { step: 'simmer', from: 'start', least: 'PT0S', kind: 'quality' } as const
  expect(setFields(doc, 'steps', 'bake', { after: Array.from({ length: 20 }, () => lag) }).ok).toBe(true)
  const fix: SafeFix = { kind: 'fridge', after: 'simmer', before: 'bake', minutes: 120 }
  expect(keepSafe(doc, fix, { id: 'cold', does: 'Keep the beans cold' }).ok).toBe(false)
  expect(readPlan(doc).evening.steps.map(({ id }) => id)).not.toContain('cold')
})

test('SF5 a limit is hard in the engine: where it cannot be kept the step is left out and named, never served late', () => {
  const plan = beans()
  const fix: SafeFix = { kind: 'limit', step: 'bake', after: 'simmer', from: 'end', minutes: 120 }
  const doc = planOf(plan)
  expect(keepSafe(doc, fix, { id: 'x', does: '' })).toMatchObject({ ok: true })
  const hard = readPlan(doc).evening
  expect(hard.steps.find(({ id }) => id === 'bake')?.after).toEqual([
    { step: 'simmer', from: 'end', least: 'PT0S', most: 'PT2H', kind: 'safety' },
  ])
  expect(planned(hard).clashes.map(({ kind }) => kind)).toContain('safety')
})

test('SF5 a shorter wish stays a wish beside the limit, a longer wait than the limit is refused', () => {
  const plan = evening(
    course(
      'main',
      dish(
        'soup',
        step('boil', 20, eye, ring('medium')),
        step('blend', 5, follows('boil', 10, 30)),
        step('sit', 5, follows('blend', 180)),
      ),
    ),
  )
  const doc = planOf(plan)
  const limit = (of: string, after: string): SafeFix => ({ kind: 'limit', step: of, after, from: 'end', minutes: 120 })
  expect(keepSafe(doc, limit('blend', 'boil'), { id: 'x', does: '' })).toMatchObject({ ok: true })
  expect(readPlan(doc).evening.steps.find(({ id }) => id === 'blend')?.after).toEqual([
    { step: 'boil', from: 'end', least: 'PT10M', most: 'PT30M', kind: 'quality' },
    { step: 'boil', from: 'end', least: 'PT0S', most: 'PT2H', kind: 'safety' },
  ])
  expect(keepSafe(doc, limit('sit', 'blend'), { id: 'x', does: '' })).toMatchObject({ ok: false, error: { kind: 'refused' } })
  expect(keepSafe(doc, limit('sit', 'nobody'), { id: 'x', does: '' })).toMatchObject({ ok: false })
  expect(keepSafe(doc, { kind: 'keep', dish: 'soup', minutes: 5 }, { id: 'x', does: '' })).toMatchObject({ ok: true })
  expect(readPlan(doc).evening.dishes[0]?.keeps).toMatchObject({ most: 'PT5M', kind: 'safety' })
})

test('SF5 a limit that the order keeps and the plan does not ask for is offered, and not again once it is hard', () => {
  const plan = evening(
    course(
      'main',
      dish(
        'soup',
        step('boil', 20, eye, ring('medium')),
        step('warm', 10, follows('boil', 0, 600), oven(160, 180)),
        (each) => each,
      ),
    ),
    { ingredients: [food('soup', 'boil', 'leeks')] },
  )
  const [fix, ...others] = softLimits(plan, planned(plan))
  expect([fix, others]).toEqual([{ kind: 'limit', step: 'warm', after: 'boil', from: 'end', minutes: 120 }, []])
  const doc = planOf(plan)
  if (fix) keepSafe(doc, fix, { id: 'x', does: '' })
  const hard = readPlan(doc).evening
  expect(softLimits(hard, planned(hard))).toEqual([])
})

test('DR6 a chore to chill bottles is there once, whoever asks for it, and comes back when it was removed', () => {
  const chore = {
    id: 'c-main',
    does: 'Into the fridge',
    where: 'kitchen' as const,
    ways: [
      {
        care: 'leave' as const,
        cooks: 1,
        takes: { least: 'PT2H', likely: 'PT2H', most: 'PT3H' },
        upTo: 'PT6H',
        touches: [],
        uses: [{ kind: 'cold' as const, keep: 'cold' as const, places: 1 }],
      },
    ],
    after: [],
  }
  const a = planOf(beans())
  const other = copyOf(a)
  expect([putChore(a, chore), putChore(other, chore)]).toMatchObject([{ ok: true }, { ok: true }])
  exchange(a, other)
  const chores = (doc: typeof a) => readPlan(doc).evening.steps.filter(({ id }) => id === 'c-main')
  expect([chores(a).length, chores(other).length]).toEqual([1, 1])
  remove(a, 'steps', 'c-main')
  expect(chores(a)).toEqual([])
  expect(putChore(a, { ...chore, does: 'Into the fridge again' })).toMatchObject({ ok: true })
  expect(chores(a)).toMatchObject([{ does: 'Into the fridge again', dish: null, role: 'chore' }])
})

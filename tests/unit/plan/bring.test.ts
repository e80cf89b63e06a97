import { describe, expect, test } from 'vitest'
import type * as Y from 'yjs'
import { checkEvening } from '#lib/domain/check.ts'
import { type Brought, bringDish, bringDishes } from '#lib/plan/commands/bring.ts'
import { remove } from '#lib/plan/commands/remove.ts'
import { renameDish } from '#lib/plan/commands/set.ts'
import { MOST } from '#lib/plan/layout.ts'
import { readPlan } from '#lib/plan/read.ts'
import { openUndo } from '#lib/plan/undo.ts'
import { readEvening } from '#tests/support/read-evening.ts'
import { copyOf, exchange, planOf } from './open-plan.ts'

const lamb = readEvening('a-lamb')
const [dish] = lamb.dishes
const [course] = lamb.courses
if (!dish || !course) throw new Error('the evening is too small')

/** The first dish of evening A once more, under ids that begin with `as`. */
const again = (as: string): Brought => {
  const steps = lamb.steps.filter((step) => step.dish === dish.id)
  const renamed = new Map(steps.map((step) => [step.id, `${as}-${step.id}`]))
  const id = `${as}-dish`
  return {
    dish: { ...dish, id, name: 'Once more' },
    steps: steps.map((step) => ({
      ...step,
      id: renamed.get(step.id) ?? '',
      dish: id,
      after: step.after.flatMap((after) => {
        const to = renamed.get(after.step)
        return to === undefined ? [] : [{ ...after, step: to }]
      }),
    })),
    ingredients: [
      {
        id: `${as}-salt`,
        dish: id,
        step: renamed.get(steps[0]?.id ?? '') ?? '',
        food: 'salt',
        amount: null,
        scales: 'by-taste',
        allergens: [],
        checked: 'unknown',
        contains: [],
      },
    ],
  }
}
const read = (doc: Y.Doc) => readPlan(doc).evening
const named = (doc: Y.Doc, id: string) => read(doc).dishes.find((each) => each.id === id)

describe('a whole dish at once', () => {
  test('L6 a brought dish is one update, stands where it was wanted with its steps in their order, and is a sound evening', () => {
    const doc = planOf(lamb)
    let updates = 0
    doc.on('update', () => {
      updates += 1
    })
    const brought = again('b')
    expect(bringDish(doc, brought, { kind: 'first' })).toEqual({ ok: true, value: 'b-dish' })
    expect(updates).toBe(1)
    const evening = read(doc)
    expect(evening.dishes.filter((each) => each.course === course.id)[0]?.id).toBe('b-dish')
    expect(evening.steps.filter((step) => step.dish === 'b-dish').map((step) => step.id)).toEqual(
      brought.steps.map((step) => step.id),
    )
    expect(evening.ingredients.map((each) => each.id)).toContain('b-salt')
    expect(checkEvening(evening)).toEqual([])
    expect(readPlan(doc).reports).toEqual([])
  })

  test('L6 one undo takes a brought dish back whole, also when somebody renamed it meanwhile; redo brings it again', () => {
    const doc = planOf(lamb)
    const before = read(doc)
    const undo = openUndo(doc)
    undo.edit(() =>
      bringDishes(
        doc,
        [{ ...course, id: 'new-course', name: 'Late supper' }],
        [{ ...again('b'), dish: { ...again('b').dish, course: 'new-course' } }, again('c')],
      ),
    )
    expect(read(doc).courses.at(-1)?.name).toBe('Late supper')
    expect(named(doc, 'b-dish')?.course).toBe('new-course')
    const other = copyOf(doc)
    renameDish(other, 'c-dish', 'A new name')
    exchange(doc, other)
    undo.undo()
    expect(read(doc)).toEqual(before)
    undo.redo()
    expect(named(doc, 'c-dish')).toBeDefined()
    expect(read(doc).steps.filter((step) => step.dish === 'b-dish')).toHaveLength(again('b').steps.length)
  })

  test('L6 what cannot be brought whole is not brought at all', () => {
    const doc = planOf(lamb)
    remove(doc, 'courses', lamb.courses[1]?.id ?? '')
    const before = read(doc)
    const good = again('b')
    const [first] = good.steps
    const [salt] = good.ingredients
    if (!first || !salt) throw new Error('the dish is too small')
    const refused = (brought: Brought) => {
      const made = bringDishes(doc, [], [again('ok'), brought])
      return made.ok ? null : made.error
    }
    expect(refused({ ...good, steps: [{ ...first, does: 'two\nlines' }] })).toMatchObject({ refusals: [{ path: 'does' }] })
    expect(refused({ ...good, dish: { ...good.dish, course: lamb.courses[1]?.id ?? '' } })).toMatchObject({ root: 'courses' })
    expect(refused({ ...good, dish: { ...good.dish, kitchen: 'nowhere' } })).toMatchObject({ root: 'kitchens' })
    expect(refused({ ...good, steps: [first, first] })).toMatchObject({ kind: 'id-taken', id: first.id })
    expect(refused({ ...good, dish: { ...good.dish, id: 'oven' } })).toMatchObject({ kind: 'id-taken', id: 'oven' })
    expect(refused({ ...good, steps: [{ ...first, dish: dish.id }] })).toMatchObject({ refusals: [{ path: 'dish' }] })
    expect(refused({ ...good, ingredients: [{ ...salt, step: 'nowhere' }] })).toMatchObject({ root: 'steps', id: 'nowhere' })
    const many = Array.from({ length: MOST.ingredients }, (_, i) => ({ ...salt, id: `salt-${i}` }))
    expect(refused({ ...good, ingredients: many })).toMatchObject({ refusals: [{ path: 'ingredients' }] })
    expect(read(doc)).toEqual(before)
  })
})

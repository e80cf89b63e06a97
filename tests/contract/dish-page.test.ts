import { expect, test } from 'vitest'
import { applyDishEdit } from '#app/_dish/dish-edit.ts'
import { readLines } from '#app/_dish/ingredient-lines.ts'
import { allergenTicks } from '#app/_dish/ingredient-sentences.ts'
import { checkEvening } from '#lib/domain/check.ts'
import type { Evening } from '#lib/domain/evening.ts'
import { addIngredient } from '#lib/plan/commands/add.ts'
import { bringDish } from '#lib/plan/commands/bring.ts'
import { moveIngredient } from '#lib/plan/commands/move.ts'
import { remove, restore } from '#lib/plan/commands/remove.ts'
import { setFields } from '#lib/plan/commands/set.ts'
import { copiedDish, variantOf } from '#lib/plan/copy-dish.ts'
import { readPlan } from '#lib/plan/read.ts'
import { EVENING, loopbackRoom } from '#tests/support/loopback-room.ts'
import { readEvening } from '#tests/support/read-evening.ts'

const lamb = readEvening('a-lamb')
const [soup] = lamb.dishes
const fork = lamb.steps.filter((step) => step.dish === soup?.id)[1]
const cook = lamb.cooks[1]
if (!soup || !fork || !cook) throw new Error('the evening is too small')
const two: Evening = { ...lamb, kitchens: [...lamb.kitchens, { id: 'away', name: 'Away', toTable: 'PT20M', kit: [] }] }

test('R21 what the dish page writes is admitted: lines of ingredients, a variant, a copy, another kitchen, words and ticks', async () => {
  const opened = await loopbackRoom(two)
  const [one, other] = [opened.device('m-cook', 'cook', cook.id), opened.device('m-other', 'cook')]
  opened.connect(one)
  opened.connect(other)
  await opened.settle()
  const { doc } = one.client
  const now = () => readPlan(doc).evening
  let count = 0
  const newId = () => {
    count += 1
    return `new-${count}`
  }
  const lines = readLines('1 x 400 g tin tomatoes\n½ cup cream, US\n3 onions', now().steps).flatMap((line) =>
    line.kind === 'ingredient' ? [line.ingredient] : [],
  )
  const ids = lines.map((line) => {
    const added = addIngredient(doc, { ...line, id: newId(), dish: soup.id })
    if (!added.ok) throw new Error(added.error.kind)
    return added.value
  })
  const [tomatoes = '', cream = '', onions = ''] = ids
  await opened.settle()
  const milk = now().ingredients.find((each) => each.id === cream)
  if (!milk) throw new Error('no cream')
  const variant = variantOf(now(), soup.id, { step: fork.id, portions: 2, name: 'Soup without cream', without: 'cream' }, newId)
  const copy = copiedDish(now(), soup.id, newId)
  if (!variant || !copy) throw new Error('no copy')
  const edits = [
    () => setFields(doc, 'ingredients', cream, allergenTicks(milk).tick('milk')),
    () => setFields(doc, 'ingredients', cream, { checked: 'check-label', swap: { for: ['milk'], food: 'oat cream' } }),
    () => moveIngredient(doc, onions, soup.id, { kind: 'first' }),
    () => remove(doc, 'ingredients', tomatoes),
    () => restore(doc, 'ingredients', tomatoes),
    () => bringDish(doc, variant, { kind: 'after', id: soup.id }),
    () => bringDish(doc, copy, { kind: 'after', id: soup.id }),
    () => applyDishEdit(doc, now(), soup.id, { kind: 'kitchen', kitchen: 'away' }, newId),
    () => applyDishEdit(doc, now(), soup.id, { kind: 'fields', patch: { portions: 4, notes: 'Two\nlines' } }, newId),
    () => applyDishEdit(doc, now(), soup.id, { kind: 'course', course: lamb.courses[1]?.id ?? '' }, newId),
    () => applyDishEdit(doc, now(), soup.id, { kind: 'kitchen', kitchen: two.host }, newId),
    () => remove(doc, 'dishes', copy.dish.id),
  ]
  for (const edit of edits) {
    expect(edit().ok).toBe(true)
    await opened.settle()
  }
  expect(one.closedWith).toBeNull()
  expect(opened.logged).toEqual([])
  const stored = await opened.rooms().read(EVENING)
  expect(stored).toEqual(readPlan(other.client.doc).evening)
  expect(checkEvening(stored)).toEqual([])
  expect(stored.ingredients.filter((each) => each.dish === soup.id).map((each) => each.food)).toEqual([
    'onions',
    'tomatoes',
    'cream',
  ])
  expect(stored.dishes.map((dish) => dish.name)).toContain('Soup without cream')
})

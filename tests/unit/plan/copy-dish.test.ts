import { describe, expect, test } from 'vitest'
import { checkEvening } from '#lib/domain/check.ts'
import type { Evening } from '#lib/domain/evening.ts'
import { portionsAt } from '#lib/domain/portions.ts'
import { bringDish } from '#lib/plan/commands/bring.ts'
import { setDishKitchen } from '#lib/plan/commands/kitchen-of-dish.ts'
import { copiedDish, isWithout, variantOf } from '#lib/plan/copy-dish.ts'
import { readPlan } from '#lib/plan/read.ts'
import { openUndo } from '#lib/plan/undo.ts'
import { readEvening } from '#tests/support/read-evening.ts'
import { planOf } from './open-plan.ts'

const lamb = readEvening('a-lamb')
const dishNamed = (evening: Evening, name: string) => {
  const found = evening.dishes.find((dish) => dish.name.includes(name))
  if (!found) throw new Error(`no dish is called ${name}`)
  return found
}
const counting = () => {
  let count = 0
  return () => {
    count += 1
    return `new-${count}`
  }
}
const stepsOf = (evening: Evening, dish: string) => evening.steps.filter((step) => step.dish === dish)
const soup = dishNamed(lamb, 'oup')
const withFood: Evening = {
  ...lamb,
  ingredients: ['celeriac', 'double cream', 'sage leaves'].map((food, index) => ({
    id: `food-${index}`,
    dish: soup.id,
    order: `a${index}`,
    step: stepsOf(lamb, soup.id)[index === 0 ? 0 : 3]?.id ?? '',
    food,
    amount: { n: '100', unit: 'g' },
    scales: 'yes',
    allergens: [],
    checked: 'unknown',
    contains: [],
  })),
}

describe('a dish once more', () => {
  test('X1 a copy has fresh ids, its waits among its own steps, and is brought in one update and taken back by one undo', () => {
    const doc = planOf(withFood)
    const before = readPlan(doc).evening
    const undo = openUndo(doc)
    const copy = copiedDish(before, soup.id, counting())
    if (!copy) throw new Error('no copy')
    let updates = 0
    doc.on('update', () => {
      updates += 1
    })
    expect(undo.edit((one) => bringDish(one, copy, { kind: 'after', id: soup.id }))).toEqual({ ok: true, value: 'new-1' })
    expect(updates).toBe(1)
    const after = readPlan(doc).evening
    expect(checkEvening(after)).toEqual([])
    const [first, second] = [stepsOf(after, soup.id), stepsOf(after, 'new-1')]
    expect(second.map((step) => step.does)).toEqual(first.map((step) => step.does))
    const ids = new Set(second.map((step) => step.id))
    expect(second.flatMap((step) => step.after).length).toBeGreaterThan(0)
    for (const step of second) for (const { step: other } of step.after) expect(ids.has(other)).toBe(true)
    expect(after.ingredients.filter((each) => each.dish === 'new-1').map((each) => each.food)).toEqual([
      'celeriac',
      'double cream',
      'sage leaves',
    ])
    undo.undo()
    expect(readPlan(doc).evening).toEqual(before)
  })

  test('Y17 a copy, and a variant, is another plate: what was confirmed of the first is not said of it', () => {
    const dishes = withFood.dishes.map((dish) => ({ ...dish, confirmed: { for: ['sesame'], of: '1' } }))
    const [first] = stepsOf(withFood, soup.id)
    const fork = { step: first?.id ?? '', portions: 2, name: 'Soup without cream', without: 'cream' }
    const copies = [
      copiedDish({ ...withFood, dishes }, soup.id, counting()),
      variantOf({ ...withFood, dishes }, soup.id, fork, counting()),
    ]
    for (const copy of copies) {
      expect(copy?.dish.id).toBe('new-1')
      expect(copy?.dish).not.toHaveProperty('confirmed')
    }
  })

  test('X1 pans are not shared with the first, and a wait for another dish is kept only where that is there', () => {
    const [first, second, third] = stepsOf(lamb, soup.id)
    const other = lamb.steps.find((step) => step.dish !== soup.id)
    if (!first || !second || !third || !other) throw new Error('the soup is too short')
    const steps = [
      { ...first, vessel: 'pot' },
      { ...second, vessel: 'pot' },
      { ...third, after: [{ step: other.id, from: 'end' as const, least: 'PT0S', kind: 'quality' as const }] },
    ]
    const copy = copiedDish({ ...lamb, steps }, soup.id, counting())
    const vessels = copy?.steps.map((step) => step.vessel)
    expect(vessels?.[0]).toBe(vessels?.[1])
    expect(vessels?.[0]).not.toBe('pot')
    expect(copy?.steps[2]?.after).toEqual([])
    expect(copiedDish({ ...lamb, steps }, soup.id, counting(), () => true)?.steps[2]?.after).toHaveLength(1)
    expect(copiedDish(lamb, 'nothing', counting())).toBeNull()
  })
})

describe('a variant for some', () => {
  const fork = stepsOf(lamb, soup.id)[2]?.id ?? ''
  const wanted = { step: fork, portions: 2, name: 'Soup without cream', without: 'cream' }

  test('X2 it has the steps behind the fork for itself, waits for the common ones, and leaves out what it is without', () => {
    const doc = planOf(withFood)
    const made = variantOf(readPlan(doc).evening, soup.id, wanted, counting())
    if (!made) throw new Error('no variant')
    expect(bringDish(doc, made, { kind: 'after', id: soup.id }).ok).toBe(true)
    const { evening, reports } = readPlan(doc)
    expect(reports).toEqual([])
    expect(checkEvening(evening)).toEqual([])
    const dish = evening.dishes.find((each) => each.id === 'new-1')
    expect(dish).toMatchObject({ name: 'Soup without cream', portions: 2, variant: { of: soup.id, fork, portions: 2 } })
    const [own, first] = [stepsOf(evening, 'new-1'), stepsOf(evening, soup.id)]
    expect(own.map((step) => step.does)).toEqual(first.slice(3).map((step) => step.does))
    expect(own.some((step) => step.after.some((after) => after.step === fork))).toBe(true)
    for (const step of own) expect(step.after.length).toBeGreaterThan(0)
    expect(evening.ingredients.filter((each) => each.dish === 'new-1').map((each) => each.food)).toEqual(['sage leaves'])
  })

  test('X2 up to the fork the dish is made for all, behind it for the others; a variant that is dropped counts for nothing', () => {
    const made = variantOf(lamb, soup.id, wanted, counting())
    if (!made) throw new Error('no variant')
    const dishes = [...lamb.dishes, { ...made.dish, order: 'z' }]
    const [first] = stepsOf(lamb, soup.id)
    const later = stepsOf(lamb, soup.id)[3]
    expect(portionsAt({ ...lamb, dishes }, soup, first?.id)).toBe(6)
    expect(portionsAt({ ...lamb, dishes }, soup, fork)).toBe(6)
    expect(portionsAt({ ...lamb, dishes }, soup, later?.id)).toBe(4)
    expect(portionsAt({ ...lamb, dishes }, soup, undefined)).toBe(6)
    const dropped = dishes.map((dish) => (dish.id === 'new-1' ? { ...dish, state: 'dropped' as const } : dish))
    expect(portionsAt({ ...lamb, dishes: dropped }, soup, later?.id)).toBe(6)
  })

  test('X2 what is without is told by whole words', () => {
    expect(isWithout('double cream, whipped', 'Cream')).toBe(true)
    expect(isWithout('creamed corn', 'cream')).toBe(false)
    expect(isWithout('double cream', 'single cream')).toBe(false)
    expect(isWithout('double cream', ' ')).toBe(false)
  })
})

describe('a dish of another kitchen', () => {
  const away = { id: 'away', name: 'Away', toTable: 'PT20M', kit: [] }
  const two: Evening = { ...lamb, kitchens: [...lamb.kitchens, away] }
  const carry = { id: 'carry-1', does: 'Carry the soup' }

  test('X3 it gets a step that carries it, which lasts as long as the way, and all reads without repair', () => {
    const doc = planOf(two)
    const before = readPlan(doc).evening
    const undo = openUndo(doc)
    expect(undo.edit((one) => setDishKitchen(one, before, soup.id, 'away', carry))).toEqual({ ok: true, value: null })
    const { evening, reports } = readPlan(doc)
    expect(reports).toEqual([])
    expect(checkEvening(evening)).toEqual([])
    expect(evening.dishes.find((dish) => dish.id === soup.id)).toMatchObject({ kitchen: 'away', carry: { most: 'PT1H' } })
    const step = evening.steps.find((each) => each.id === 'carry-1')
    expect(step).toMatchObject({ role: 'carry', dish: soup.id, ways: [{ takes: { likely: 'PT20M' } }] })
    expect(step?.after.length).toBeGreaterThan(0)
    undo.undo()
    expect(readPlan(doc).evening).toEqual(before)
  })

  test('X3 one that has a carrying step keeps it, and back at the host’s it goes', () => {
    const doc = planOf(two)
    setDishKitchen(doc, readPlan(doc).evening, soup.id, 'away', carry)
    const between = readPlan(doc).evening
    setDishKitchen(doc, between, soup.id, 'away', { ...carry, id: 'carry-2' })
    expect(readPlan(doc).evening).toEqual(between)
    setDishKitchen(doc, between, soup.id, two.host, { ...carry, id: 'carry-3' })
    const back = readPlan(doc).evening
    expect(back.steps.some((step) => step.role === 'carry' && step.dish === soup.id)).toBe(false)
    expect(back.dishes.find((dish) => dish.id === soup.id)).not.toHaveProperty('carry')
    expect(setDishKitchen(doc, back, soup.id, 'nowhere', carry)).toMatchObject({ ok: false, error: { root: 'kitchens' } })
  })
})

import { expect, test } from 'vitest'
import { byName } from '#app/_dish/name-allergens.ts'
import { Ingredient } from '#lib/domain/ingredient.ts'
import { demoEvening } from '#prisma/demo/demo-evening.ts'

const ingredient = (food: string, fields: Partial<Ingredient> = {}): Ingredient => ({
  id: 'i',
  dish: 'd',
  order: 'a0',
  food,
  amount: null,
  scales: 'yes',
  allergens: [],
  checked: 'unknown',
  contains: [],
  ...fields,
})

test('Y19 what a name says is put down with what was said before, and the label is still to be read', () => {
  const found = byName(ingredient('chicken stock', { contains: ['home-made'] }), 'strictest')
  expect(found?.has).toEqual(['poultry'])
  expect(found?.look).toContain('celery')
  expect(found?.patch).toEqual({ allergens: [], contains: ['home-made', 'poultry', 'meat'], checked: 'check-label' })
  expect(byName(ingredient('butter'), 'strictest')?.patch).toEqual({ allergens: ['milk'], contains: [] })
  expect(byName(ingredient('plain wheat flour'), 'strictest')?.has).toEqual(['wheat'])
  expect(byName(ingredient('leeks'), 'strictest')).toBeNull()
})

test('Y19 a press of it never says that all is known, and of the demo, whose foods are said, it asks for no more', () => {
  let asked = 0
  for (const each of demoEvening('2027-02-20').ingredients) {
    const bare = { ...each, allergens: [], contains: [], checked: 'unknown' as const }
    const found = byName(bare, 'strictest')
    if (found) {
      asked += 1
      expect(found.patch.checked).not.toBe('known')
      expect(Ingredient.safeParse({ ...bare, ...found.patch }).success).toBe(true)
      expect(found.sources.length).toBeGreaterThan(0)
    }
    expect(byName(each, 'strictest')?.has ?? [], each.food).toEqual([])
  }
  expect(asked).toBeGreaterThan(20)
})

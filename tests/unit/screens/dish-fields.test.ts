import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import * as z from 'zod/mini'
import { applyDishEdit, type DishEdit } from '#app/_dish/dish-edit.ts'
import { dishSentences } from '#app/_dish/dish-sentences.ts'
import { flagsOf } from '#app/_dish/ingredient-flags.ts'
import { readLines } from '#app/_dish/ingredient-lines.ts'
import {
  allergenParts,
  allergenTicks,
  containsParts,
  containsTicks,
  type IngredientPatch,
  ingredientParts,
  shopParts,
} from '#app/_dish/ingredient-sentences.ts'
import { keepingScene } from '#app/_dish/keeps-words.ts'
import { means, type Part, type Parts, readOut, type Said } from '#app/_ui/parts.ts'
import { checkEvening } from '#lib/domain/check.ts'
import type { Evening } from '#lib/domain/evening.ts'
import { Ingredient } from '#lib/domain/ingredient.ts'
import { Dish } from '#lib/domain/menu.ts'
import type { Measures } from '#lib/domain/unit-words.ts'
import { setFields } from '#lib/plan/commands/set.ts'
import { readPlan } from '#lib/plan/read.ts'
import { exact } from '#lib/quantities/exact.ts'
import { forCovers } from '#lib/quantities/for-covers.ts'
import { readEvening } from '#tests/support/read-evening.ts'
import { planOf } from '#tests/unit/plan/open-plan.ts'

const lamb = readEvening('a-lamb')
const [soup, roast, cheese] = lamb.dishes
const own = lamb.steps.filter((step) => step.dish === soup?.id)
const [first, second] = own
if (!soup || !roast || !cheese || !first || !second) throw new Error('the evening is too small')

/** A dish that says everything there is to say, and two ingredients: one says all, one has a bare cup. */
const full: Dish = {
  ...soup,
  kitchen: 'away',
  portions: 5,
  state: 'spare',
  standIn: cheese.id,
  toTable: { early: 'PT10M', late: 'PT5M' },
  keeps: { how: 'warm', most: 'PT15M', kind: 'quality', uses: [{ kind: 'ring', size: 'small' }] },
  carry: { how: 'cold', most: 'PT40M', kind: 'quality' },
  variant: { of: roast.id, fork: lamb.steps.find((step) => step.dish === roast.id)?.id ?? '', portions: 5 },
  confirmed: { for: ['sesame'], of: '1' },
  source: 'https://one.example/soup',
}
const milk: Ingredient = {
  id: 'milk',
  dish: soup.id,
  order: 'a1',
  step: first.id,
  food: 'milk, warm',
  amount: { n: '1', upTo: '2', unit: 'cup' },
  scales: 'yes',
  allergens: ['milk'],
  checked: 'known',
  labelRules: 'eu',
  contains: ['milk'],
  swap: { for: ['vegan'], food: 'oat drink' },
  suits: ['lactose'],
  shop: 'market',
  aisle: 'dairy',
  abv: 1,
}
const evening: Evening = {
  ...lamb,
  kitchens: [...lamb.kitchens, { id: 'away', name: 'Away', toTable: 'PT20M', kit: [] }],
  dishes: lamb.dishes.map((dish) => (dish.id === soup.id ? full : dish)),
  steps: [...lamb.steps, { ...first, id: 'carry', role: 'carry', order: 'zz', after: [] }],
  ingredients: [milk],
}

/** The fields of a schema, each by its path; what is a list or a choice is one field. */
const pathsOf = (schema: z.ZodMiniType, path = ''): string[] => {
  if (schema instanceof z.ZodMiniOptional || schema instanceof z.ZodMiniDefault || schema instanceof z.ZodMiniNullable)
    return pathsOf(schema.def.innerType as z.ZodMiniType, path)
  if (schema instanceof z.ZodMiniObject)
    return Object.entries(schema.shape as Record<string, z.ZodMiniType>).flatMap(([name, field]) =>
      pathsOf(field, path ? `${path}.${name}` : name),
    )
  return [path]
}

const at = (value: unknown, path: string): unknown =>
  path
    .split('.')
    .reduce<unknown>((found, name) => (typeof found === 'object' && found !== null ? Reflect.get(found, name) : undefined), value)

const TRIED = ['7', '25 min', '2 to 3 US tsp', 'something else', 'fish, vegan', 'https://other.example/x', '12 %', '']

const answers = <T>(part: Part<T>): Said<T>[] => {
  if (typeof part === 'string' || part.kind === 'note') return []
  if (part.kind === 'press') return [part.press()]
  return part.kind === 'choice' ? part.options.map(([value]) => part.choose(value)) : TRIED.map((text) => part.write(text))
}

/** Whether a blank by that name is about the field: it, all of it, or a part of it. */
const isAbout = (name: string, path: string): boolean => `${path}.`.startsWith(`${name}.`) || `${name}.`.startsWith(`${path}.`)

/** The paths to which an answer of a blank about them gives another value; taking a field away is none. */
const changedBy = <T>(
  parts: readonly Part<T>[],
  paths: readonly string[],
  before: object,
  apply: (edit: T) => object,
): Set<string> => {
  const changed = new Set<string>()
  for (const part of parts)
    for (const said of answers(part)) {
      if (said.kind === 'wrong' || typeof part === 'string') continue
      const after = apply(said.value)
      for (const path of paths.filter((each) => isAbout(part.at, each))) {
        const value = at(after, path)
        if (value !== undefined && JSON.stringify(at(before, path)) !== JSON.stringify(value)) changed.add(path)
      }
    }
  return changed
}

const dishParts = (of: Evening, dish: Dish): readonly Part<DishEdit>[] => {
  const said = dishSentences(dish, of, keepingScene(of, '/kitchens'))
  return [said.name, ...said.portions, ...said.done.flat(), ...said.stands.flat(), ...said.found.flat()]
}
const dishAfter = (of: Evening, dish: string, edit: DishEdit): Evening => {
  const doc = planOf(of)
  const made = applyDishEdit(doc, readPlan(doc).evening, dish, edit, () => 'new-id')
  expect(made).toEqual({ ok: true, value: null })
  return readPlan(doc).evening
}
const ingredientAll = (ingredient: Ingredient): Parts<IngredientPatch> => [
  ...ingredientParts(ingredient, own),
  ...allergenParts(ingredient),
  ...containsParts(ingredient),
  ...shopParts(ingredient),
]

describe('every field has words that change it', () => {
  test('X4 each field of a dish is changed by a blank of its page, and what it writes reads back without repair', () => {
    const paths = pathsOf(Dish)
    expect(paths).toContain('variant.portions')
    expect(paths.length).toBeGreaterThan(20)
    const before = evening.dishes.find((dish) => dish.id === soup.id)
    if (!before) throw new Error('no soup')
    const changed = changedBy(dishParts(evening, before), paths, before, (edit) => {
      const after = dishAfter(evening, soup.id, edit)
      expect(checkEvening(after)).toEqual([])
      return after.dishes.find((dish) => dish.id === soup.id) ?? {}
    })
    // The id never changes, its place is changed by moving it; notes are shared letter by letter, by the field below.
    expect(paths.filter((path) => !changed.has(path))).toEqual(['id', 'order', 'notes'])
    expect(readFileSync(new URL('../../../app/_dish/dish-words.tsx', import.meta.url), 'utf8')).toMatch(
      /<TextWords\s+root="dishes"\s+id=\{dish\.id\}\s+field="notes"/,
    )
  })

  test('X4 each field of an ingredient is changed by a blank or a tick of its page', () => {
    const paths = pathsOf(Ingredient)
    expect(paths).toContain('amount.upTo')
    const write = (patch: IngredientPatch) => {
      const doc = planOf(evening)
      expect(setFields(doc, 'ingredients', milk.id, patch)).toEqual({ ok: true, value: null })
      return readPlan(doc).evening.ingredients[0] ?? {}
    }
    const ticks = (
      [
        ['allergens', allergenTicks(milk)],
        ['contains', containsTicks(milk)],
      ] as const
    ).flatMap(([name, each]) =>
      each.options.map(
        ([word]): Part<IngredientPatch> => ({
          kind: 'press',
          at: name,
          label: word,
          words: word,
          press: () => means(each.tick(word)),
        }),
      ),
    )
    const changed = changedBy([...ingredientAll(milk), ...ticks], paths, milk, write)
    // Id and dish stay; its place is changed by moving it.
    expect(paths.filter((path) => !changed.has(path))).toEqual(['id', 'dish', 'order'])
  })

  test('X4 an optional field can be taken away again, and what never was can be said', () => {
    const bare =
      evening.ingredients[0] &&
      Ingredient.parse({
        ...milk,
        step: undefined,
        labelRules: undefined,
        swap: undefined,
        suits: undefined,
        shop: undefined,
        aisle: undefined,
        abv: undefined,
      })
    if (!bare) throw new Error('no milk')
    const given = new Set<string>()
    for (const part of ingredientAll(bare))
      for (const said of answers(part))
        if (said.kind === 'means')
          for (const [name, value] of Object.entries(said.value)) if (value !== undefined) given.add(name)
    const taken = new Set<string>()
    for (const part of ingredientAll(milk))
      for (const said of answers(part))
        if (said.kind === 'means')
          for (const [name, value] of Object.entries(said.value)) if (value === undefined) taken.add(name)
    const optional = Object.entries(Ingredient.shape).flatMap(([name, field]) =>
      field instanceof z.ZodMiniOptional ? [name] : [],
    )
    expect(optional.length).toBeGreaterThan(4)
    // Who gets something else and what stand in two blanks: the swap goes when both are empty.
    expect([...optional].filter((name) => !given.has(name))).toEqual([])
    expect([...optional].filter((name) => !taken.has(name))).toEqual(['swap'])
    const half = { ...milk, swap: { for: [], food: 'oat drink' } }
    const food = containsParts(half).find((part) => typeof part !== 'string' && part.at === 'swap.food')
    expect(typeof food === 'object' && food.kind === 'text' && food.write('')).toEqual(means({ swap: undefined }))
  })

  test('X4 names within a page are each their own, for those who do not see the sentence', () => {
    for (const parts of [dishParts(evening, full), ingredientAll(milk)]) {
      const blanks = parts.flatMap((part) => (typeof part === 'string' || part.kind === 'note' ? [] : [part]))
      expect(new Set(blanks.map((part) => part.at)).size).toBe(blanks.length)
      expect(new Set(blanks.map((part) => part.label)).size).toBe(blanks.length)
    }
  })

  test('X4 what is refused says what to write', () => {
    const wrongs = [...dishParts(evening, full), ...ingredientAll(milk)].flatMap((part): string[] =>
      typeof part !== 'string' && part.kind === 'text'
        ? ['-3', '?!', 'x'.repeat(500)]
            .map((text) => part.write(text as string))
            .flatMap((said: Said<unknown>) => (said.kind === 'wrong' ? [said.why] : []))
        : [],
    )
    expect(wrongs.length).toBeGreaterThan(15)
    for (const why of wrongs) expect(why).toMatch(/^(Write|Say|A name|A dish needs)/)
  })
})

describe('sentences', () => {
  test('X5 a dish says for whom it is, how it keeps and travels, and what happens if it fails', () => {
    const said = dishSentences(full, evening, keepingScene(evening, '/kitchens'))
    expect(readOut(said.portions)).toBe('It is for 5; the recipe is for 6.')
    expect(said.done.map(readOut)).toEqual([
      'It keeps warm for 15 min and is past its best after that. Meanwhile it stands on a small ring. Besides, it takes nothing else. ',
      'It may reach the table 10 min before the rest of its course, and 5 min after it.',
      'It travels cold, at most 40 min and is past its best after that. ',
    ])
    expect(readOut(said.stands[0] ?? [])).toMatch(
      /^It is kept as a spare, with .*, and made in Away\. If it fails: “Cheese and bread”\.$/,
    )
    const plain = dishSentences(soup, lamb, keepingScene(lamb, '/kitchens'))
    expect(readOut(plain.portions)).toBe('It is for everybody, 6; the recipe is for 6.')
    expect(plain.done.map(readOut)[2]).toBe('')
  })

  test('X5 no dish can stand in for one that stands in for it', () => {
    const circle: Evening = {
      ...evening,
      dishes: evening.dishes.map((dish) => (dish.id === cheese.id ? { ...dish, standIn: roast.id } : dish)),
    }
    const standIn = dishParts(circle, circle.dishes.find((dish) => dish.id === roast.id) ?? roast).find(
      (part) => typeof part !== 'string' && part.at === 'standIn',
    )
    const offered = typeof standIn === 'object' && standIn.kind === 'choice' ? standIn.options.map(([value]) => value) : []
    expect(offered).not.toContain(roast.id)
    expect(offered).not.toContain(cheese.id)
    expect(offered).not.toContain(soup.id)
    expect(offered.length).toBeGreaterThan(1)
  })

  test('X5 what is not known of allergens is said not to be safe', () => {
    expect(readOut(allergenParts({ ...milk, checked: 'unknown' }))).toMatch(/not safe for an allergy/)
    expect(readOut(allergenParts({ ...milk, checked: 'check-label' }))).toMatch(/label has to be read/)
  })

  test('X5 an ingredient reads as one writes it, and asks whose a bare cup is, with what each holds', () => {
    expect(readOut(ingredientParts(milk, own))).toMatch(
      /^1 to 2 cups of milk, warm, for “.*”; it grows with the portions\. Whose cup is it\? not said\. $/,
    )
    const owner = ingredientParts(milk, own).find((part) => typeof part !== 'string' && part.at === 'amount.owner')
    if (typeof owner !== 'object' || owner.kind !== 'choice') throw new Error('nothing is asked')
    // CLDR 48.2: 236.588 and 284.131 ml; NSW Health and CLDR: 250 ml.
    expect(owner.options.map(([, words]) => words)).toEqual([
      'not said',
      'US cup, 236.6 ml',
      'metric cup, 250 ml',
      'AU cup, 250 ml',
      'imperial cup, 284.1 ml',
    ])
    expect(owner.choose('us')).toEqual(means({ amount: { n: '1', upTo: '2', unit: 'US cup' } }))
  })
})

describe('beside an ingredient', () => {
  const flags = (ingredient: Ingredient, factor: string, reader: Measures | null) =>
    flagsOf(ingredient, forCovers(ingredient, exact(factor), reader)).map((flag) => flag.text)
  const flour: Ingredient = { ...milk, food: 'plain flour', amount: { n: '250', unit: 'g' } }

  test('X5 stands, in a few words, what differs, what is to be asked and what nobody has looked at', () => {
    expect(flags({ ...milk, checked: 'unknown' }, '1', null)).toEqual(['whose cup?', 'allergens not known'])
    expect(flags({ ...milk, amount: { n: '200', unit: 'g' }, food: 'butter', checked: 'check-label' }, '4/3', null)).toEqual([
      'exactly 266⅔ g: 1 % less',
      'read the label',
    ])
    expect(flags(flour, '2', null)).toEqual([])
  })

  test('Q15 an American reader has cups where USDA says what one weighs (SR28 20081: 125 g), ounces where nothing does', () => {
    expect(flags(flour, '2', 'us')).toEqual(['about 4 US cups'])
    expect(flags({ ...flour, food: 'star dust' }, '2', 'us')).toEqual(['about 1⅛ lb'])
    expect(flags(flour, '2', 'metric')).toEqual([])
  })
})

describe('ingredients that are written', () => {
  test('X6 lines become ingredients whose allergens are not known, for the step that names them; headings are told and left out', () => {
    const steps = own.map((step, index) => (index === 1 ? { ...step, does: 'Chop the tomatoes' } : step))
    const lines = readLines(
      'Ingredients:\nFor the sauce:\n\n1 x 400 g tin tomatoes\n½ cup cream, US\n2 cups flour\na pinch of salt',
      steps,
    )
    expect(lines.map((line) => line.kind)).toEqual(['heading', 'heading', 'ingredient', 'ingredient', 'ingredient', 'ingredient'])
    const made = lines.flatMap((line) => (line.kind === 'ingredient' ? [line.ingredient] : []))
    expect(made).toMatchObject([
      { food: 'tomatoes', amount: { n: '1', unit: '400 g tin' }, step: second.id },
      { food: 'cream', amount: { n: '1/2', unit: 'US cup' } },
      { food: 'flour', amount: { n: '2', unit: 'cup' } },
      { food: 'salt', scales: 'by-taste' },
    ])
    for (const each of made) expect(each).toMatchObject({ checked: 'unknown', allergens: [] })
  })

  test('X6 what is not understood is kept as text and flagged', () => {
    const [odd, none] = readLines('1,5 kg leeks\nsome of that old vinegar', own)
    expect(odd?.kind === 'ingredient' && odd.ingredient.food).toBe('1,5 kg leeks')
    expect(odd?.kind === 'ingredient' && odd.doubts.map((doubt) => doubt.kind)).toEqual(['decimal'])
    expect(none?.kind === 'ingredient' && none.doubts.map((doubt) => doubt.kind)).toEqual(['no-amount'])
    expect(readLines('x\n'.repeat(5000), own).length).toBeLessThanOrEqual(200)
  })
})

import { describe, expect, test } from 'vitest'
import { minutesOf } from '#lib/domain/duration.ts'
import type { Evening } from '#lib/domain/evening.ts'
import { parseEvening } from '#lib/domain/parse.ts'
import { spanFromBounds, spanFromUsual } from '#lib/domain/usual-span.ts'
import { planEvening } from '#lib/order/engine.ts'
import { type DishPlace, makeDish } from '#lib/recipes/make-dish.ts'
import { readRecipe } from '#lib/recipes/read.ts'
import { loadEvening } from '#tests/support/load-evening.ts'
import { AMERICAN } from '#tests/support/recipes/american.ts'
import type { RecipeCase } from '#tests/support/recipes/case.ts'
import { NOTES } from '#tests/support/recipes/notes.ts'
import { NUMBERED } from '#tests/support/recipes/numbered.ts'
import { PAGES } from '#tests/support/recipes/pages.ts'

const CASES: readonly RecipeCase[] = [...NUMBERED, ...AMERICAN, ...NOTES, ...PAGES]

const counter = (prefix: string) => {
  let count = 0
  return () => {
    count += 1
    return `${prefix}-${count}`
  }
}

const place = (over: Partial<DishPlace> = {}): DishPlace => ({
  course: 'main',
  kitchen: 'home',
  order: 'a',
  covers: 6,
  measures: 'uk',
  newId: counter('made'),
  keys: (count) => Array.from({ length: count }, (_, i) => `k${String(i).padStart(4, '0')}`),
  ...over,
})

const made = (text: string, over: Partial<DishPlace> = {}) => {
  const read = readRecipe(text, over.decimal ? { decimal: over.decimal } : {})
  if (!read.ok) throw new Error(read.error.kind)
  return makeDish(read.value, place(over))
}

/** Evening A's kitchen and cooks with nothing to eat but this. */
const eveningOf = ({ dish, steps, ingredients }: ReturnType<typeof makeDish>): Evening => ({
  ...loadEvening('a-lamb'),
  dishes: [dish],
  steps: [...steps],
  ingredients: [...ingredients],
  drinks: [],
  claims: [],
  night: [],
})

const HOME = { course: 'course-2', kitchen: 'home' }

describe('entities of an evening', () => {
  test.each(CASES)('Z6 $name becomes a dish that an evening takes', (recipe) => {
    const dish = made(recipe.text, { ...HOME, ...(recipe.decimal ? { decimal: recipe.decimal } : {}) })
    const parsed = parseEvening(JSON.parse(JSON.stringify(eveningOf(dish))))
    expect(parsed.ok ? [] : parsed.error).toEqual([])
    expect(dish.steps.length).toBeGreaterThanOrEqual(2)
    expect(dish.ingredients).toHaveLength(recipe.ingredients.length)
    expect(dish.steps.at(-1)?.role).toBe('plate')
  })
  test('Z6 the soup can be planned: every step has its place', () => {
    const soup = CASES.find((recipe) => recipe.name === 'leek and potato soup')
    if (!soup) throw new Error('the soup is gone')
    const evening = eveningOf(made(soup.text, HOME))
    const order = planEvening(evening, { budget: { steps: 200, seed: 1 }, quick: true })
    expect(new Set(order.cues.map((cue) => cue.step))).toEqual(new Set(evening.steps.map((step) => step.id)))
    expect(order.clashes.filter((clash) => clash.kind === 'no-kit' || clash.kind === 'no-cook')).toEqual([])
  })
  test('Z6 one length to a step: two times in a sentence are two steps, hand work before the oven is its own', () => {
    const dish = made(
      'Stew\nServes 4\n1 onion\n\nMethod\n1. Fry the onion for 10 minutes, then add the beef and simmer for 2 hours.\n2. Chop the parsley. Bake at 180C for 30 minutes until golden.',
    )
    expect(dish.steps.map((step) => [step.does, step.ways[0]?.care, minutesOf(step.ways[0]?.takes.likely ?? '')])).toEqual([
      ['Fry the onion for 10 minutes', 'eye', 10],
      ['Add the beef and simmer for 2 hours.', 'eye', 120],
      ['Chop the parsley.', 'hands-on', 5],
      ['Bake at 180C for 30 minutes until golden.', 'leave', 30],
      ['Plate: Stew', 'hands-on', 4],
    ])
    expect(dish.steps[3]?.ways[0]?.uses).toEqual([{ kind: 'oven', shelves: 1, lowC: 175, highC: 190, preheated: true }])
    expect(dish.steps[3]?.until).toEqual({ sign: 'golden' })
    expect(dish.assumed).toContainEqual({ kind: 'no-minutes', step: dish.steps[2]?.id })
    expect(dish.steps.slice(1).every((step, i) => step.after[0]?.step === dish.steps[i]?.id)).toBe(true)
  })
  test("Z6 the oven's heat is carried from the line that lights it, which is no step itself", () => {
    const dish = made('Tart\nServes 6\n1 egg\n\nMethod\n1. Heat the oven to 200°C/180°C fan/gas 6.\n2. Bake for 25 minutes.')
    expect(dish.steps.map((step) => step.does)).toEqual(['Bake for 25 minutes.', 'Plate: Tart'])
    expect(dish.steps[0]?.ways[0]?.uses[0]).toMatchObject({ kind: 'oven', lowC: 195, highC: 210 })
    const step = (heating: string) =>
      made(`Tart\nServes 6\n1 egg\n\nMethod\n1. ${heating}\n2. Bake for 25 minutes.`).steps.map(({ does }) => does)
    for (const only of ['Heat oven, gas mark 3.', 'Preheat oven to 180°C.', 'Pre-heat the oven, 200°C, fan 180°C.'])
      expect([only, step(only)]).toEqual([only, ['Bake for 25 minutes.', 'Plate: Tart']])
    for (const more of ['Preheat the oven to 180°C and butter a dish.', 'Heat the oven to 200°C and boil the pasta.'])
      expect(step(more)).toEqual([more, 'Bake for 25 minutes.', 'Plate: Tart'])
    const cold = made('Tart\nServes 6\n1 egg\n\nMethod\n1. Bake in the oven for 25 minutes.')
    expect(cold.assumed.map((each) => each.kind)).toContain('no-heat')
  })
  test('Z6 a wait is left alone and may last longer: up to what the text says, else up to a guess that is listed', () => {
    const dish = made(
      'Cream\nServes 6\n1 lemon\n\nMethod\n1. Chill for at least 4 hours, or up to 24 hours.\n2. Rest for 10 minutes.',
    )
    const [chill, rest] = dish.steps
    expect(chill?.ways[0]).toMatchObject({
      care: 'leave',
      takes: { least: 'PT4H', likely: 'PT4H', most: 'PT4H' },
      upTo: 'P1D',
      uses: [{ kind: 'cold', keep: 'cold', places: 1 }],
    })
    expect(rest?.ways[0]).toMatchObject({ care: 'leave', takes: { likely: 'PT10M' }, upTo: 'PT15M', uses: [] })
    expect(dish.assumed.filter((each) => each.kind === 'no-end').map((each) => each.step)).toEqual([rest?.id])
  })
  test('Z6 a core temperature, a basting and a cup come with what was said', () => {
    const dish = made(
      'Bird\nServes 4\n1 cup stock\n\nMethod\n1. Roast at 400°F for 1 hour, basting every 20 minutes, until a thermometer in the middle reads 165°F.',
      { ...HOME, measures: 'us' },
    )
    expect(dish.steps[0]?.until).toMatchObject({ coreC: 73.9 })
    expect(dish.steps[0]?.ways[0]?.touches.map((touch) => touch.when)).toEqual(['in', { every: 'PT20M' }, 'out'])
    expect(dish.ingredients[0]?.amount).toEqual({ n: '1', unit: 'US cup' })
    expect(made('Bird\nServes 4\n1 cup stock', { measures: null }).ingredients[0]?.amount).toEqual({ n: '1', unit: 'cup' })
  })
  test('Z6 nothing is said to be free of anything', () => {
    const dish = made(PAGES[0]?.text ?? '')
    expect(dish.ingredients.length).toBeGreaterThan(3)
    expect(dish.ingredients.every((each) => each.checked === 'unknown' && each.allergens.length === 0)).toBe(true)
  })
  test('Z6 without a yield the covers stand in, and it is said; of "4 to 6" the fewer', () => {
    expect(made('Soup\n1 onion').dish.yields).toBe(6)
    expect(made('Soup\n1 onion').assumed.map((each) => each.kind)).toContain('no-yield')
    expect(made('Soup\nServes 4-6\n1 onion').dish.yields).toBe(4)
  })
})

describe('least and most from the usual', () => {
  test.each([
    [45, 40, 55],
    [10, 9, 12],
    [4, 3.5, 5],
    [120, 105, 145],
  ])('Z7 usually %d min can be %d to %d', (usual, least, most) => {
    const span = spanFromUsual(usual * 60)
    expect([minutesOf(span.least), minutesOf(span.likely), minutesOf(span.most)]).toEqual([least, usual, most])
  })
  test('Z7 a range in the text is kept, its usual is the middle; of one bound the other is suggested', () => {
    expect(spanFromBounds(120, 180)).toEqual({ least: 'PT2M', likely: 'PT2M30S', most: 'PT3M' })
    expect(spanFromBounds(1200, null)).toEqual({ least: 'PT20M', likely: 'PT20M', most: 'PT24M' })
    expect(spanFromBounds(null, 1200)?.most).toBe('PT20M')
    expect(spanFromBounds(null, null)).toBeNull()
  })
  test('Z7 least ≤ likely ≤ most for every length', () => {
    for (let seconds = 0; seconds < 90_000; seconds += 7)
      for (const span of [
        spanFromUsual(seconds),
        spanFromBounds(null, seconds),
        spanFromBounds(seconds, null),
        spanFromBounds(seconds, seconds + 31),
      ]) {
        const [least, likely, most] = [span?.least, span?.likely, span?.most].map((each) => minutesOf(each ?? ''))
        if (!(least !== undefined && likely !== undefined && most !== undefined && least <= likely && likely <= most))
          expect(span).toBe('in order')
      }
  })
  test('Z6 what another step follows is out before it begins, and what is baked cools at once', () => {
    const tart = made(
      'Leek tart\nServes 6\n\n500 g leeks\n200 g pastry\n\n1. Chill the pastry for 30 minutes.\n2. Bake at 190°C for 35 minutes.\n3. Leave to cool for 10 minutes.',
    )
    const [chill, bake, cool] = tart.steps
    expect([chill, bake, cool].map((step) => step?.ways[0]?.touches.find((touch) => touch.when === 'out')?.lateBy)).toEqual([
      'PT0S',
      'PT0S',
      'PT0S',
    ])
    expect([cool?.after[0]?.most, bake?.after[0]?.most]).toEqual(['PT15M', undefined])
  })
  test('SF5 what a recipe heats is in the fridge within two hours, for safety: USDA FSIS (quoted); where its own steps take longer nothing is put in', () => {
    const recipe = (cool: string) =>
      made(
        `Leek broth\nServes 6\n\n500 g leeks\n1 l stock\n\n1. Simmer the leeks for 30 minutes.\n2. Leave to cool for ${cool}.\n3. Chill in the fridge for 3 hours.`,
      )
    const hard = ({ steps }: ReturnType<typeof made>) =>
      steps.flatMap((step) => step.after.filter(({ kind }) => kind === 'safety'))
    const soon = recipe('40 minutes')
    expect(hard(soon)).toEqual([{ step: soon.steps[0]?.id, from: 'end', least: 'PT0S', most: 'PT2H', kind: 'safety' }])
    expect(soon.assumed.map(({ kind }) => kind)).toContain('into-cold')
    expect(hard(recipe('3 hours'))).toEqual([])
  })
  test('Z6 a length alone in brackets at a sentence’s end is the step’s; anything more in them is said by the way', () => {
    const cabbage = (line: string) =>
      made(`Cabbage\nServes 6\n\n1 kg cabbage\n2 apples\n\n1. ${line}`).steps[0]?.ways[0]?.takes.likely
    expect(cabbage('Shred the cabbage (15 min).')).toBe('PT15M')
    expect(cabbage('Shred the cabbage (15 minutes with a blunt knife).')).toBe('PT5M')
  })
})

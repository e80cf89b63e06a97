import { describe, expect, test } from 'vitest'
import type { Evening } from '#lib/domain/evening.ts'
import type { Ingredient } from '#lib/domain/ingredient.ts'
import type { Guest } from '#lib/domain/people.ts'
import { coverage, type Eater, without } from '#lib/table/coverage.ts'
import { dishVerdict } from '#lib/table/dish-verdict.ts'
import { fewestChanges } from '#lib/table/fewest-changes.ts'
import { guardsOf } from '#lib/table/guards.ts'
import { labelsToCheck } from '#lib/table/labels-to-check.ts'
import { madeOf } from '#lib/table/made-of.ts'
import { smallestSet, type Wish } from '#lib/table/smallest-set.ts'
import { PRICES, type TableChange } from '#lib/table/table-change.ts'
import { isSomething } from '#lib/table/verdict.ts'
import { dice } from '#tests/support/dice.ts'
import {
  course,
  dish,
  dishWith,
  evening,
  follows,
  HOME_KIT,
  kitchen,
  role,
  step,
  where,
} from '#tests/support/evening-builders.ts'
import { SITTERS, tableEvening } from '#tests/support/table-fixture.ts'

const food = (of: string, at: string, text: string, fields: Partial<Ingredient> = {}): Ingredient => ({
  id: `${of}-${text.replace(/[^a-z]/gi, '')}`.slice(0, 40),
  dish: of,
  step: at,
  order: 'a0',
  food: text,
  amount: null,
  scales: 'yes',
  allergens: [],
  checked: 'known',
  contains: [],
  ...fields,
})
const eater = (id: string, needs: Guest['needs'], more: Partial<Eater> = {}): Eater => ({
  id,
  reply: 'yes',
  child: false,
  drinks: 'unknown',
  needs,
  ...more,
})
const avoids = (id: string, ...needs: string[]): Eater =>
  eater(
    id,
    needs.map((need) => ({ need, grade: 'avoids' })),
  )

const menu = (ingredients: readonly Ingredient[], more: Partial<Evening> = {}): Evening => ({
  ...evening(
    { kitchens: [kitchen('home', HOME_KIT), kitchen('next', [])] },
    course('main', dish('stew', step('stew-1', 5), step('stew-2', 5, follows('stew-1'))), dish('greens', step('greens-1', 5))),
    course('sweet', dish('pears', step('pears-1', 5))),
  ),
  ...more,
  ingredients: [...ingredients],
})
const MEAT = food('stew', 'stew-1', 'lamb shoulder', { contains: ['meat'] })
const CREAM = food('stew', 'stew-2', 'cream', { allergens: ['milk'], swap: { for: ['milk'], food: 'olive oil' } })
const GREENS = food('greens', 'greens-1', 'spinach')
const PEARS = food('pears', 'pears-1', 'pears')
const of = (whole: Evening, id: string) => {
  const found = whole.dishes.find((each) => each.id === id)
  if (!found) throw new Error(`no ${id}`)
  return found
}

describe('coverage', () => {
  test('Y15 every course says for every guest who comes each dish and the best of them; who said no is left out', () => {
    const found = coverage(menu([MEAT, CREAM, GREENS, PEARS]), [
      avoids('veg', 'vegetarian'),
      eater('silent', null, { reply: 'waiting' }),
      eater('no', [], { reply: 'no' }),
    ])
    expect(found.map(({ course: id, guests }) => [id, guests.map(({ guest }) => guest)])).toEqual([
      ['main', ['veg', 'silent']],
      ['sweet', ['veg', 'silent']],
    ])
    const [veg, silent] = found[0]?.guests ?? []
    expect(veg?.dishes.map(({ dish: id, verdict }) => [id, verdict.kind])).toEqual([
      ['stew', 'does-not'],
      ['greens', 'fits'],
    ])
    expect(veg?.best?.dish).toBe('greens')
    expect(silent?.best?.verdict).toEqual({ kind: 'not-confirmed', because: [{ kind: 'not-asked' }] })
    expect(found.map(without).map((list) => list.map(({ guest }) => guest))).toEqual([['silent'], ['silent']])
  })

  test('Y15 of two that fit, the one without what they would rather not have is the better', () => {
    const guest = eater('a', [{ need: 'lamb', grade: 'dislikes' }])
    const best = coverage(menu([MEAT, GREENS, PEARS]), [guest])[0]?.guests[0]?.best
    expect(best).toEqual({ dish: 'greens', verdict: { kind: 'fits', because: [] } })
  })

  test('Y15 who keeps kosher has no meat and milk at one meal: the side that leaves more of it is kept', () => {
    const cream = food('pears', 'pears-1', 'cream', { allergens: ['milk'] })
    const kosher = [avoids('k', 'kosher')]
    const kindsOf = (whole: Evening) =>
      coverage(whole, kosher).map(({ guests }) => guests[0]?.dishes.map(({ verdict }) => verdict.because[0]?.kind))
    // Without the lamb there are greens and the milky sweet: two courses, not one.
    expect(kindsOf(menu([MEAT, PEARS, cream]))).toEqual([['together', 'no-ingredients'], ['beyond']])
    const meatOnly = menu([MEAT, PEARS, cream])
    const two = { ...meatOnly, dishes: meatOnly.dishes.filter(({ id }) => id !== 'greens') }
    expect(kindsOf(two)).toEqual([['hidden'], ['together']])
    const confirmed = menu([MEAT, GREENS, PEARS, cream])
    const greens = { ...of(confirmed, 'greens'), confirmed: { for: ['kosher'], of: madeOf(confirmed, of(confirmed, 'greens')) } }
    const whole = { ...confirmed, dishes: confirmed.dishes.map((each) => (each.id === 'greens' ? greens : each)) }
    expect(coverage(whole, kosher)[0]?.guests[0]?.best).toMatchObject({ dish: 'greens', verdict: { kind: 'fits' } })
  })

  test('Y14 a child, and who drinks none, is told of alcohol in what fits them', () => {
    const wine = food('pears', 'pears-1', 'red wine', { contains: ['alcohol'] })
    const told = (guest: Eater) =>
      coverage(menu([GREENS, PEARS, wine]), [guest])[1]?.guests[0]?.best?.verdict.because.map(({ kind }) => kind)
    expect(told(eater('a', []))).toEqual([])
    expect(told(eater('a', [], { drinks: 'none' }))).toEqual(['alcohol-kept'])
    expect(told(eater('a', [], { child: true }))).toEqual(['alcohol-kept'])
  })
})

test('Y14 how long it is heated is read from the step where it goes in', () => {
  const whole = tableEvening('uk')
  expect(dishVerdict(whole, of(whole, 'chicken'), [{ need: 'alcohol', grade: 'avoids' }]).because).toContainEqual({
    kind: 'alcohol-kept',
    ingredient: 'chicken-1',
    need: 'alcohol',
    percent: 25,
    row: '5006',
    minutes: 60,
    source: 'usda-retention',
  })
})

describe('what a severe allergy asks', () => {
  const severe = (need: string) => [{ need, grade: 'severe' as const }]

  test('Y16 a plate that fits it does so with its guards in the plan, all four', () => {
    const whole = menu([MEAT, GREENS, PEARS])
    expect(dishVerdict(whole, of(whole, 'greens'), severe('nuts'))).toEqual({
      kind: 'with-change',
      because: [],
      change: [{ kind: 'guard', need: 'nuts' }],
    })
    const guarded = (...does: ('begin' | 'cover' | 'plate' | 'carry')[]): Evening => ({
      ...whole,
      steps: [
        ...whole.steps,
        ...does.map((each) => ({ ...step(`g-${each}`, 1), dish: 'greens', guard: { for: 'nuts', does: each } })),
      ],
    })
    expect(dishVerdict(guarded('begin', 'cover', 'plate'), of(whole, 'greens'), severe('nuts')).kind).toBe('with-change')
    const all = guarded('begin', 'cover', 'plate', 'carry')
    expect(dishVerdict(all, of(whole, 'greens'), severe('nuts')).kind).toBe('fits')
    expect(dishVerdict(all, of(whole, 'greens'), severe('sesame')).kind).toBe('with-change')
    expect(guardsOf(guarded('begin'), [eater('a', severe('nuts')), eater('b', severe('nut-free'))])).toEqual([
      { dish: 'stew', need: 'nuts', portions: 2, missing: ['begin', 'cover', 'plate', 'carry'] },
      { dish: 'pears', need: 'nuts', portions: 2, missing: ['begin', 'cover', 'plate', 'carry'] },
    ])
  })

  test('Y17 from another kitchen it is not confirmed until its cook has made sure, and not any more when it is made of something else', () => {
    const base = menu([GREENS, PEARS])
    const away = { ...of(base, 'greens'), kitchen: 'next' }
    const carry = { ...step('carry', 5, role('carry'), where('outside'), follows('greens-1')), dish: 'greens' }
    const at = (change: Partial<typeof away>, ingredients = base.ingredients): Evening => ({
      ...base,
      ingredients,
      steps: [...base.steps, carry],
      dishes: base.dishes.map((each) => (each.id === 'greens' ? { ...away, ...change } : each)),
    })
    const kind = (whole: Evening, grade: 'allergy' | 'avoids' = 'allergy') => {
      const { because, kind: standing } = dishVerdict(whole, of(whole, 'greens'), [{ need: 'nuts', grade }])
      return [standing, because[0]?.kind]
    }
    expect(kind(at({}))).toEqual(['not-confirmed', 'other-kitchen'])
    expect(kind(at({}), 'avoids')).toEqual(['fits', undefined])
    const mark = madeOf(at({}), away)
    expect(kind(at({ confirmed: { for: ['nuts'], of: mark } }))).toEqual(['fits', undefined])
    expect(kind(at({ confirmed: { for: ['sesame'], of: mark } }))).toEqual(['not-confirmed', 'other-kitchen'])
    const more = [...base.ingredients, food('greens', 'greens-1', 'leeks')]
    expect(kind(at({ confirmed: { for: ['nuts'], of: mark } }, more))).toEqual(['not-confirmed', 'changed-since'])
    // Another place in the list, or another amount, is no other dish.
    const turned = [...base.ingredients].toReversed().map((each) => ({ ...each, amount: { n: '2', unit: 'kg' } }))
    expect(madeOf({ ingredients: turned }, away)).toBe(mark)
    expect(madeOf({ ingredients: base.ingredients.map((each) => ({ ...each, checked: 'unknown' as const })) }, away)).not.toBe(
      mark,
    )
  })
})

describe('the fewest changes', () => {
  const kinds = (changes: readonly TableChange[]) => changes.map(({ kind, guests }) => [kind, guests])

  test('Y18 a swap serves all whom it is for, a question comes before a swap, and a dish is added only where nothing else helps', () => {
    const crackers = food('greens', 'greens-1', 'crackers', { checked: 'unknown' })
    const milky = { ...CREAM, swap: { for: ['milk', 'vegan'], food: 'olive oil' } }
    const stewed = food('stew', 'stew-1', 'leeks')
    const whole = menu([stewed, milky, crackers, PEARS])
    const guests = [eater('m', [{ need: 'milk', grade: 'allergy' }]), avoids('v', 'vegan'), eater('h', null)]
    expect(kinds(fewestChanges(whole, guests))).toEqual([
      ['ask-needs', ['h']],
      ['check', ['m', 'v']],
    ])
    const found = fewestChanges({ ...whole, dishes: whole.dishes.filter(({ id }) => id !== 'greens') }, guests)
    expect(kinds(found)).toEqual([
      ['swap', ['m', 'v']],
      ['ask-needs', ['h']],
    ])
    expect(found[0]).toMatchObject({
      dish: 'stew',
      ingredient: 'stew-cream',
      food: 'olive oil',
      needs: ['milk', 'vegan'],
      fork: 'stew-1',
      portions: 2,
    })
    const meaty = food('pears', 'pears-1', 'gelatine', { contains: ['gelatine'] })
    expect(kinds(fewestChanges(menu([GREENS, PEARS, meaty]), [avoids('v', 'vegan'), avoids('w', 'vegetarian')]))).toEqual([
      ['add-dish', ['v', 'w']],
    ])
  })

  test('Y18 what goes in late can be left out of a variant, but not what the dish is called after', () => {
    const nuts = food('stew', 'stew-2', 'walnuts', { allergens: ['nuts'] })
    const whole = menu([food('stew', 'stew-1', 'leeks'), nuts, PEARS])
    const only = { ...whole, dishes: whole.dishes.filter(({ id }) => id !== 'greens') }
    const guest = [avoids('a', 'nuts')]
    expect(fewestChanges(only, guest)).toEqual([
      {
        kind: 'leave-out',
        dish: 'stew',
        ingredient: 'stew-walnuts',
        needs: ['nuts'],
        guests: ['a'],
        fork: 'stew-1',
        portions: 1,
      },
    ])
    const lamb = menu([food('stew', 'stew-2', 'lamb', { contains: ['meat'] }), PEARS])
    const named = {
      ...lamb,
      dishes: lamb.dishes.filter(({ id }) => id !== 'greens').map((each) => ({ ...each, name: 'Lamb stew' })),
    }
    expect(fewestChanges(named, [avoids('a', 'vegetarian')]).map(({ kind }) => kind)).toEqual(['add-dish'])
  })

  test('Y18 nothing is asked where everybody has something', () => {
    expect(fewestChanges(menu([MEAT, GREENS, PEARS]), [avoids('a', 'vegetarian'), eater('b', [])])).toEqual([])
  })

  /** The swap made for everybody, as a command would write it. */
  const swapped = (whole: Evening, change: TableChange): Evening =>
    change.kind !== 'swap'
      ? whole
      : {
          ...whole,
          ingredients: whole.ingredients.map((each) => {
            if (each.id !== change.ingredient) return each
            const { swap, abv: _abv, ...rest } = each
            return { ...rest, food: change.food, allergens: [], contains: [], suits: swap?.for ?? [], checked: 'check-label' }
          }),
        }

  test('Y18 what was offered, once taken, never leaves a plate that surely does not fit those it was for', () => {
    const roll = dice(11)
    const NEEDS = ['vegan', 'vegetarian', 'milk', 'nuts', 'soya', 'alcohol', 'coeliac', 'pork', 'fish']
    const FOODS: readonly Partial<Ingredient>[] = [
      { food: 'cream', allergens: ['milk'] },
      { food: 'shoyu', allergens: ['soya', 'gluten', 'wheat'] },
      { food: 'bacon', contains: ['pork', 'meat'] },
      { food: 'walnuts', allergens: ['nuts'] },
      { food: 'anchovies', allergens: ['fish'] },
      { food: 'red wine', contains: ['alcohol'], abv: 12 },
      { food: 'leeks' },
    ]
    const INSTEAD = ['olive oil', 'soya cream', 'almond milk', 'coconut milk', 'mushrooms', 'capers', 'flour', '']
    let taken = 0
    for (let round = 0; round < 120; round += 1) {
      const foods = ['stew', 'greens', 'pears'].flatMap((id) =>
        Array.from({ length: roll.int(1, 3) }, (_, at) => {
          const base = roll.pick(FOODS)
          const swap = roll.chance(0.6) ? { for: [roll.pick(NEEDS), roll.pick(NEEDS)], food: roll.pick(INSTEAD) } : undefined
          return { ...food(id, `${id}-1`, 'x', base), id: `${id}-${at}`, ...(swap ? { swap } : {}) }
        }),
      )
      const whole = menu(foods)
      const guests = Array.from({ length: roll.int(1, 4) }, (_, at) => avoids(`g${at}`, ...roll.some(NEEDS, roll.int(1, 2))))
      const changes = fewestChanges(whole, guests)
      const after = changes.reduce(swapped, whole)
      for (const change of changes) {
        if (change.kind !== 'swap') continue
        for (const id of change.guests) {
          const needs = guests.find((each) => each.id === id)?.needs ?? null
          const others = changes.some(
            (each) => each.kind === 'leave-out' && each.dish === change.dish && each.guests.includes(id),
          )
          if (others) continue
          taken += 1
          const verdict = dishVerdict(after, of(after, change.dish), needs)
          expect(verdict.kind, JSON.stringify({ foods, needs, changes })).not.toBe('does-not')
        }
      }
    }
    expect(taken).toBeGreaterThan(15)
  })

  test('Y18 the smallest set is exact: as cheap as the best of all combinations', () => {
    const roll = dice(5)
    const keys = ['a', 'b', 'c', 'd', 'e', 'f', 'g', 'h', 'i']
    const prices = [PRICES['add-dish'], PRICES.swap, PRICES.check]
    let hard = 0
    for (let round = 0; round < 120; round += 1) {
      const price = new Map(keys.map((key) => [key, roll.pick(prices)]))
      const costOf = (set: ReadonlySet<string>) => [...set].reduce((sum, key) => sum + (price.get(key) ?? 0), 0)
      const wishes: Wish[] = Array.from({ length: roll.int(1, 6) }, () => ({
        ways: Array.from({ length: roll.int(1, 3) }, () => roll.some(keys, roll.int(1, 3))),
      }))
      const met = (set: ReadonlySet<string>) => wishes.every(({ ways }) => ways.some((way) => way.every((key) => set.has(key))))
      const found = smallestSet(wishes, (key) => price.get(key) ?? 0)
      expect(met(found)).toBe(true)
      let least = Number.POSITIVE_INFINITY
      for (let bits = 0; bits < 2 ** keys.length; bits += 1) {
        const set = new Set(keys.filter((_, at) => bits & (1 << at)))
        if (met(set)) least = Math.min(least, costOf(set))
      }
      expect(costOf(found), JSON.stringify(wishes)).toBe(least)
      if (found.size > 2) hard += 1
    }
    expect(hard).toBeGreaterThan(20)
  })

  test('Y18 twenty guests at one course of fifteen dishes are answered, and each gets a way', () => {
    const whole = tableEvening('strictest')
    const guests = SITTERS.map(({ id, needs }) => eater(id, needs))
    const changes = fewestChanges(whole, guests)
    const lacking = coverage(whole, guests).flatMap((each) => without(each).map(({ guest }) => guest))
    expect(lacking).toEqual(['silent', 'kosher'])
    for (const id of lacking)
      expect(
        changes.some((each) => each.guests.includes(id)),
        id,
      ).toBe(true)
    expect(coverage(whole, guests)[0]?.guests.filter(({ best }) => best && isSomething(best.verdict))).toHaveLength(18)
  })
})

test('Y20 labels that are still to be read are a list for the shopper, with what to look for; a plain food needs none', () => {
  const whole = menu([
    food('stew', 'stew-1', 'vegetable stock', { checked: 'check-label', shop: 'market' }),
    food('stew', 'stew-1', 'leeks', { checked: 'unknown' }),
    food('greens', 'greens-1', 'crackers', { checked: 'unknown' }),
    food('pears', 'pears-1', 'dark chocolate', { checked: 'known' }),
  ])
  expect(labelsToCheck(whole).map(({ food: name, shop }) => [name, shop])).toEqual([
    ['vegetable stock', 'market'],
    ['crackers', null],
  ])
  const [stock, crackers] = labelsToCheck(whole, [
    { need: 'sesame', grade: 'allergy' },
    { need: 'vegan', grade: 'avoids' },
  ])
  expect(stock?.look).toEqual(['milk', 'fish', 'sesame'])
  expect(crackers?.look).toEqual(['milk', 'eggs', 'sesame'])
  const dropped = { ...whole, dishes: whole.dishes.map((each) => ({ ...each, state: 'dropped' as const })) }
  expect(labelsToCheck(dropped)).toEqual([])
})

test('Y21 raw egg and the like are minded until a step says that it is cooked through', () => {
  const at = (minutes: 'raw' | 'warm' | 'through'): Evening => {
    const hot = {
      ...step('p2', 30, follows('p1')),
      ways: [{ ...step('x', 30).ways[0], uses: [{ kind: 'ring' as const, size: 'medium' as const }] }],
    } as Evening['steps'][number]
    const steps = [step('p1', 5), ...(minutes === 'raw' ? [] : [minutes === 'warm' ? hot : { ...hot, until: { coreC: 74 } }])]
    const whole = evening(course('main', dish('pudding', dishWith({ name: 'Pudding' }), ...steps)))
    return { ...whole, ingredients: [food('pudding', 'p1', 'eggs', { allergens: ['eggs'] })] }
  }
  const found = (of2: Evening) => dishVerdict(of2, of(of2, 'pudding'), [{ need: 'pregnancy', grade: 'avoids' }])
  expect(found(at('raw'))).toMatchObject({
    kind: 'does-not',
    because: [{ kind: 'has', trait: 'raw-egg', source: 'nhs-pregnancy' }],
  })
  expect(found(at('warm'))).toMatchObject({ kind: 'not-confirmed', because: [{ kind: 'cooked-through' }] })
  expect(found(at('through')).kind).toBe('fits')
})

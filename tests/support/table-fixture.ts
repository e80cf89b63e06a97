import type { Evening } from '#lib/domain/evening.ts'
import type { Ingredient, Rules } from '#lib/domain/ingredient.ts'
import type { Guest } from '#lib/domain/people.ts'
import type { Standing } from '#lib/table/verdict.ts'
import { course, dish, dishWith, evening, follows, HOME_KIT, kitchen, oven, ring, role, step, where } from './evening-builders.ts'

/** Twenty guests at fifteen dishes, with what goes wrong when food is judged by its name, by its label or by one list alone. */

type Fields = Partial<Ingredient>

const known = (food: string, allergens: Ingredient['allergens'] = [], more: Fields = {}): Fields => ({
  food,
  allergens,
  checked: 'known',
  ...more,
})
const label = (food: string, allergens: Ingredient['allergens'] = []): Fields => ({ food, allergens, checked: 'check-label' })

interface Row {
  readonly id: string
  readonly foods: readonly Fields[]
  /** How it is cooked. */
  readonly how: 'not' | 'ring' | 'oven' | 'through'
}

const row = (id: string, how: Row['how'], ...foods: Fields[]): Row => ({ id, how, foods })

const ROWS: readonly Row[] = [
  // A stock cube hides celery, cereals, milk, soya and fish (FSA, 14 allergens; milk, soya and fish from memory).
  row('soup', 'ring', known('celeriac', ['celery']), label('vegetable stock'), known('double cream', ['milk'])),
  // An American label is silent about celery, mustard, lupin, molluscs and cereals but wheat (FALCPA; T15).
  row('salad', 'not', known('tomatoes'), known('spice mix', [], { labelRules: 'us' }), known('olive oil')),
  // Pesto: nuts by the maker, and cheese with rennet (from memory).
  row('beans', 'ring', known('green beans'), label('pesto', ['milk'])),
  // Pine nuts: a nut in the US and in AU/NZ, none in the EU (FDA 2025; Schedule 9; 1169/2011, Annex II).
  row('spinach', 'ring', known('spinach'), known('pine nuts', [], { contains: ['pine-nut'] }), known('olive oil')),
  // Coconut: on none of the three lists since January 2025 (FDA, 5th edition).
  row('rice', 'ring', known('basmati rice'), known('coconut milk', [], { contains: ['coconut'] })),
  // Fish in a brown sauce (FSA, 14 allergens).
  row(
    'lamb',
    'through',
    known('lamb shoulder', [], { contains: ['meat'] }),
    known('Worcester sauce', ['fish']),
    known('carrots'),
  ),
  // Wine: alcohol that stays (USDA retention), sulphites, fining; meat with cream at one meal (kosher basics).
  row(
    'chicken',
    'through',
    known('chicken thighs', [], { contains: ['meat', 'poultry'] }),
    known('dry white wine', ['sulphites'], { contains: ['alcohol'], abv: 12 }),
    known('cream', ['milk']),
    known('leeks'),
  ),
  // Gelatine is of an animal, of which nobody knows (ISO 23662; CAC/GL 24).
  row('cream', 'ring', known('cream', ['milk']), known('leaf gelatine', [], { contains: ['gelatine'] }), known('caster sugar')),
  // Rennet stands on no label; hard cheese has little lactose (EFSA 2010).
  row('cheese', 'not', known('hard mature cheese', ['milk']), known('pears')),
  // Oats are gluten in the EU and no wheat in the US (CXS 118; Coeliac UK).
  row(
    'crumble',
    'oven',
    known('rolled oats', ['gluten']),
    known('butter', ['milk'], { swap: { for: ['vegan', 'milk'], food: 'olive oil' } }),
    known('apples'),
  ),
  // Soy sauce is brewed with wheat (USDA SR28 16123).
  row('noodles', 'ring', known('rice noodles'), known('shoyu', ['soya', 'gluten', 'wheat']), known('spring onions')),
  // Raw egg (NHS; FoodSafety.gov); a European label names no pine nut.
  row('mousse', 'not', known('eggs', ['eggs']), known('dark chocolate', ['soya'], { labelRules: 'eu' }), known('caster sugar')),
  // Cured fish is not cooked (NHS).
  row('trout', 'not', known('cured trout', ['fish']), known('lemon'), known('dill')),
  // Nuts by name; an egg that is baked, nobody knows how far.
  row(
    'tart',
    'oven',
    known('ground almonds', ['nuts'], { contains: ['almond'] }),
    known('eggs', ['eggs']),
    known('butter', ['milk']),
  ),
  // From another home, and nobody has looked at the crumbs.
  row('bake', 'oven', known('aubergines'), { food: 'breadcrumbs', allergens: ['gluten', 'wheat'], checked: 'unknown' }),
]

const cooked = ({ id, how }: Row) =>
  how === 'not'
    ? step(`${id}-make`, 10)
    : how === 'ring'
      ? step(`${id}-make`, 60, ring('medium'))
      : step(`${id}-make`, 60, oven(160, 180), how === 'through' ? (each) => ({ ...each, until: { coreC: 75 } }) : (each) => each)

/** The fixture's evening under some rules. */
export const tableEvening = (rules: Rules): Evening => {
  const menu = evening(
    { kitchens: [kitchen('home', HOME_KIT), kitchen('next', [])] },
    course(
      'all',
      ...ROWS.map((each) =>
        each.id === 'bake'
          ? dish(
              each.id,
              dishWith({ kitchen: 'next' }),
              cooked(each),
              step('bake-carry', 5, role('carry'), where('outside'), follows('bake-make')),
            )
          : dish(each.id, cooked(each)),
      ),
    ),
  )
  const ingredients = ROWS.flatMap(({ id, foods }) =>
    foods.map(
      (fields, at): Ingredient => ({
        id: `${id}-${at}`,
        dish: id,
        order: `a${at}`,
        step: `${id}-make`,
        food: '',
        amount: null,
        scales: 'yes',
        allergens: [],
        checked: 'unknown',
        contains: [],
        ...fields,
      }),
    ),
  )
  return { ...menu, rules, ingredients }
}

export const TABLE_DISHES: readonly string[] = ROWS.map(({ id }) => id)

/** A letter for each standing. */
export const LETTER: Readonly<Record<Standing, string>> = { fits: 'F', 'with-change': 'C', 'not-confirmed': 'N', 'does-not': 'X' }

interface Sitter {
  readonly id: string
  readonly needs: Guest['needs']
  /** By hand: one letter a dish, in their order, under the strictest rules, and where other rules differ. */
  readonly strictest: string
  readonly others?: Readonly<Partial<Record<Rules, string>>>
}

const sitter = (id: string, needs: Guest['needs'], strictest: string, others: Sitter['others'] = {}): Sitter => ({
  id,
  needs,
  strictest: strictest.replaceAll(' ', ''),
  others,
})
const one = (need: string, grade: NonNullable<Guest['needs']>[number]['grade']): Guest['needs'] => [{ need, grade }]

//       soup salad beans spinach rice lamb chicken cream cheese crumble noodles mousse trout tart bake
export const SITTERS: readonly Sitter[] = [
  sitter('everything', [], 'F F F F F F F F F F F F F F F'),
  sitter('silent', null, 'N N N N N N N N N N N N N N N'),
  sitter('vegetarian', one('vegetarian', 'avoids'), 'N F N F F X X X N F F F X F N'),
  sitter('vegan', one('vegan', 'avoids'), 'X F X F F X X X X C F X X X N'),
  sitter('pescatarian', one('pescatarian', 'avoids'), 'N F N F F X X X N F F F F F N'),
  sitter('halal', one('halal', 'avoids'), 'N F N F F N X N N F F F F F N'),
  sitter('kosher', one('kosher', 'avoids'), 'N N N N N N X N N N N N N N N'),
  sitter('coeliac', one('coeliac', 'allergy'), 'N N N F F F F F F X X F F F X', { us: 'NNNNNNNNNXXFNNX' }),
  sitter('lactose', one('lactose', 'avoids'), 'X F X F F F X X N N F F F N N'),
  sitter('milk', one('milk', 'allergy'), 'X F X F F F X X X C F F F X N'),
  sitter('nuts', one('nuts', 'severe'), 'N C N X N C C C C C C N C X N', { eu: 'NCNNNCCCCCCCCXN', uk: 'NCNNNCCCCCCCCXN' }),
  sitter('pine-nut', one('pine-nut', 'allergy'), 'N F N X F F F F F F F N F F N', {
    eu: 'NFNXNNNNNNNNNNN',
    uk: 'NFNXNNNNNNNNNNN',
  }),
  sitter('celery', one('celery', 'allergy'), 'X N N F F F F F F F F F F F N', {
    us: 'XNNNNNNNNNNFNNN',
    au: 'XNNNNNNNNNNFNNN',
  }),
  sitter('peanuts', one('peanuts', 'allergy'), 'N F N F F F F F F F F F F F N'),
  sitter('fish', one('fish', 'allergy'), 'N F N F F X F F F F F F X F N'),
  sitter('pregnant', one('pregnancy', 'avoids'), 'N F N F F F X F F F F X X N N'),
  sitter('immunity', one('low-immunity', 'avoids'), 'N F N F F F F F F F F X X N N'),
  sitter('alcohol', one('alcohol', 'avoids'), 'N F N F F F X F F F F F F F N'),
  sitter('pork', one('pork', 'avoids'), 'N F N F F F F N F F F F F F N'),
  sitter('mustard', one('mustard', 'allergy'), 'N N N F F F F F F F F F F F N', {
    us: 'NNNNNNNNNNNFNNN',
    au: 'NNNNNNNNNNNFNNN',
  }),
]

/** What is expected for somebody under these rules. */
export const expectedRow = (of: Sitter, rules: Rules): string => of.others?.[rules] ?? of.strictest

import { means, type Parts, type Said, wrong } from '#app/_ui/parts.ts'
import { amountText } from '#app/_words/amount.ts'
import { listText } from '#app/_words/clock.ts'
import {
  allergenWords,
  CONTAINED,
  checkedWords,
  foodWord,
  joinFood,
  readWords,
  rulesWords,
  scalesWords,
  splitFood,
  swapForText,
} from '#app/_words/food.ts'
import { shorten } from '#app/_words/shorten.ts'
import { cleanText } from '#lib/domain/atoms.ts'
import { Allergen, type Ingredient } from '#lib/domain/ingredient.ts'
import type { Step } from '#lib/domain/menu.ts'
import { nameUnit, unitText } from '#lib/domain/unit-words.ts'
import type { Patch } from '#lib/plan/commands/set.ts'
import { readUnit } from '#lib/quantities/units.ts'
import { readAmount } from '#lib/recipes/make-ingredient.ts'

export type IngredientPatch = Patch<'ingredients'>
type Sentence = Parts<IngredientPatch>

const NONE = ''
/** Letters that a line of the page holds; longer words are written over several. */
const LONG = 34
const line = (text: string): string => cleanText(text, false).replace(/\s+/g, ' ').trim()
const nameOf = (ingredient: Ingredient): string => shorten(splitFood(ingredient.food).food, 30)
const entries = <T extends string>(table: Readonly<Record<T, string>>): readonly (readonly [T, string])[] =>
  Object.entries<string>(table).map(([value, words]) => [value as T, words] as const)

/** "1 kg of potatoes, peeled, for “Boil the potatoes”; it grows with the portions." */
export const ingredientParts = (ingredient: Ingredient, steps: readonly Step[]): Sentence => {
  const { food, note } = splitFood(ingredient.food)
  const named = (what: string) => `${nameOf(ingredient)}: ${what}`
  const put = (next: { readonly food?: string; readonly note?: string }): Said<IngredientPatch> => {
    const whole = joinFood(next.food ?? food, next.note ?? note)
    if ((next.food ?? food) === '') return wrong('Say what it is.')
    return whole.length > 200 ? wrong('Say it in at most 200 letters.') : means({ food: whole })
  }
  return [
    {
      kind: 'text',
      at: 'amount',
      label: named('amount as the recipe has it'),
      text: ingredient.amount === null ? '' : amountText(ingredient.amount),
      empty: 'to taste',
      write: (text) => {
        if (/^(?:|to taste|some)$/i.test(text.trim())) return means({ amount: null, scales: 'by-taste' })
        const amount = readAmount(text, '.')
        return amount === null
          ? wrong('Write an amount, such as 250 g, ½ US cup, 2 to 3 or 2 × 400 g tin. Leave it empty for “to taste”.')
          : means({ amount })
      },
    },
    ' of ',
    {
      kind: 'text',
      at: 'food',
      label: named('food'),
      text: food,
      long: food.length > LONG,
      write: (text) => put({ food: line(text) }),
    },
    ', ',
    {
      kind: 'text',
      at: 'note',
      label: named('what is done to it'),
      text: note,
      long: note.length > LONG,
      empty: 'as it is',
      write: (text) => put({ note: line(text) }),
    },
    ', for ',
    {
      kind: 'choice',
      at: 'step',
      label: named('step that it is for'),
      value: ingredient.step ?? NONE,
      options: [
        [NONE, 'the dish'],
        ...steps.map((step) => [step.id, `“${shorten(step.does || 'a step without words', 40)}”`] as const),
      ],
      choose: (step) => means({ step: step === NONE ? undefined : step }),
    },
    '; ',
    {
      kind: 'choice',
      at: 'scales',
      label: named('how it grows'),
      value: ingredient.scales,
      options: entries(scalesWords),
      choose: (scales) => means({ scales: scales as Ingredient['scales'] }),
    },
    '. ',
    ...whoseParts(ingredient),
  ]
}

/** "Whose cup is it?", where the text does not say; empty where it does. */
const whoseParts = (ingredient: Ingredient): Sentence => {
  const { amount } = ingredient
  const reading = amount && readUnit(amount.unit, null)
  const word = amount && nameUnit(amount.unit)?.word
  if (!amount || !word || reading?.kind !== 'which') return []
  return [
    `Whose ${word} is it? `,
    {
      kind: 'choice',
      at: 'amount.owner',
      label: `${nameOf(ingredient)}: whose ${word}`,
      value: NONE,
      options: [
        [NONE, 'not said'],
        ...reading.units.map(
          (unit) => [unit.owner ?? '', `${unitText(unit)}, ${Math.round(Number(unit.size) * 10) / 10} ml`] as const,
        ),
      ],
      choose: (owner) => {
        const unit = reading.units.find((each) => each.owner === owner)
        return means({ amount: { ...amount, unit: unit ? unitText(unit) : amount.unit } })
      },
    },
    '. ',
  ]
}

/** "Of its allergens, that is all: somebody has made sure, under British rules." */
export const allergenParts = (ingredient: Ingredient): Sentence => [
  ingredient.allergens.length === 0 ? 'No allergen is named here; ' : 'These are named; ',
  {
    kind: 'choice',
    at: 'checked',
    label: `${nameOf(ingredient)}: whether its allergens are known`,
    value: ingredient.checked,
    options: entries(checkedWords),
    choose: (checked) => means({ checked: checked as Ingredient['checked'] }),
  },
  ', by a label under ',
  {
    kind: 'choice',
    at: 'labelRules',
    label: `${nameOf(ingredient)}: rules of its label`,
    value: ingredient.labelRules ?? NONE,
    options: [[NONE, 'the rules of this evening'], ...entries(rulesWords)],
    choose: (rules) => means({ labelRules: rules === NONE ? undefined : (rules as Ingredient['labelRules']) }),
  },
  '.',
]

/** "It contains meat and alcohol. Instead, for no milk: oat cream. It has 13 % of alcohol." */
export const containsParts = (ingredient: Ingredient): Sentence => {
  const named = (what: string) => `${nameOf(ingredient)}: ${what}`
  const { swap } = ingredient
  const swapped = (next: NonNullable<Ingredient['swap']>): Said<IngredientPatch> =>
    means({ swap: next.food === '' && next.for.length === 0 ? undefined : next })
  return [
    'It contains ',
    {
      kind: 'text',
      at: 'contains',
      label: named('what it contains'),
      text: listText(ingredient.contains.map(foodWord)),
      empty: 'nothing that one would ask for',
      write: (text) => {
        const words = readWords(text)
        return words === null ? wrong('Write words such as meat, fish, honey, with commas.') : means({ contains: [...words] })
      },
    },
    '. Instead, for ',
    {
      kind: 'text',
      at: 'swap.for',
      label: named('who needs something else'),
      text: listText((swap?.for ?? []).map(swapForText)),
      empty: 'nobody',
      write: (text) => {
        const words = readWords(text)
        return words === null
          ? wrong('Write needs such as vegan, no milk, with commas.')
          : swapped({ for: [...words], food: swap?.food ?? '' })
      },
    },
    ': ',
    {
      kind: 'text',
      at: 'swap.food',
      label: named('what they get instead'),
      text: swap?.food ?? '',
      empty: 'nothing else',
      write: (text) =>
        line(text).length > 200 ? wrong('Say it in at most 200 letters.') : swapped({ for: swap?.for ?? [], food: line(text) }),
    },
    '. ',
    'Its label names it right for ',
    {
      kind: 'text',
      at: 'suits',
      label: named('needs that its label names as met'),
      text: listText((ingredient.suits ?? []).map(foodWord)),
      empty: 'nobody in particular',
      write: (text) => {
        const words = readWords(text)
        if (words === null) return wrong('Write needs such as vegan, gluten-free, halal, with commas.')
        return means({ suits: words.length === 0 ? undefined : [...words] })
      },
    },
    '. ',
    'It has ',
    {
      kind: 'text',
      at: 'abv',
      label: named('alcohol by volume'),
      text: ingredient.abv === undefined ? '' : `${ingredient.abv} %`,
      empty: 'no alcohol said',
      write: (text) => {
        if (text.trim() === '') return means({ abv: undefined })
        const abv = Number(text.replace('%', '').replace(',', '.').trim())
        return Number.isFinite(abv) && abv >= 0 && abv <= 96
          ? means({ abv })
          : wrong('Write a percentage up to 96, such as 13 %.')
      },
    },
    ' by volume.',
  ]
}

/** "To be bought at the market, among the herbs." */
export const shopParts = (ingredient: Ingredient): Sentence => {
  const text = (at: 'shop' | 'aisle', what: string, empty: string): Sentence[number] => ({
    kind: 'text',
    at,
    label: `${nameOf(ingredient)}: ${what}`,
    text: ingredient[at] ?? '',
    empty,
    write: (said) =>
      line(said).length > 80
        ? wrong('Say it in at most 80 letters.')
        : means({ [at]: line(said) === '' ? undefined : line(said) }),
  })
  return ['To be bought at ', text('shop', 'shop', 'any shop'), ', ', text('aisle', 'where in the shop', 'anywhere in it'), '.']
}

const toggled = <T extends string>(all: readonly T[], list: readonly T[], word: T): T[] =>
  list.includes(word)
    ? list.filter((each) => each !== word)
    : [...all.filter((each) => each === word || list.includes(each)), ...list.filter((each) => !all.includes(each))]

/** Words of which any may be true of an ingredient, each ticked or not. */
export interface Ticked {
  readonly legend: string
  readonly options: readonly (readonly [word: string, words: string])[]
  readonly ticked: readonly string[]
  readonly tick: (word: string) => IngredientPatch
}

export const allergenTicks = ({ allergens }: Ingredient): Ticked => ({
  legend: 'Allergens in it',
  options: entries(allergenWords),
  ticked: allergens,
  tick: (word) => {
    const known = Allergen.safeParse(word)
    return known.success ? { allergens: toggled(Allergen.options, allergens, known.data) } : {}
  },
})

export const containsTicks = ({ contains }: Ingredient): Ticked => ({
  legend: 'It contains',
  options: CONTAINED.map((word) => [word, foodWord(word)] as const),
  ticked: contains,
  tick: (word) => ({ contains: toggled(CONTAINED, contains, word) }),
})

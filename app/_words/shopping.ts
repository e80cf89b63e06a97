import type { Evening } from '#lib/domain/evening.ts'
import { nameUnit } from '#lib/domain/unit-words.ts'
import { type Exact, exact } from '#lib/quantities/exact.ts'
import { sensible } from '#lib/quantities/sensible.ts'
import { UNITS } from '#lib/quantities/units.ts'
import type { AisleKind } from '#lib/shopping/aisles.ts'
import { type Aisle, isOpen, type Line, type When } from '#lib/shopping/line.ts'
import { amountText, numberText, sensibleText } from './amount.ts'
import { countText, dayName, listText, sentence } from './clock.ts'
import type { Names } from './names.ts'
import { traitWords } from './trait.ts'

export const aisleWords: Readonly<Record<AisleKind, string>> = {
  produce: 'Fruit, vegetables and herbs',
  bakery: 'Bread',
  fish: 'Fish',
  meat: 'Meat',
  dairy: 'Milk, butter and eggs',
  cupboard: 'Dry and tinned',
  spices: 'Salt and spices',
  frozen: 'Frozen',
  drinks: 'Drinks',
  ice: 'Ice',
  other: 'Other things',
}
export const aisleText = (aisle: Aisle): string => (aisle.kind === 'named' ? sentence(aisle.name) : aisleWords[aisle.kind])

/** "any shop", or its name. */
export const shopText = (shop: string | null): string => shop ?? 'Any shop'

const GRAM = UNITS.find(({ word }) => word === 'g') ?? null
const MILLILITRE = UNITS.find(({ word }) => word === 'ml') ?? null

/** An exact amount in a line's unit as one says it: "380 g", "1.2 l", "3", "2 tins", "75 cl" of a bottle. */
export const lineAmountText = (n: Exact, unit: string): string => {
  if (unit === 'g' || unit === 'ml') {
    const shown = sensible(n, unit === 'g' ? GRAM : MILLILITRE)
    return sensibleText(shown, null, unit)
  }
  return nameUnit(unit) ? `${numberText(sensible(n, null).value)} ${unit}` : amountText({ n: n.toFraction(), unit })
}

/** A pack: "250 g", "75 cl", "6" of eggs. */
const packText = (n: Exact, unit: string, isDrink: boolean): string =>
  isDrink && unit === 'ml' && n.compare(1000) < 0 ? `${numberText(n.div(10), 'cl')} cl` : lineAmountText(n, unit)

/** What is put into the basket: "2 × 250 g", "380 g", "3"; empty where only the thing is known. */
export const toBuyText = (line: Line): string => {
  const { amount, unit, pack, packs, buy, kind } = line
  const count = buy ?? packs
  if (unit === null || amount === null) return count === null ? '' : String(count)
  if (count === null) return lineAmountText(amount, unit)
  if (pack) return `${count === 1 ? '' : `${count} × `}${packText(pack.n, pack.unit, kind === 'drink')}`
  return lineAmountText(exact(String(count)), unit)
}

/** What the dishes come to where that is not what is bought: "380 g wanted". */
export const wantedText = (line: Line): string => {
  const { needs, amount, unit, refuse, ready, pack, have } = line
  if (needs === null || unit === null || amount === null) return line.toTaste ? 'to taste' : ''
  const wanted = lineAmountText(needs, unit)
  const parts = [
    (pack || have !== null || ready) && wanted !== toBuyText(line) ? `${wanted} wanted` : '',
    ready && refuse ? `${lineAmountText(amount, unit)} as bought` : '',
    have !== null && have !== 'all' ? `${lineAmountText(have, unit)} in the house` : '',
    line.toTaste ? 'and some to taste' : '',
  ]
  return parts.filter(Boolean).join(', ')
}

/** "on Saturday, fresh", "not before Friday", "by Thursday". */
export const whenText = (when: When, date: string): string => {
  switch (when.kind) {
    case 'any':
      return when.by === null ? '' : `by ${dayName(date, when.by)}`
    case 'on':
      return when.said ? `on ${dayName(date, when.day)}` : `on ${dayName(date, when.day)}, fresh`
    case 'from':
      return `not before ${dayName(date, when.day)}`
  }
}

/** Who gets it: a cook, the home whose it is, or nobody yet. */
export const whoText = (line: Line, names: Names): string => {
  if (line.by !== null) return names.cookName(line.by)
  return line.home === null ? '' : names.kitchenName(line.home)
}

/** The dishes that want it, each once. */
export const dishesText = (line: Line, names: Names): string =>
  listText([...new Set(line.parts.map(({ dish }) => names.dishName(dish)))])

const isTrait = (word: string): word is keyof typeof traitWords => Object.hasOwn(traitWords, word)

/** "Read the label: milk, soya?"; empty where there is nothing to read. */
export const labelText = (line: Line): string => {
  if (line.labels.length === 0) return ''
  const look = [...new Set(line.labels.flatMap((label) => label.look))].filter(isTrait).map((trait) => traitWords[trait])
  return look.length === 0 ? 'Read the label' : `Read the label: ${look.slice(0, 6).join(', ')}${look.length > 6 ? ' …' : ''}?`
}

/** "12.40": hundredths of whatever one pays with. */
export const moneyText = (hundredths: number): string => (hundredths / 100).toFixed(2)

/** Reads "12", "12.4", "3,50 €"; null when it is no price. */
export const readMoney = (text: string): number | null => {
  const found = /^\D{0,4}(\d{1,5})(?:[.,](\d{1,2}))?\D{0,4}$/.exec(text.trim())
  return found ? Number(found[1]) * 100 + Number((found[2] ?? '').padEnd(2, '0')) : null
}

/** "3 of 41 left": `have` and what is in the basket are done. */
export const leftText = (lines: readonly Line[]): string => {
  const left = lines.filter(isOpen).length
  const all = lines.filter(({ standing }) => standing.kind !== 'have').length
  if (all === 0) return 'nothing to buy'
  return left === 0 ? 'all is bought' : `${left} of ${all} left`
}

/** For how many who drink alcohol and who do not the drinks are; empty where no drink is among the lines. */
export const drinksText = (lines: readonly Line[], { covers, drinkers }: Pick<Evening, 'covers' | 'drinkers'>): string => {
  if (!lines.some(({ kind }) => kind === 'drink')) return ''
  if (drinkers === undefined) return 'There is enough of each drink for everybody: nobody has said how many drink alcohol.'
  const alcohol = Math.min(drinkers, covers)
  const parts = [
    alcohol > 0 ? `for ${countText(alcohol)} with alcohol` : '',
    covers > alcohol ? `for ${countText(covers - alcohol)} without alcohol` : '',
  ]
  return `Drinks are ${listText(parts.filter(Boolean))}.`
}

/** The dishes that the list cannot know what to buy for; empty where there is none. */
export const unwrittenText = ({ dishes, ingredients }: Pick<Evening, 'dishes' | 'ingredients'>, names: Names): string => {
  const written = new Set(ingredients.map(({ dish }) => dish))
  const unwritten = dishes.filter(({ id, state, variant }) => state !== 'dropped' && !variant && !written.has(id))
  if (unwritten.length === 0) return ''
  return `Nobody has written down yet what goes into ${listText(unwritten.map(({ id }) => `“${names.dishName(id)}”`))}: that is not on the list.`
}

/** The line as one writes it on paper: "2 × 250 g butter". */
export const lineText = (line: Line): string => [toBuyText(line), line.food].filter(Boolean).join(' ')

/** The whole list as words to send: shop by shop, what is still to be got. Nothing of a guest is in it. */
export const listAsText = (
  groups: readonly {
    readonly shop: string | null
    readonly aisles: readonly { readonly aisle: Aisle; readonly lines: readonly Line[] }[]
  }[],
  evening: Evening,
  names: Names,
): string => {
  const drinks = drinksText(
    groups.flatMap(({ aisles }) => aisles.flatMap(({ lines }) => lines.filter(isOpen))),
    evening,
  )
  const unwritten = unwrittenText(evening, names)
  return [
    `Shopping for ${evening.name}`,
    ...groups.flatMap(({ shop, aisles }) => {
      const open = aisles.flatMap(({ lines }) => lines.filter(isOpen))
      if (open.length === 0) return []
      return [
        '',
        ...(groups.length > 1 || shop !== null ? [`${shopText(shop)}:`] : []),
        ...open.map((line) => rowText(line, evening, names)),
      ]
    }),
    ...(unwritten ? ['', unwritten] : []),
    ...(drinks ? ['', drinks] : []),
  ].join('\n')
}

const rowText = (line: Line, evening: Evening, names: Names): string => {
  const more =
    line.standing.kind === 'more' && line.unit !== null ? `${lineAmountText(line.standing.n, line.unit)} more ${line.food}` : ''
  const about = [whenText(line.when, evening.date), labelText(line), whoText(line, names)].filter(Boolean).join('; ')
  return `- ${more || lineText(line)}${about ? ` (${about})` : ''}`
}

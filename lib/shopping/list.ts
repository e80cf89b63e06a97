import Fraction from 'fraction.js'
import type { LineAmount, ShoppingNote, Tick } from '#lib/domain/shopping.ts'
import { nameUnit } from '#lib/domain/unit-words.ts'
import { AISLES, aisleOf, keepsDays } from './aisles.ts'
import { foodName } from './food-key.ts'
import { boughtOf, type Line, type ShoppingList, type Standing, type When } from './line.ts'
import { type Merged, merge, purchased } from './merge.ts'
import { packsFor, usualPack } from './packs.ts'
import type { Exact, Extra, Wanted } from './wanted.ts'

type Said = Partial<Omit<ShoppingNote, 'order'>>

/**
 * The shopping list: what dishes and drinks want, merged, with what people said of its lines and what is in the basket. Equal plans give
 * equal lists on every device.
 */
export const shoppingList = (
  wanted: readonly Wanted[],
  extras: readonly Extra[],
  notes: readonly ShoppingNote[],
  ticks: readonly Tick[],
): ShoppingList => {
  const said = saidOf(notes)
  const got = new Map<string, Tick[]>()
  for (const tick of ticks) got.set(tick.line, [...(got.get(tick.line) ?? []), tick])
  const lines = [
    ...merge(wanted).map((merged) => foodLine(merged, said.get(merged.key) ?? {})),
    ...extras.map((extra) => extraLine(extra, said.get(extraKey(extra)) ?? {})),
    ...notes.flatMap((note) => (note.text === undefined ? [] : [ownLine(note, note.text)])),
  ].map((line) => ({ ...line, standing: standingOf(line, got.get(line.key) ?? []) }))
  const known = new Set(lines.map(({ key }) => key))
  const strays = [...got]
    .filter(([key]) => !known.has(key) && !key.startsWith(OWN))
    .map(([key, of]) => ({ key, food: key.split('|')[0] ?? key, by: cooksOf(of) }))
    .toSorted((a, b) => (a.key < b.key ? -1 : 1))
  return { lines, strays }
}

const OWN = 'own-'

/** What is said of each line: two notes of one are read as one, the first to say a thing being right. */
const saidOf = (notes: readonly ShoppingNote[]): ReadonlyMap<string, Said> => {
  const said = new Map<string, Said>()
  for (const { order: _order, ...note } of notes)
    if (note.line !== undefined) said.set(note.line, { ...note, ...said.get(note.line) })
  return said
}

const exactOf = ({ n }: LineAmount): Exact => new Fraction(n)

/** Of the line's own unit, or it says nothing of it. */
const inUnit = (amount: LineAmount | undefined, unit: string | null): Exact | null =>
  amount && amount.unit === unit ? exactOf(amount) : null

const foodLine = (merged: Merged, said: Said): Line => {
  const { key, food, unit, parts, refuse, home, wanted } = merged
  const whole = purchased(parts, refuse, said.weighed)
  const needs = purchased(parts, null, undefined)
  const ready = refuse !== null && (said.weighed ? said.weighed === 'ready' : parts.some((part) => part.ready))
  const have = said.have === 'all' ? 'all' : inUnit(said.have, unit)
  const left = whole === null || have === null || have === 'all' ? whole : whole.sub(have)
  const amount = left === null ? null : left.compare(0) > 0 ? left : new Fraction(0)
  const own = inUnit(said.pack, unit)
  const usual = unit === null ? null : usualPack(food, unit)
  const pack = own ? { n: own, unit: unit ?? '', said: true } : usual ? { ...usual, said: false } : null
  const packs = !amount ? null : pack ? packsFor(amount, pack) : isCounted(unit) ? amount.ceil().valueOf() : null
  return {
    key,
    kind: 'food',
    note: said.id ?? null,
    food: foodName(food),
    unit,
    needs,
    amount,
    parts,
    refuse,
    ready,
    toTaste: parts.some(({ n }) => n === null),
    have,
    pack,
    packs,
    buy: said.buy ?? null,
    ...placeOf(said, food, wanted.find(({ shop }) => shop)?.shop, wanted.find(({ aisle }) => aisle)?.aisle),
    when: whenOf(said, keepsDays(food), merged.day),
    home,
    labels: wanted.flatMap(({ ingredient, dish, food: of, label }) =>
      label ? [{ ingredient, dish, food: of, look: label }] : [],
    ),
    ...rest(said),
  }
}

/** Nobody sells half a tin, while spoons of something stay what they are. */
const isCounted = (unit: string | null): boolean => unit !== null && unit !== 'g' && unit !== 'ml' && nameUnit(unit) === null

const extraKey = ({ kind, name }: Extra): string => `${name.toLowerCase().replaceAll('|', ' ').slice(0, 80)}|${kind}`

const extraLine = (extra: Extra, said: Said): Line => {
  const { kind, name, measure } = extra
  const [n, unit] =
    measure.kind === 'mass' ? [measure.grams, 'g'] : measure.kind === 'volume' ? [measure.ml, 'ml'] : [measure.n, measure.unit]
  const have = said.have === 'all' ? 'all' : inUnit(said.have, unit)
  const left = have === null || have === 'all' ? n : n.sub(have)
  const amount = left.compare(0) > 0 ? left : new Fraction(0)
  const own = inUnit(said.pack, unit)
  const pack = own ? { n: own, unit, said: true } : extra.pack ? { n: extra.pack, unit, said: false } : null
  return {
    key: extraKey(extra),
    kind,
    note: said.id ?? null,
    food: name,
    unit,
    needs: n,
    amount,
    parts: [],
    refuse: null,
    ready: false,
    toTaste: false,
    have,
    pack,
    packs: pack ? packsFor(amount, pack) : null,
    buy: said.buy ?? null,
    shop: said.shop ?? null,
    aisle: said.aisle ? namedAisle(said.aisle) : { kind: kind === 'ice' ? 'ice' : 'drinks' },
    when: whenOf(said, kind === 'ice' ? 0 : null, null),
    home: null,
    labels: [],
    ...rest(said),
  }
}

const ownLine = (note: ShoppingNote, text: string): Line => ({
  key: `${OWN}${note.id}`,
  kind: 'own',
  note: note.id,
  food: text,
  unit: null,
  needs: null,
  amount: null,
  parts: [],
  refuse: null,
  ready: false,
  toTaste: false,
  have: note.have === 'all' ? 'all' : null,
  pack: null,
  packs: null,
  buy: note.buy ?? null,
  ...placeOf(note, text, undefined, undefined),
  when: whenOf(note, null, null),
  home: null,
  labels: [],
  ...rest(note),
})

const rest = (said: Said) => ({
  by: said.by ?? null,
  price: said.price ?? null,
  read: said.read ?? null,
  standing: { kind: 'open' } as Standing,
})

/** "Bakery" is the aisle that this list has for bread. */
const namedAisle = (name: string): Line['aisle'] => {
  const kind = AISLES.find((each) => each === name.trim().toLowerCase())
  return kind ? { kind } : { kind: 'named', name }
}

const placeOf = (said: Said, food: string, shop: string | undefined, aisle: string | undefined): Pick<Line, 'shop' | 'aisle'> => {
  const named = said.aisle ?? aisle
  return { shop: said.shop ?? shop ?? null, aisle: named ? namedAisle(named) : { kind: aisleOf(food) } }
}

const whenOf = (said: Said, keeps: 0 | 1 | null, day: number | null): When => {
  if (said.day !== undefined) return { kind: 'on', day: said.day, said: true }
  if (keeps === 0) return { kind: 'on', day: day ?? 0, said: false }
  const by = day !== null && day < 0 ? day : null
  return keeps === null ? { kind: 'any', by } : { kind: 'from', day: (day ?? 0) - keeps, by }
}

const cooksOf = (ticks: readonly Tick[]): readonly string[] =>
  [...new Set(ticks.flatMap(({ by }) => (by ? [by] : [])))].toSorted()

/** Rounding a stored amount may lose less than that. */
const HARDLY = new Fraction(1, 1000)

const standingOf = (line: Line, ticks: readonly Tick[]): Standing => {
  const { have, amount, buy } = line
  if (ticks.length > 0) {
    const by = cooksOf(ticks)
    const most = ticks.flatMap(({ of }) => (of ? [inUnit(of, line.unit)] : [null]))
    const wanted = boughtOf(line)
    // Of a tick that names no amount of this kind all of it is meant.
    if (wanted === null || buy !== null || most.some((each) => each === null)) return gotOf(by, ticks)
    const had = most.reduce<Exact>((a, b) => (b !== null && b.compare(a) > 0 ? b : a), new Fraction(0))
    const more = (amount ?? wanted).sub(had)
    return more.compare(wanted.mul(HARDLY)) > 0 ? { kind: 'more', by, n: more } : gotOf(by, ticks)
  }
  if (have === 'all' || buy === 0) return { kind: 'have' }
  return amount !== null && amount.compare(0) <= 0 && buy === null ? { kind: 'have' } : { kind: 'open' }
}

const gotOf = (by: readonly string[], ticks: readonly Tick[]): Standing => ({
  kind: 'got',
  by,
  at: ticks.map(({ at }) => at).toSorted()[0] ?? '',
})

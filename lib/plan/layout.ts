import * as Y from 'yjs'
import * as z from 'zod/mini'
import { Id, OrderKey } from '#lib/domain/atoms.ts'
import { Evening } from '#lib/domain/evening.ts'
import { Ingredient } from '#lib/domain/ingredient.ts'
import { Cook, Kitchen } from '#lib/domain/kitchen.ts'
import { Course, Dish, Step } from '#lib/domain/menu.ts'
import { Offer } from '#lib/domain/offer.ts'
import { Claim, Drink } from '#lib/domain/people.ts'
import { ShoppingNote, Tick } from '#lib/domain/shopping.ts'

/**
 * The shared plan is one Yjs document with one root map a noun.
 *   meta      version, minClient, epoch, evening (its id): the server's
 *   evening   field → JSON value: the host's
 *   kitchens … ticks    id → Y.Map of field → JSON value; free text is a Y.Text: the cooks'
 *   claims    target → { cook, also }, night   subject → fact (`nightKey`): the server's, on a command
 * Guests are never in it.
 */
const ALWAYS_ROOTS = ['kitchens', 'cooks', 'courses', 'dishes', 'steps', 'ingredients', 'drinks'] as const
/** Lists that an evening has only where there is something in them. */
export const LATER_ROOTS = ['offers', 'shopping', 'ticks'] as const
export type LaterRoot = (typeof LATER_ROOTS)[number]
export const ENTRY_ROOTS = [...ALWAYS_ROOTS, ...LATER_ROOTS] as const
export type EntryRoot = (typeof ENTRY_ROOTS)[number]
export const ROOTS = ['meta', 'evening', ...ENTRY_ROOTS, 'claims', 'night'] as const
export type Root = (typeof ROOTS)[number]

export interface EntryOf {
  readonly kitchens: Kitchen
  readonly cooks: Cook
  readonly courses: Course
  readonly dishes: Dish
  readonly steps: Step
  readonly ingredients: Ingredient
  readonly drinks: Drink
  readonly shopping: ShoppingNote
  readonly ticks: Tick
  readonly offers: Offer
}

const SHAPES = {
  kitchens: Kitchen.shape,
  cooks: Cook.shape,
  courses: Course.shape,
  dishes: Dish.shape,
  steps: Step.shape,
  ingredients: Ingredient.shape,
  drinks: Drink.shape,
  shopping: ShoppingNote.shape,
  ticks: Tick.shape,
  offers: Offer.shape,
} as const

/** How one field of an entry is kept. `absent`: what it reads as when it is not there. */
export interface Field {
  readonly name: string
  readonly schema: z.ZodMiniType
  readonly absent:
    | { readonly kind: 'missing' }
    | { readonly kind: 'left-out' }
    | { readonly kind: 'value'; readonly value: unknown }
  /** Free text, merged letter by letter; `most` letters are read. */
  readonly text?: { readonly most: number; readonly lines: boolean }
}

const TEXTS: { readonly [root in EntryRoot]?: { readonly [field: string]: { readonly most: number; readonly lines: boolean } } } =
  {
    dishes: { notes: { most: 8000, lines: true } },
    steps: { does: { most: 400, lines: false } },
  }

const fieldOf = (root: EntryRoot, name: string, schema: z.ZodMiniType): Field => {
  const text = TEXTS[root]?.[name]
  if (text) return { name, schema, text, absent: { kind: 'value', value: '' } }
  if (schema instanceof z.ZodMiniOptional)
    return { name, schema: schema.def.innerType as z.ZodMiniType, absent: { kind: 'left-out' } }
  if (schema instanceof z.ZodMiniDefault)
    return { name, schema: schema.def.innerType as z.ZodMiniType, absent: { kind: 'value', value: schema.parse(undefined) } }
  return { name, schema, absent: { kind: 'missing' } }
}

const fieldsOf = (root: EntryRoot): ReadonlyMap<string, Field> =>
  new Map(
    Object.entries(SHAPES[root] as Record<string, z.ZodMiniType>)
      .filter(([name]) => name !== 'id')
      .map(([name, schema]) => [name, fieldOf(root, name, schema)]),
  )

/** The fields of each root's entries as the evening has them, without `id`, `gone` and a kitchen's and cook's own `order`. */
export const FIELDS: { readonly [root in EntryRoot]: ReadonlyMap<string, Field> } = {
  kitchens: fieldsOf('kitchens'),
  cooks: fieldsOf('cooks'),
  courses: fieldsOf('courses'),
  dishes: fieldsOf('dishes'),
  steps: fieldsOf('steps'),
  ingredients: fieldsOf('ingredients'),
  drinks: fieldsOf('drinks'),
  shopping: fieldsOf('shopping'),
  ticks: fieldsOf('ticks'),
  offers: fieldsOf('offers'),
}

const GONE: Field = { name: 'gone', schema: z.boolean(), absent: { kind: 'left-out' } }
const ORDER: Field = { name: 'order', schema: OrderKey, absent: { kind: 'left-out' } }

/** The field of that name which an entry of this root may have in the document, or undefined. */
export const documentField = (root: EntryRoot, name: string): Field | undefined =>
  name === 'gone' ? GONE : (FIELDS[root].get(name) ?? (name === 'order' ? ORDER : undefined))

/** The evening's own fields; its id stands in `meta`. */
export const EVENING_FIELDS = {
  name: Evening.shape.name,
  date: Evening.shape.date,
  zone: Evening.shape.zone,
  guestsFrom: Evening.shape.guestsFrom,
  sitDown: Evening.shape.sitDown,
  covers: Evening.shape.covers,
  drinkers: Evening.shape.drinkers,
  rules: Evening.shape.rules,
  house: Evening.shape.house,
  host: Evening.shape.host,
  quietBefore: Evening.shape.quietBefore,
} as const
export type EveningField = keyof typeof EVENING_FIELDS
export type OwnFields = Pick<Evening, EveningField>

/** Whether an own field of the evening may be absent. */
export const mayLack = (name: EveningField): boolean => EVENING_FIELDS[name] instanceof z.ZodMiniOptional

export const isEveningField = (name: string): name is EveningField => Object.hasOwn(EVENING_FIELDS, name)
export const isEntryRoot = (name: string): name is EntryRoot => (ENTRY_ROOTS as readonly string[]).includes(name)
export const isId = (text: string): boolean => Id.safeParse(text).success

/** The most entries of a root that an evening holds; what is beyond is not read. */
export const MOST: { readonly [root in EntryRoot]: number } = {
  kitchens: 12,
  cooks: 24,
  courses: 24,
  dishes: 120,
  steps: 600,
  ingredients: 2000,
  drinks: 120,
  shopping: 1000,
  ticks: 2000,
  offers: 120,
}

export const Meta = z.object({
  version: z.int(),
  minClient: z.int(),
  epoch: z.string().check(z.minLength(1), z.maxLength(80)),
  evening: Id,
})
export type Meta = z.infer<typeof Meta>

/** An evening's list of one root; one that came later may be absent. */
export const listIn = <R extends EntryRoot>(evening: { readonly [L in R]?: readonly EntryOf[L][] | undefined }, root: R) =>
  evening[root] ?? []

/** A claim as it stands under its target. */
export const ClaimEntry = z.omit(Claim, { target: true })
export type ClaimEntry = z.infer<typeof ClaimEntry>

/** Whether a client of this role may write the root at all. The server alone writes meta, claims and night. */
export const mayWrite = (role: 'host' | 'cook', root: string): boolean =>
  isEntryRoot(root) || (root === 'evening' && role === 'host')

/** The root map, or null when the document uses the name for another type. */
export const rootMap = (doc: Y.Doc, root: Root): Y.Map<unknown> | null => {
  const found = doc.share.get(root)
  if (found && found.constructor !== Y.Map && found.constructor !== Y.AbstractType) return null
  return doc.getMap(root)
}

/** The entry's map, also when it is gone; null when there is none. */
export const entryMap = (doc: Y.Doc, root: EntryRoot, id: string): Y.Map<unknown> | null => {
  const found = rootMap(doc, root)?.get(id)
  return found instanceof Y.Map ? found : null
}

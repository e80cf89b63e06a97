import * as Y from 'yjs'
import type * as z from 'zod/mini'
import { EVENING_FORMAT, type Evening } from '#lib/domain/evening.ts'
import { Claim, NightFact, nightKey } from '#lib/domain/people.ts'
import {
  ENTRY_ROOTS,
  type EntryOf,
  type EntryRoot,
  EVENING_FIELDS,
  isEveningField,
  isId,
  Meta,
  MOST,
  type OwnFields,
  type Root,
  rootMap,
} from './layout.ts'
import { readEntry } from './read-entry.ts'
import { type Entries, type Listed, repairEvening } from './repair.ts'

/** What a document says. */
export interface PlanReading {
  readonly evening: Evening
  /** What could not be read as it stands, each in one sentence; the same ones in the same order on every device. */
  readonly reports: readonly string[]
  /** What the server says of the document; null when nothing has come from it yet. */
  readonly meta: Meta | null
}

/**
 * Reads the plan. Total: whatever is in the document, the result is an evening that passes the evening's check. What is
 * gone is left out; what cannot be read or leads nowhere is left out or put right, and reported. Equal documents give
 * equal readings, and an entry that did not change is the same object as before.
 */
export const readPlan = (doc: Y.Doc): PlanReading => {
  const reports: string[] = []
  const meta = Meta.safeParse(fieldsOf(doc, 'meta'))
  const own = readOwn(doc, reports, meta.success)
  const entries: Entries = {
    kitchens: readRoot(doc, 'kitchens', reports),
    cooks: readRoot(doc, 'cooks', reports),
    courses: readRoot(doc, 'courses', reports),
    dishes: readRoot(doc, 'dishes', reports),
    steps: readRoot(doc, 'steps', reports),
    ingredients: readRoot(doc, 'ingredients', reports),
    drinks: readRoot(doc, 'drinks', reports),
    shopping: readRoot(doc, 'shopping', reports),
    ticks: readRoot(doc, 'ticks', reports),
    offers: readRoot(doc, 'offers', reports),
  }
  const evening: Evening = {
    format: EVENING_FORMAT,
    id: meta.success ? meta.data.evening : 'evening',
    ...own,
    ...repairEvening(own, entries, readClaims(doc), readNight(doc), reports),
    guests: [],
  }
  return { evening, reports, meta: meta.success ? meta.data : null }
}

/**
 * Reads the entries one by one, and pauses after each: what has been read is remembered, so that `readPlan` has little left to
 * do. For a plan's first reading, which takes longer than a person should wait for an answer to a press.
 */
export function* readAhead(doc: Y.Doc): Generator<undefined, void> {
  for (const root of ENTRY_ROOTS)
    for (const [id, value] of rootMap(doc, root)?.entries() ?? []) {
      if (value instanceof Y.Map && isId(id)) readEntry(root, id, value)
      yield
    }
}

const fieldsOf = (doc: Y.Doc, root: Root): Record<string, unknown> => Object.fromEntries(rootMap(doc, root)?.entries() ?? [])

/** Stands in for an own field of the evening that cannot be read. */
const OWN: OwnFields = {
  name: '',
  date: '2000-01-01',
  zone: 'UTC',
  guestsFrom: { day: 0, time: '19:00' },
  sitDown: { day: 0, time: '19:30' },
  covers: 1,
  rules: 'strictest',
  host: 'kitchen',
}

const OWN_NAMES = Object.keys(EVENING_FIELDS).filter(isEveningField)
type OwnName = (typeof OWN_NAMES)[number]

// As with entries: a value that is the same one is not parsed again.
const owns = new WeakMap<Y.Doc, Map<OwnName, { readonly raw: unknown; readonly parsed: z.core.util.SafeParseResult<unknown> }>>()

const parsedOwn = (doc: Y.Doc, name: OwnName, raw: unknown): z.core.util.SafeParseResult<unknown> => {
  const known = owns.get(doc) ?? new Map()
  owns.set(doc, known)
  const before = known.get(name)
  if (before?.raw === raw && before !== undefined) return before.parsed
  const parsed = EVENING_FIELDS[name].safeParse(raw)
  known.set(name, { raw, parsed })
  return parsed
}

const readOwn = (doc: Y.Doc, reports: string[], expected: boolean): OwnFields => {
  const map = rootMap(doc, 'evening')
  const own: Record<string, unknown> = { ...OWN }
  for (const name of OWN_NAMES) {
    const parsed = parsedOwn(doc, name, map?.get(name))
    if (parsed.success && parsed.data === undefined) continue
    if (parsed.success) own[name] = parsed.data
    else if (expected) reports.push(`The evening's ${name} was not readable.`)
  }
  return own as unknown as OwnFields
}

const NOUN: { readonly [root in EntryRoot]: string } = {
  kitchens: 'kitchen',
  cooks: 'cook',
  courses: 'course',
  dishes: 'dish',
  steps: 'step',
  ingredients: 'ingredient',
  drinks: 'drink',
  shopping: 'note on the shopping',
  ticks: 'tick of the shopping',
  offers: 'offer',
}

const readRoot = <R extends EntryRoot>(doc: Y.Doc, root: R, reports: string[]): Listed<EntryOf[R]> => {
  const found: { key: string; entry: EntryOf[R] }[] = []
  const gone = new Set<string>()
  const notes: { id: string; why: string }[] = []
  for (const [id, value] of rootMap(doc, root)?.entries() ?? []) {
    if (!(value instanceof Y.Map) || !isId(id)) {
      notes.push({ id, why: `A ${NOUN[root]} was not readable.` })
      continue
    }
    const reading = readEntry(root, id, value)
    if (reading.kind === 'empty' || reading.kind === 'gone') gone.add(id)
    else {
      for (const why of reading.reports) notes.push({ id, why: `The ${NOUN[root]} "${id}": ${why}.` })
      if (reading.kind === 'whole') found.push({ key: reading.key, entry: reading.entry })
    }
  }
  // The document's own order of its keys differs between devices.
  for (const { why } of notes.toSorted((a, b) => (a.id < b.id ? -1 : a.id > b.id ? 1 : 0))) reports.push(why)
  found.sort((a, b) => (a.key < b.key ? -1 : a.key > b.key ? 1 : a.entry.id < b.entry.id ? -1 : 1))
  if (found.length > MOST[root]) reports.push(`Only the first ${MOST[root]} of ${found.length} ${root} are read.`)
  return { items: found.slice(0, MOST[root]).map(({ entry }) => entry), gone }
}

const readClaims = (doc: Y.Doc): Claim[] =>
  [...(rootMap(doc, 'claims')?.entries() ?? [])].flatMap(([target, value]) => claimAt(value, target) ?? [])

const readNight = (doc: Y.Doc): NightFact[] =>
  [...(rootMap(doc, 'night')?.entries() ?? [])].flatMap(([key, value]) => factAt(value, key) ?? [])

/** Reads what stands under a key, and gives the same object again as long as the same value stands there. */
const rememberedAt = <T>(read: (value: object, key: string) => T | null): ((value: unknown, key: string) => T | null) => {
  const memos = new WeakMap<object, { readonly key: string; readonly found: T | null }>()
  return (value, key) => {
    if (typeof value !== 'object' || value === null) return null
    const memo = memos.get(value)
    if (memo?.key === key) return memo.found
    const found = read(value, key)
    memos.set(value, { key, found })
    return found
  }
}

const claimAt = rememberedAt((value, target) => Claim.safeParse({ ...value, target }).data ?? null)

const factAt = rememberedAt((value, key) => {
  const { data } = NightFact.safeParse(value)
  return data && nightKey(data) === key ? data : null
})

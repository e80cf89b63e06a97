import type { Evening } from '#lib/domain/evening.ts'
import type { Drink } from '#lib/domain/people.ts'
import { characterOf, type Trait } from './character.ts'

/** A kind of drink, never a make: what it is called is for `app/_words`. */
export type DrinkKind =
  | 'dry-sparkling'
  | 'crisp-white'
  | 'round-white'
  | 'dry-rose'
  | 'light-red'
  | 'full-red'
  | 'sweet-wine'
  | 'dry-fortified'
  | 'dry-cider'
  | 'wheat-beer'
  | 'citrus-water'
  | 'verjus-soda'
  | 'apple-juice'
  | 'cold-tea'
  | 'dark-fruit-tea'
  | 'ginger-soda'
  | 'sweet-grape'
  | 'warm-apple'

/** Why a kind goes with a course. */
export type Because =
  | 'to-begin'
  | 'light-with-light'
  | 'full-with-full'
  | 'acid-with-fat'
  | 'acid-with-acid'
  | 'sweet-not-drier'
  | 'fresh-with-salt'
  | 'mild-with-hot'
  | 'tannin-with-meat'
  | 'bubbles-with-fat'

interface Kind {
  readonly role: Drink['role']
  readonly body: 'light' | 'middle' | 'full'
  readonly sharp?: true
  readonly sweet?: true
  readonly bubbles?: true
  readonly tannin?: true
  readonly mlEach: number
  readonly abv: number
  readonly servedC: number
}

// Strength and glass: common practice, no source. Heats after the trade's own tables, from memory.
const KINDS: Readonly<Record<DrinkKind, Kind>> = {
  'dry-sparkling': { role: 'with', body: 'light', sharp: true, bubbles: true, mlEach: 110, abv: 12, servedC: 8 },
  'crisp-white': { role: 'with', body: 'light', sharp: true, mlEach: 125, abv: 12, servedC: 9 },
  'round-white': { role: 'with', body: 'middle', mlEach: 125, abv: 13, servedC: 11 },
  'dry-rose': { role: 'with', body: 'middle', sharp: true, mlEach: 125, abv: 12.5, servedC: 9 },
  'light-red': { role: 'with', body: 'middle', sharp: true, tannin: true, mlEach: 125, abv: 12.5, servedC: 14 },
  'full-red': { role: 'with', body: 'full', tannin: true, mlEach: 125, abv: 13.5, servedC: 17 },
  'sweet-wine': { role: 'with', body: 'full', sweet: true, sharp: true, mlEach: 70, abv: 11, servedC: 8 },
  'dry-fortified': { role: 'with', body: 'light', mlEach: 50, abv: 15, servedC: 8 },
  'dry-cider': { role: 'with', body: 'light', sharp: true, bubbles: true, mlEach: 150, abv: 5.5, servedC: 8 },
  'wheat-beer': { role: 'with', body: 'light', bubbles: true, mlEach: 200, abv: 5, servedC: 8 },
  'citrus-water': { role: 'without', body: 'light', sharp: true, bubbles: true, mlEach: 200, abv: 0, servedC: 7 },
  'verjus-soda': { role: 'without', body: 'light', sharp: true, bubbles: true, mlEach: 150, abv: 0, servedC: 7 },
  'apple-juice': { role: 'without', body: 'middle', sharp: true, mlEach: 150, abv: 0, servedC: 8 },
  'cold-tea': { role: 'without', body: 'middle', tannin: true, mlEach: 150, abv: 0, servedC: 9 },
  'dark-fruit-tea': { role: 'without', body: 'full', sharp: true, tannin: true, mlEach: 150, abv: 0, servedC: 15 },
  'ginger-soda': { role: 'without', body: 'middle', bubbles: true, mlEach: 180, abv: 0, servedC: 7 },
  'sweet-grape': { role: 'without', body: 'full', sweet: true, sharp: true, mlEach: 80, abv: 0, servedC: 8 },
  'warm-apple': { role: 'without', body: 'full', sweet: true, mlEach: 120, abv: 0, servedC: 60 },
}

/** The principles, the weightiest first, each on its own. Common practice, no source; drier than the dessert tastes thin. */
const PRINCIPLES: readonly {
  readonly because: Because
  readonly weight: number
  readonly holds: (kind: Kind, traits: ReadonlySet<Trait>, isWelcome: boolean) => boolean
}[] = [
  { because: 'sweet-not-drier', weight: 8, holds: (kind, traits) => traits.has('sweet') && kind.sweet === true },
  { because: 'to-begin', weight: 5, holds: (kind, _, isWelcome) => isWelcome && kind.body === 'light' && kind.bubbles === true },
  { because: 'tannin-with-meat', weight: 4, holds: (kind, traits) => traits.has('red-meat') && kind.tannin === true },
  { because: 'light-with-light', weight: 3, holds: (kind, traits) => traits.has('light') && kind.body === 'light' },
  { because: 'full-with-full', weight: 3, holds: (kind, traits) => traits.has('full') && kind.body === 'full' },
  { because: 'acid-with-fat', weight: 2, holds: (kind, traits) => traits.has('rich') && kind.sharp === true },
  { because: 'acid-with-acid', weight: 2, holds: (kind, traits) => traits.has('sharp') && kind.sharp === true },
  {
    because: 'mild-with-hot',
    weight: 2,
    holds: (kind, traits) => traits.has('hot') && kind.abv < 10 && kind.tannin !== true,
  },
  { because: 'fresh-with-salt', weight: 2, holds: (kind, traits) => traits.has('salty') && kind.body === 'light' },
  { because: 'bubbles-with-fat', weight: 1, holds: (kind, traits) => traits.has('rich') && kind.bubbles === true },
]

/** A kind that would go with a course, and why; as much as is usual, to be changed. */
export interface Suggestion {
  readonly kind: DrinkKind
  readonly role: Drink['role']
  readonly because: readonly Because[]
  readonly mlEach: number
  readonly abv: number
  readonly servedC: number
}

const NAMES = Object.keys(KINDS) as readonly DrinkKind[]

/**
 * What would go with a course, of one role, the best first: kinds by principle, at least one of which holds. With something sweet nothing
 * that is drier, otherwise nothing sweet. None where the dishes say nothing. Whom it may be poured to is for `pour.ts`.
 */
export const suggestions = (evening: Evening, course: string, role: Drink['role']): readonly Suggestion[] => {
  const traits = characterOf(evening, course)
  const isWelcome = evening.courses.some(({ id, welcome }) => id === course && welcome === true)
  return NAMES.flatMap((name) => {
    const kind = KINDS[name]
    if (kind.role !== role || (kind.sweet === true) !== traits.has('sweet')) return []
    const held = PRINCIPLES.filter(({ holds }) => holds(kind, traits, isWelcome))
    if (held.length === 0) return []
    const { mlEach, abv, servedC } = kind
    const score = held.reduce((sum, { weight }) => sum + weight, 0)
    return [{ score, suggestion: { kind: name, role, because: held.map(({ because }) => because), mlEach, abv, servedC } }]
  })
    .toSorted((a, b) => b.score - a.score || a.suggestion.abv - b.suggestion.abv)
    .map(({ suggestion }) => suggestion)
}

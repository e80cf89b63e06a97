import type { Evening } from '#lib/domain/evening.ts'
import { missingKit, sameTool } from '#lib/domain/kit-wants.ts'
import type { Course, Dish } from '#lib/domain/menu.ts'
import { type Offer, stateOf, TableThing } from '#lib/domain/offer.ts'
import type { KnownNeed } from '#lib/domain/people.ts'
import { coversOf, portionsOf } from '#lib/domain/portions.ts'
import { servedCourses } from '#lib/domain/served-courses.ts'
import { type Idea, ideaFor, ideaForNeeds } from './idea.ts'

/** Something that nobody brings yet. `offers`: those that may answer it and wait for a host's word. */
export type Missing = { readonly offers: readonly string[] } & (
  | { readonly kind: 'dish'; readonly course: string; readonly want: number; readonly idea: Idea }
  /** All dishes of the course together feed fewer than there are. */
  | { readonly kind: 'portions'; readonly course: string; readonly have: number; readonly want: number; readonly idea: Idea }
  /** No dish of the course is known to be right for any of them; `open`: dishes that may be, once somebody says what is in them. */
  | {
      readonly kind: 'need'
      readonly course: string
      readonly needs: readonly KnownNeed[]
      readonly open: readonly string[]
      readonly idea: Idea
    }
  /** So many have not told what they eat: nothing is known to be right for them. */
  | { readonly kind: 'needs-unknown'; readonly guests: number }
  | { readonly kind: 'thing'; readonly thing: TableThing; readonly have: number; readonly want: number }
  /** Nobody has said how many the house has. */
  | { readonly kind: 'not-said'; readonly thing: TableThing; readonly want: number }
  /** A tool that a step wants and the host's kitchen has not. */
  | { readonly kind: 'tool'; readonly tool: string; readonly count: number; readonly dishes: readonly string[] }
)

/** What is known besides the plan. */
export interface Known {
  /** Courses without a dish that is known to be right for needs, with those that may be; null: say nothing of needs. */
  readonly gaps:
    | readonly { readonly course: string; readonly needs: readonly KnownNeed[]; readonly open: readonly string[] }[]
    | null
  /** How many have not told what they eat. */
  readonly unknown: number
  /** Ice for the drinks. */
  readonly iceGrams: number
}

const BAG_GRAMS = 1000

/** Offers that wait for a host's word. */
const openOffers = ({ offers }: Pick<Evening, 'offers'>): readonly Offer[] =>
  (offers ?? []).filter((offer) => stateOf(offer) === 'offered')

/** The evening as it is when what was accepted and then withdrawn does not come: its dish is in the plan until a host takes it out. */
export const withoutWithdrawn = (evening: Evening): Evening => {
  const gone = new Set((evening.offers ?? []).flatMap((offer) => (stateOf(offer) === 'withdrawn' ? (offer.dish ?? []) : [])))
  if (gone.size === 0) return evening
  return { ...evening, dishes: evening.dishes.map((dish) => (gone.has(dish.id) ? { ...dish, state: 'dropped' } : dish)) }
}

/** What nobody brings yet, by course in their order, then for the table and the kitchen; measured against the covers. */
export const missingOf = (evening: Evening, known: Known): readonly Missing[] => [
  ...servedCourses(evening).flatMap((course) => missingIn(withoutWithdrawn(evening), course, known)),
  ...(known.gaps !== null && known.unknown > 0 ? [{ kind: 'needs-unknown', guests: known.unknown, offers: [] } as const] : []),
  ...TableThing.options.flatMap((thing) => missingThing(evening, thing, known.iceGrams)),
  ...missingTools(evening),
]

/** A variant feeds some of those whom its dish feeds. */
const fedBy = (evening: Evening, dishes: readonly Dish[]): number =>
  dishes.filter(({ variant }) => variant === undefined).reduce((sum, dish) => sum + portionsOf(evening, dish), 0)

const missingIn = (evening: Evening, course: Course, { gaps }: Known): readonly Missing[] => {
  const dishes = evening.dishes.filter((dish) => dish.course === course.id && dish.state === 'on')
  const offered = openOffers(evening).filter((offer) => offer.kind === 'dish' && offer.course === course.id)
  const offers = offered.map(({ id }) => id)
  const want = coversOf(evening, course.id)
  if (dishes.length === 0) return [{ kind: 'dish', course: course.id, want, idea: ideaFor(evening, course), offers }]
  const have = fedBy(evening, dishes)
  return [
    ...(have < want
      ? [{ kind: 'portions', course: course.id, have, want, idea: ideaFor(evening, course), offers } as const]
      : []),
    ...(gaps ?? [])
      .filter((gap) => gap.course === course.id)
      .map(
        ({ needs, open }) =>
          ({
            kind: 'need',
            course: course.id,
            needs,
            open,
            idea: ideaForNeeds(evening, course, needs),
            offers: offered.filter(({ suits }) => needs.every(({ need }) => suits?.includes(need))).map(({ id }) => id),
          }) as const,
      ),
  ]
}

/** Courses that are eaten at the table from plates. */
const atTable = ({ courses }: Evening): readonly Course[] => courses.filter(({ welcome }) => !welcome)

/** What is wanted of each. Plates, glasses and cutlery for every course, washed by nobody in between: common practice, no source. */
const wanted = (evening: Evening, thing: TableThing, iceGrams: number): number => {
  const { covers } = evening
  switch (thing) {
    case 'chairs':
      return covers
    case 'plates':
    case 'cutlery':
      return covers * atTable(evening).length
    case 'glasses': {
      const poured = new Set(evening.drinks.map(({ course }) => course))
      return [...poured].reduce((sum, course) => sum + coversOf(evening, course), covers)
    }
    case 'ice':
      return Math.ceil(iceGrams / BAG_GRAMS)
  }
}

const missingThing = (evening: Evening, thing: TableThing, iceGrams: number): readonly Missing[] => {
  const want = wanted(evening, thing, iceGrams)
  const brought = (evening.offers ?? []).filter((offer) => offer.kind === 'thing' && offer.thing === thing)
  const coming = brought.filter((offer) => stateOf(offer) === 'accepted').reduce((sum, { portions }) => sum + portions, 0)
  const offers = brought.filter((offer) => stateOf(offer) === 'offered').map(({ id }) => id)
  const there = evening.house?.[thing]
  if (want === 0 || coming >= want) return []
  if (there === undefined) return [{ kind: 'not-said', thing, want: want - coming, offers }]
  return there + coming < want ? [{ kind: 'thing', thing, have: there + coming, want, offers }] : []
}

/** Tools that the host's kitchen has not, each once with the most that one step wants; what is offered under that name may answer it. */
const missingTools = (evening: Evening): readonly Missing[] => {
  const found = new Map<string, { tool: string; count: number; dishes: Set<string> }>()
  for (const { kitchen, use, dish, stuck } of missingKit(evening)) {
    if (kitchen !== evening.host || use.kind !== 'tool' || !stuck) continue
    const key = use.tool.trim().toLowerCase()
    const known = found.get(key) ?? { tool: use.tool, count: 0, dishes: new Set<string>() }
    known.count = Math.max(known.count, use.count)
    if (dish) known.dishes.add(dish.id)
    found.set(key, known)
  }
  const things = (evening.offers ?? []).filter((offer) => offer.kind === 'thing')
  return [...found.values()].flatMap(({ tool, count, dishes }): Missing[] => {
    const named = things.filter((offer) => sameTool(offer.name, tool))
    const coming = named.filter((offer) => stateOf(offer) === 'accepted').reduce((sum, { portions }) => sum + portions, 0)
    if (coming >= count) return []
    const offers = named.filter((offer) => stateOf(offer) === 'offered').map(({ id }) => id)
    return [{ kind: 'tool', tool, count: count - coming, dishes: [...dishes], offers }]
  })
}

import type { Evening } from '#lib/domain/evening.ts'
import type { Kitchen } from '#lib/domain/kitchen.ts'
import type { Step } from '#lib/domain/menu.ts'
import type { Claim, NightFact } from '#lib/domain/people.ts'
import type { ShoppingNote, Tick } from '#lib/domain/shopping.ts'
import { epochMsOf } from '#lib/domain/time.ts'
import { circularArrows } from './cut-cycles.ts'
import type { EntryOf, EntryRoot, LaterRoot, OwnFields } from './layout.ts'
import { byParent, claimsInOrder, dishesInOrder, nightInOrder } from './reading-order.ts'
import { repairCook, repairCourses, repairDishes, repairStep } from './repair-entries.ts'
import { repairOffers } from './repair-offers.ts'
import { mapKept } from './tidy.ts'

/** The entries of a root that can be read, in order, and the ids of those that were removed. */
export interface Listed<T> {
  readonly items: readonly T[]
  readonly gone: ReadonlySet<string>
}
export type Entries = { readonly [R in EntryRoot]: Listed<EntryOf[R]> }

type Lists = Pick<Evening, EntryRoot | 'claims' | 'night' | 'host' | 'guestsFrom'>
type Ids = ReadonlySet<string>
const idsOf = (items: readonly { readonly id: string }[]): Ids => new Set(items.map((item) => item.id))

/**
 * Makes one sound evening of entries that are each sound alone: ids unique, references that lead somewhere, no circles,
 * windows in order. Deterministic; what it changes it reports, but for what hung on an entry that was removed.
 */
export const repairEvening = (
  own: OwnFields,
  entries: Entries,
  claims: readonly Claim[],
  night: readonly NightFact[],
  reports: string[],
): Lists => {
  const report = (why: string) => reports.push(why)
  const unique = uniqueIds(entries, report)
  const kitchens = unique.kitchens.length > 0 ? unique.kitchens : [standIn(unique)]
  const host = kitchens.some((kitchen) => kitchen.id === own.host) ? own.host : (kitchens[0]?.id ?? own.host)
  if (host !== own.host && entries.kitchens.items.length > 0)
    report(`The kitchen beside the table is not there; "${host}" stands in for it.`)
  const guestsFrom = epochMsOf(own, own.guestsFrom) > epochMsOf(own, own.sitDown) ? own.sitDown : own.guestsFrom
  if (guestsFrom !== own.guestsFrom) report('Guests cannot come after sitting down: they are expected then.')

  const kitchenIds = idsOf(kitchens)
  const ovens = idsOf(kitchens.flatMap((kitchen) => kitchen.kit.filter((kit) => kit.kind === 'oven')))
  const cooks = mapKept(unique.cooks, (cook) => repairCook(cook, own, kitchenIds, entries.kitchens.gone, report))
  const cookIds = idsOf(cooks)
  const courses = repairCourses(unique.courses, cookIds, entries.cooks.gone, own, report)
  const dishesKept = withParent(unique.dishes, idsOf(courses), familiar(entries.courses), (dish) => dish.course, 'dish', report)
  const stepsKept = withParent(unique.steps, idsOf(dishesKept), familiar(entries.dishes), (step) => step.dish, 'step', report)
  const stepIds = idsOf(stepsKept)
  const knownSteps = familiar(entries.steps)
  const steps = cutAfters(
    mapKept(stepsKept, (step) => repairStep(step, own, stepIds, knownSteps, ovens, report)),
    report,
  )
  const carried: Ids = new Set(steps.flatMap((step) => (step.role === 'carry' && step.dish !== null ? [step.dish] : [])))
  const known: Ids = new Set([...knownSteps, ...familiar(entries.dishes)])
  const around = { host, kitchenIds, ovens, stepIds, carried, familiar: known, removedKitchens: entries.kitchens.gone }
  const dishes = dishesInOrder(repairDishes(dishesKept, around, report), courses)
  const dishIds = idsOf(dishes)
  const ingredientsKept = withParent(
    unique.ingredients,
    dishIds,
    familiar(entries.dishes),
    (one) => one.dish,
    'ingredient',
    report,
  )
  const drinks = withParent(unique.drinks, idsOf(courses), familiar(entries.courses), (drink) => drink.course, 'drink', report)
  const offers = repairOffers(
    withParent(unique.offers, cookIds, familiar(entries.cooks), (offer) => offer.cook, 'offer', report),
    {
      course: { there: idsOf(courses), removed: entries.courses.gone },
      kitchen: { there: kitchenIds, removed: entries.kitchens.gone },
      dish: { there: dishIds, removed: familiar(entries.dishes) },
    },
    report,
  )
  return {
    host,
    guestsFrom,
    kitchens,
    cooks,
    courses,
    dishes,
    steps: byParent(steps, dishes, (step) => step.dish),
    ingredients: byParent(
      mapKept(ingredientsKept, (one) => (one.step !== undefined && !stepIds.has(one.step) ? without(one, 'step') : one)),
      dishes,
      (one) => one.dish,
    ),
    drinks: byParent(drinks, courses, (drink) => drink.course),
    ...someOf('offers', offers),
    claims: keptClaims(claims, cookIds, new Set([...idsOf(courses), ...dishIds, ...stepIds])),
    night: keptFacts(night, { cooks, courses: idsOf(courses), dishes: dishIds, steps: stepIds }),
    ...someOf(
      'shopping',
      mapKept(unique.shopping, (note) => knownNote(note, cookIds)),
    ),
    ...someOf(
      'ticks',
      mapKept(unique.ticks, (tick) => knownTick(tick, cookIds)),
    ),
  }
}

/** Ids that the document knows, whether or not the entry is read: what hangs on a removed one is removed with it. */
const familiar = (listed: Listed<{ readonly id: string }>): Ids => new Set([...listed.gone, ...idsOf(listed.items)])

type Unique = { readonly [R in EntryRoot]: EntryOf[R][] }

/** The first to use an id keeps it, in the order in which the evening's check looks at them. */
const uniqueIds = (entries: Entries, report: (why: string) => void): Unique => {
  const seen = new Set<string>()
  const isFirst = (id: string): boolean => {
    if (seen.has(id)) report(`Two things have the id "${id}": the later one is left out.`)
    return !seen.has(id) && Boolean(seen.add(id))
  }
  const firsts = <T extends { readonly id: string }>(items: readonly T[]): T[] => items.filter((item) => isFirst(item.id))
  const kitchens = firsts(entries.kitchens.items).map((kitchen) => {
    const kit = kitchen.kit.filter((one) => isFirst(one.id))
    return kit.length === kitchen.kit.length ? kitchen : { ...kitchen, kit }
  })
  return {
    kitchens,
    cooks: firsts(entries.cooks.items),
    courses: firsts(entries.courses.items),
    dishes: firsts(entries.dishes.items),
    steps: firsts(entries.steps.items),
    ingredients: firsts(entries.ingredients.items),
    drinks: firsts(entries.drinks.items),
    shopping: firsts(entries.shopping.items),
    ticks: firsts(entries.ticks.items),
    offers: firsts(entries.offers.items),
  }
}

/** A kitchen without kit for a plan that has none, under an id that nothing else has. */
const standIn = (lists: Unique): Kitchen => {
  const taken = new Set(Object.values(lists).flatMap((items) => items.map((item: { readonly id: string }) => item.id)))
  let id = 'kitchen'
  while (taken.has(id)) id = `${id}-`
  return { id, name: '', toTable: 'PT0S', kit: [] }
}

const withParent = <T extends { readonly id: string }>(
  items: readonly T[],
  parents: Ids,
  known: Ids,
  parentOf: (item: T) => string | null,
  noun: string,
  report: (why: string) => void,
): T[] =>
  items.filter((item) => {
    const parent = parentOf(item)
    if (parent === null || parents.has(parent)) return true
    if (!known.has(parent)) report(`The ${noun} "${item.id}" belongs to "${parent}", which is not there: it is left out.`)
    return false
  })

/** Leaves out waits that go round in a circle. */
const cutAfters = (steps: Step[], report: (why: string) => void): Step[] => {
  const arrows = steps.flatMap((step) => step.after.map((after) => ({ from: step.id, to: after.step, after })))
  const cut = circularArrows(arrows)
  if (cut.size === 0) return steps
  for (const arrow of cut)
    report(`The steps "${arrow.from}" and "${arrow.to}" wait for each other in a circle: "${arrow.from}" does not.`)
  const dropped = new Set([...cut].map((arrow) => arrow.after))
  return mapKept(steps, (step) => {
    const after = step.after.filter((one) => !dropped.has(one))
    return after.length === step.after.length ? step : { ...step, after }
  })
}

const without = <T extends object, K extends keyof T>(value: T, key: K): T => {
  const { [key]: _cut, ...rest } = value
  return rest as T
}

/** A list that is absent when it is empty. */
const someOf = <R extends LaterRoot>(root: R, items: EntryOf[R][]): { readonly [L in R]?: EntryOf[L][] } =>
  (items.length > 0 ? { [root]: items } : {}) as { readonly [L in R]?: EntryOf[L][] }

/** What a removed cook was to get, has ticked or read stays so, without the name. */
const knownNote = (note: ShoppingNote, cooks: Ids): ShoppingNote => {
  const own = note.by !== undefined && !cooks.has(note.by) ? without(note, 'by') : note
  return own.read?.by !== undefined && !cooks.has(own.read.by) ? { ...own, read: without(own.read, 'by') } : own
}
const knownTick = (tick: Tick, cooks: Ids): Tick => (tick.by !== undefined && !cooks.has(tick.by) ? without(tick, 'by') : tick)

const keptClaims = (claims: readonly Claim[], cooks: Ids, targets: Ids): Claim[] =>
  claimsInOrder(claims)
    .filter((claim) => targets.has(claim.target) && cooks.has(claim.cook))
    .slice(0, 1000)
    .map((claim) =>
      claim.also?.some((cook) => !cooks.has(cook)) ? { ...claim, also: claim.also.filter((c) => cooks.has(c)) } : claim,
    )

interface Known {
  readonly cooks: readonly { readonly id: string; readonly host: boolean }[]
  readonly courses: Ids
  readonly dishes: Ids
  readonly steps: Ids
}

/** Facts of what is there. What a cook said stands when the cook is removed: a host, or whoever is there, has said it then. */
const keptFacts = (night: readonly NightFact[], { cooks, courses, dishes, steps }: Known): NightFact[] => {
  const ids = idsOf(cooks)
  const speaker = cooks.find((cook) => cook.host) ?? cooks[0]
  const isKnown = (fact: NightFact): boolean => {
    if ('step' in fact) return steps.has(fact.step)
    if ('course' in fact) return courses.has(fact.course)
    if ('cook' in fact) return ids.has(fact.cook)
    return 'dish' in fact ? dishes.has(fact.dish) : true
  }
  const sound = (fact: NightFact): NightFact => {
    if ('out' in fact && fact.instead !== undefined && !dishes.has(fact.instead)) return without(fact, 'instead')
    if ('alarm' in fact && fact.confirmed?.some(({ cook }) => !ids.has(cook)))
      return { ...fact, confirmed: fact.confirmed.filter(({ cook }) => ids.has(cook)) }
    return fact
  }
  return nightInOrder(night)
    .flatMap((fact) => (ids.has(fact.by) ? [fact] : speaker ? [{ ...fact, by: speaker.id }] : []))
    .filter(isKnown)
    .map(sound)
    .slice(0, 5000)
}

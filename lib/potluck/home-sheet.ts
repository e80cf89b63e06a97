import { secondsOf } from '#lib/domain/duration.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { Care, Dish, KeepHow, Step } from '#lib/domain/menu.ts'
import { type Offer, stateOf, type TableThing } from '#lib/domain/offer.ts'
import type { Cue, RunningOrder } from '#lib/domain/running-order.ts'
import { instantOfMs, msOfInstant } from '#lib/domain/time.ts'

/** A step as the sheet tells it; times are null while it has no place in the order. */
export interface SheetWork {
  readonly step: string
  readonly does: string
  readonly care: Care
  readonly start: string | null
  readonly end: string | null
  readonly cooks: readonly string[]
  /** Kit that it is in or on, the worktop left out. */
  readonly kit: readonly string[]
  readonly oven: { readonly lowC: number; readonly highC: number } | null
  readonly coreC: number | null
}

/** When somebody leaves home, is likely there, and is there at the latest. */
export interface SheetWay {
  readonly leave: string
  readonly likely: string
  readonly latest: string
}

export type SheetItem =
  | {
      readonly kind: 'dish'
      readonly dish: string
      readonly name: string
      readonly course: string
      readonly portions: number | null
      readonly toTable: string | null
      readonly packed: {
        readonly how: KeepHow
        readonly most: string | null
        readonly box: string | null
        readonly vessel: string | null
        readonly goesHome: boolean
      }
      readonly home: readonly SheetWork[]
      /** Null while it has no place in the order. */
      readonly way: SheetWay | null
      /** Where it goes on arrival: kit of the host's, or null for the worktop, and who puts it there, where that is told. */
      readonly put: { readonly kit: string | null; readonly at: string | null; readonly cooks: readonly string[] }
      readonly there: readonly SheetWork[]
      /** Steps that say something of a guest and stand in the plan alone. */
      readonly untold: number
      /** Its cook has still to say what is in it, and that it was kept apart. */
      readonly toConfirm: boolean
    }
  | {
      readonly kind: 'thing'
      readonly offer: string
      readonly name: string
      readonly thing: TableThing | null
      readonly count: number
      readonly goesHome: boolean
    }

/** All that one home brings: what, how packed, when to start and leave, where it goes and who goes on with it. */
export interface HomeSheet {
  readonly kitchen: string
  /** Null: everybody of that home. */
  readonly cook: string | null
  /** The first thing to do at home, and when they are on the way; null while there is no order. */
  readonly start: string | null
  readonly way: SheetWay | null
  readonly items: readonly SheetItem[]
}

export interface HomeOf {
  readonly kitchen: string
  /** What this cook brings alone; everything of that home when absent. */
  readonly cook?: string
  /** Dishes whose cook has still to confirm what is in them; who asks knows why. */
  readonly toConfirm?: ReadonlySet<string>
}

/**
 * The sheet of a home that is not the host's, from the plan and its order. There is nothing of guests and their needs in it: it is sent as
 * text. Who carries a dish is in the order, or, while it has none, whoever offered it.
 */
export const homeSheetOf = (evening: Evening, order: RunningOrder | null, { kitchen, cook, toConfirm }: HomeOf): HomeSheet => {
  const cues = cuesByStep(order)
  const offers = (evening.offers ?? []).filter((offer) => stateOf(offer) === 'accepted')
  const dishes = evening.dishes.filter((dish) => {
    if (dish.kitchen !== kitchen || kitchen === evening.host || dish.state !== 'on') return false
    if (cook === undefined) return true
    const carriers = carryOf(evening, dish.id).flatMap(({ id }) => cues.get(id)?.flatMap(({ cooks }) => cooks) ?? [])
    return carriers.length > 0 ? carriers.includes(cook) : offers.some((offer) => offer.dish === dish.id && offer.cook === cook)
  })
  const homes = new Set(evening.cooks.filter((each) => each.presence[0]?.kitchen === kitchen).map(({ id }) => id))
  const things = offers.filter(
    (offer) =>
      offer.kind === 'thing' &&
      (offer.kitchen === undefined ? homes.has(offer.cook) : offer.kitchen === kitchen) &&
      (cook === undefined || offer.cook === cook),
  )
  const items: SheetItem[] = [
    ...dishes.map((dish) => dishItem(evening, order, cues, dish, offers, toConfirm)),
    ...things.map(thingItem),
  ]
  const starts = items.flatMap((item) => (item.kind === 'dish' ? [...item.home.map(({ start }) => start), item.way?.leave] : []))
  const ways = items.flatMap((item) => (item.kind === 'dish' && item.way ? [item.way] : []))
  return {
    kitchen,
    cook: cook ?? null,
    start: earliest(starts.filter((start): start is string => typeof start === 'string')),
    way: ways.toSorted((a, b) => msOfInstant(a.leave) - msOfInstant(b.leave))[0] ?? null,
    items,
  }
}

/** The homes from which something comes, with the cooks who carry it, in the order of the kitchens. */
export const homesOf = (evening: Evening): readonly string[] => {
  const dishes = new Set(evening.dishes.filter(({ state }) => state === 'on').map(({ kitchen }) => kitchen))
  const things = new Set((evening.offers ?? []).filter((offer) => stateOf(offer) === 'accepted').map(({ kitchen }) => kitchen))
  return evening.kitchens.map(({ id }) => id).filter((id) => id !== evening.host && (dishes.has(id) || things.has(id)))
}

type Cues = ReadonlyMap<string, readonly Cue[]>

const cuesByStep = (order: RunningOrder | null): Cues => {
  const found = new Map<string, Cue[]>()
  for (const cue of order?.cues ?? []) found.set(cue.step, [...(found.get(cue.step) ?? []), cue])
  return found
}

const earliest = (instants: readonly string[]): string | null =>
  instants.toSorted((a, b) => msOfInstant(a) - msOfInstant(b))[0] ?? null

const carryOf = ({ steps }: Evening, dish: string): readonly Step[] =>
  steps.filter((step) => step.dish === dish && step.role === 'carry')

const workOf = (cues: Cues, step: Step): SheetWork => {
  const own = cues.get(step.id) ?? []
  const way = step.ways[own[0]?.way ?? 0]
  const oven = way?.uses.find((use) => use.kind === 'oven')
  const ends = own.map(({ end }) => end).toSorted((a, b) => msOfInstant(b) - msOfInstant(a))
  return {
    step: step.id,
    does: step.does,
    care: way?.care ?? 'hands-on',
    start: earliest(own.map(({ start }) => start)),
    end: ends[0] ?? null,
    cooks: [...new Set(own.flatMap(({ cooks, touches }) => [...cooks, ...touches.map(({ cook }) => cook)]))],
    kit: [...new Set(own.flatMap(({ kit }) => kit.map(({ id }) => id)))],
    oven: oven ? { lowC: oven.lowC, highC: oven.highC } : null,
    coreC: step.until?.coreC ?? null,
  }
}

/** On the way from its start: likely there after the likely minutes, and there at the latest after the most. */
const wayOf = (evening: Evening, cues: Cues, carries: readonly Step[]): SheetWay | null => {
  const placed = carries.flatMap((step) => (cues.get(step.id) ?? []).map((cue) => ({ cue, way: step.ways[cue.way] })))
  const first = placed.toSorted((a, b) => msOfInstant(a.cue.start) - msOfInstant(b.cue.start))[0]
  if (!first?.way) return null
  const leave = msOfInstant(first.cue.start)
  const after = (duration: string) => instantOfMs(evening, leave + secondsOf(duration) * 1000)
  return { leave: first.cue.start, likely: after(first.way.takes.likely), latest: after(first.way.takes.most) }
}

const dishItem = (
  evening: Evening,
  order: RunningOrder | null,
  cues: Cues,
  dish: Dish,
  offers: readonly Offer[],
  toConfirm: ReadonlySet<string> | undefined,
): SheetItem => {
  const offer = offers.find((each) => each.dish === dish.id)
  const own = evening.steps.filter((step) => step.dish === dish.id)
  const told = own.filter(({ guard }) => guard === undefined)
  const worktops = new Set(
    evening.kitchens.flatMap(({ kit }) => kit.filter(({ kind }) => kind === 'worktop').map(({ id }) => id)),
  )
  const work = (step: Step): SheetWork => {
    const found = workOf(cues, step)
    return { ...found, kit: found.kit.filter((id) => !worktops.has(id)) }
  }
  const at = told.filter(({ role }) => role === 'finish' || role === 'plate')
  const [first, ...others] = at.map(work)
  // A step that only keeps it in the fridge is where it goes on arrival; any other one is work that follows.
  const isPut = at[0]?.ways.every(({ care, uses }) => care === 'leave' && uses.every(({ kind }) => kind === 'cold')) ?? false
  return {
    kind: 'dish',
    dish: dish.id,
    name: dish.name,
    course: dish.course,
    portions: dish.portions ?? null,
    toTable: order?.courses.find(({ course }) => course === dish.course)?.toTable ?? null,
    packed: {
      how: dish.carry?.how ?? dish.keeps.how,
      most: dish.carry?.most ?? null,
      box: offer?.box?.name ?? null,
      vessel: offer?.vessel?.name ?? null,
      goesHome: offer?.vessel?.goesHome ?? false,
    },
    home: told.filter(({ role }) => role === 'make').map(work),
    way: wayOf(evening, cues, carryOf(evening, dish.id)),
    put: { kit: first?.kit[0] ?? null, at: first?.start ?? null, cooks: isPut ? (first?.cooks ?? []) : [] },
    there: [...(first && !isPut ? [first] : []), ...others],
    untold: own.length - told.length,
    toConfirm: toConfirm?.has(dish.id) ?? false,
  }
}

const thingItem = (offer: Offer): SheetItem => ({
  kind: 'thing',
  offer: offer.id,
  name: offer.name,
  thing: offer.thing ?? null,
  count: offer.portions,
  goesHome: offer.vessel?.goesHome ?? false,
})

import type { Activity, ActivityId, Delivery, DeliveryId, Mode, Problem, ServingId, Use, Weights } from './problem.ts'
import type { Breach } from './schedule.ts'

/** What may be broken at a price. */
export type Wish =
  | { readonly kind: 'lag'; readonly lag: number }
  | { readonly kind: 'keeps' | 'carry'; readonly delivery: DeliveryId }
  | { readonly kind: 'wait' | 'sit-down'; readonly serving: ServingId }

/** What a problem asks for and might do without: a wish, kit of one kind held by an activity or a waiting dish, cooks at an activity, its earliest time. */
export type Demand =
  | { readonly kind: 'wish'; readonly wish: Wish }
  /** `of`: ring, oven, or the class of a store. */
  | {
      readonly kind: 'kit'
      readonly by: { readonly activity: ActivityId } | { readonly delivery: DeliveryId }
      readonly of: string
    }
  | { readonly kind: 'cooks'; readonly activity: ActivityId }
  /** Not to begin before its own time. */
  | { readonly kind: 'from'; readonly activity: ActivityId }

export const kitClass = (use: Use): string => (use.kind === 'store' ? use.of : use.kind)

/** Names a wish: equal for equal ones. */
export const wishKey = (wish: Wish | Breach): string => {
  switch (wish.kind) {
    case 'lag':
      return `lag ${wish.lag}`
    case 'keeps':
    case 'carry':
      return `${wish.kind} ${wish.delivery}`
    case 'wait':
    case 'sit-down':
      return `${wish.kind} ${wish.serving}`
  }
}

/** Every wish that a problem makes, in its order. */
export const wishesOf = (problem: Problem): Wish[] => [
  ...problem.lags.flatMap((lag, at): Wish[] =>
    lag.most !== undefined && lag.bound === 'quality' ? [{ kind: 'lag', lag: at }] : [],
  ),
  ...problem.deliveries.flatMap(({ id, keeps, carry }): Wish[] => [
    ...(keeps.bound === 'quality' ? [{ kind: 'keeps' as const, delivery: id }] : []),
    ...(carry?.bound === 'quality' ? [{ kind: 'carry' as const, delivery: id }] : []),
  ]),
  ...problem.servings.flatMap(({ id, role }): Wish[] => [
    role.kind === 'first' ? { kind: 'sit-down', serving: id } : { kind: 'wait', serving: id },
  ]),
]

/** All that the problem asks for, less the kit and cooks of what is left out anyhow. */
export const demandsOf = (problem: Problem, left: ReadonlySet<ActivityId>): Demand[] => {
  const activities = problem.activities.filter(({ id, fact }) => !left.has(id) && !fact)
  const opens = Math.min(...activities.map(({ from }) => from ?? problem.horizon.from))
  const classes = (uses: readonly Use[]) => [...new Set(uses.map(kitClass))]
  return [
    ...wishesOf(problem).map((wish): Demand => ({ kind: 'wish', wish })),
    ...activities.flatMap(({ id, modes }) =>
      classes(modes.flatMap(({ uses }) => uses)).map((of): Demand => ({ kind: 'kit', by: { activity: id }, of })),
    ),
    ...problem.deliveries.flatMap(({ id, keeps }) =>
      classes(keeps.uses).map((of): Demand => ({ kind: 'kit', by: { delivery: id }, of })),
    ),
    ...activities.flatMap(({ id, modes }): Demand[] =>
      modes.some(({ care, touches }) => care !== 'leave' || touches.length > 0) ? [{ kind: 'cooks', activity: id }] : [],
    ),
    ...activities.flatMap(({ id, from }): Demand[] =>
      from !== undefined && from > opens ? [{ kind: 'from', activity: id }] : [],
    ),
  ]
}

/** Longer than any evening: 60 days at 30 s. */
const ENDLESS = 172_800

/** Broken wishes cost, nothing else does. */
const WISHES_ONLY: Weights = {
  left: 1_000_000,
  late: 300,
  longWait: 300,
  wait: 0,
  past: 300,
  missed: 0,
  meal: 0,
  unfair: 0,
  allAway: 0,
  lead: 0,
  calm: 0,
  early: 0,
  moved: 0,
}

/**
 * The problem with these of its demands and no others, where only broken wishes cost; without what is left out anyhow. Its
 * lags keep their numbers. What happened stays as it was.
 */
export const relaxed = (problem: Problem, demands: readonly Demand[], left: ReadonlySet<ActivityId>): Problem => {
  const asked = new Set(demands.map(demandKey))
  const isWished = (wish: Wish) => asked.has(demandKey({ kind: 'wish', wish }))
  const { previous: _, ...rest } = problem
  return {
    ...rest,
    activities: problem.activities.filter(({ id }) => !left.has(id)).map((activity) => asFree(activity, asked)),
    lags: problem.lags.map((lag, at) => {
      const { most: __, ...open } = lag
      return lag.bound === 'safety' || isWished({ kind: 'lag', lag: at }) ? lag : open
    }),
    together: problem.together.map((group) => ({ ...group, activities: group.activities.filter((id) => !left.has(id)) })),
    deliveries: problem.deliveries.map((delivery) =>
      asPatient(delivery, isWished, (use) =>
        asked.has(demandKey({ kind: 'kit', by: { delivery: delivery.id }, of: kitClass(use) })),
      ),
    ),
    servings: problem.servings.map((serving) =>
      isWished({ kind: 'wait', serving: serving.id }) ? serving : { ...serving, wait: { ...serving.wait, most: ENDLESS } },
    ),
    weights: demands.some((demand) => demand.kind === 'wish' && demand.wish.kind === 'sit-down')
      ? WISHES_ONLY
      : { ...WISHES_ONLY, late: 0 },
  }
}

const demandKey = (demand: Demand): string => {
  switch (demand.kind) {
    case 'wish':
      return wishKey(demand.wish)
    case 'kit':
      return `kit ${'activity' in demand.by ? `activity ${demand.by.activity}` : `delivery ${demand.by.delivery}`} ${demand.of}`
    case 'cooks':
    case 'from':
      return `${demand.kind} ${demand.activity}`
  }
}

const asFree = (activity: Activity, asked: ReadonlySet<string>): Activity => {
  if (activity.fact) return activity
  const { id } = activity
  const has = (demand: Demand) => asked.has(demandKey(demand))
  const isAttended = has({ kind: 'cooks', activity: id })
  const asks = (mode: Mode): Mode => {
    const uses = mode.uses.filter((use) => has({ kind: 'kit', by: { activity: id }, of: kitClass(use) }))
    return isAttended ? { ...mode, uses } : { ...mode, uses, care: 'leave', cooks: 0, touches: [] }
  }
  const { from, ...rest } = activity
  const modes = activity.modes.map(asks)
  return from === undefined || has({ kind: 'from', activity: id }) ? { ...activity, modes } : { ...rest, modes }
}

const asPatient = (delivery: Delivery, isWished: (wish: Wish) => boolean, isHeld: (use: Use) => boolean): Delivery => {
  const { id, carry, keeps } = delivery
  const isKept = keeps.bound === 'safety' || isWished({ kind: 'keeps', delivery: id })
  const isCarried = carry?.bound === 'safety' || isWished({ kind: 'carry', delivery: id })
  return {
    ...delivery,
    keeps: { ...keeps, most: isKept ? keeps.most : ENDLESS, uses: keeps.uses.filter(isHeld) },
    ...(carry ? { carry: { ...carry, most: isCarried ? carry.most : ENDLESS } } : {}),
  }
}

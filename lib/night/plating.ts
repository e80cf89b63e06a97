import { secondsOf } from '#lib/domain/duration.ts'
import type { Evening } from '#lib/domain/evening.ts'
import { bySiblingOrder } from '#lib/domain/evening.ts'
import type { Dish } from '#lib/domain/menu.ts'
import { coversOf, portionsOf } from '#lib/domain/portions.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { msOfInstant } from '#lib/domain/time.ts'
import { alarmsOf, guardsOf } from './alarms.ts'
import type { Alarm, GuardLine } from './board.ts'
import { momentOf } from './moment.ts'

/** What goes on the plates, or to the table, one after the other. */
export interface Filling {
  readonly dish: string
  /** Plates, or for platters portions, that it is for. */
  readonly portions: number
  /** The needs for which it is kept apart: these plates are filled first, covered, and go to their guests alone. */
  readonly guardedFor: readonly string[]
  /** It is made for some of the guests instead of this dish. */
  readonly insteadOf: string | null
}

/** How a course gets from the kitchen to the table. Instants in ms. */
export interface Plating {
  readonly course: string
  readonly service: 'plated' | 'platters' | 'on-table'
  /** Plates to fill; of platters and what stands on the table, one a dish. */
  readonly count: number
  readonly toTable: number
  /** When the first hand is wanted for it; null when the method has no plating. */
  readonly from: number | null
  readonly fill: readonly Filling[]
  readonly guards: readonly GuardLine[]
  /** Dishes that are not to be served to somebody. */
  readonly alarms: readonly Alarm[]
  /** Who plates. */
  readonly hands: readonly string[]
  /** Who takes it to the table, as far as the plan says so; the guarded plate has its own. */
  readonly carriers: readonly string[]
  readonly guardCarriers: readonly string[]
  /** Its steps that are not done, plating aside: what plating still waits for. */
  readonly waitsFor: readonly string[]
}

/** What may stand longest at the table is filled first, what may not wait last; the plan's own order decides between equals. */
const byPatience = (a: Dish, b: Dish): number =>
  secondsOf(b.toTable.early) - secondsOf(a.toTable.early) ||
  secondsOf(b.keeps.most) - secondsOf(a.keeps.most) ||
  bySiblingOrder(a, b)

const fillOf = (evening: Evening, dishes: readonly Dish[], guards: readonly GuardLine[]): Filling[] => {
  const needsOf = (dish: Dish) => [...new Set(guards.filter((guard) => guard.dish === dish.id).map(({ need }) => need))]
  const portions = (dish: Dish): number => {
    const variants = dishes.filter(({ variant }) => variant?.of === dish.id)
    const away = variants.reduce((sum, { variant }) => sum + (variant?.portions ?? 0), 0)
    return Math.max(0, portionsOf(evening, dish) - away)
  }
  return dishes
    .toSorted((a, b) => Number(needsOf(b).length > 0) - Number(needsOf(a).length > 0) || byPatience(a, b))
    .map((dish) => ({
      dish: dish.id,
      portions: portions(dish),
      guardedFor: needsOf(dish),
      insteadOf: dish.variant?.of ?? null,
    }))
}

/** The plating page of a course; null when the order does not serve it. Doneness, counts and hands are as the plan has them. */
export const platingOf = (evening: Evening, order: RunningOrder, course: string, nowMs: number): Plating | null => {
  const planned = order.courses.find((each) => each.course === course)
  const found = evening.courses.find(({ id }) => id === course)
  if (!planned || !found) return null
  const moment = momentOf(evening, order, nowMs)
  const dishes = evening.dishes.filter((dish) => dish.course === course && dish.state === 'on')
  const ids = new Set(dishes.map(({ id }) => id))
  const guards = guardsOf(moment, course)
  const isServing = (role: string) => role === 'plate' || role === 'carry'
  const cuesOf = (wanted: (step: Evening['steps'][number]) => boolean) => {
    const steps = new Set(
      evening.steps.filter((step) => step.dish !== null && ids.has(step.dish) && wanted(step)).map(({ id }) => id),
    )
    return order.cues.filter((cue) => steps.has(cue.step))
  }
  const cooksOf = (cues: RunningOrder['cues']) => [
    ...new Set(cues.flatMap(({ cooks }) => cooks).filter((cook) => !moment.told.away.has(cook))),
  ]
  const plates = cuesOf(({ role }) => role === 'plate')
  const guardCarriers = cooksOf(cuesOf(({ guard }) => guard?.does === 'carry'))
  const atTable = cooksOf(cuesOf(({ role, where, guard }) => guard === undefined && role === 'plate' && where === 'table'))
  const hands = cooksOf(plates)
  return {
    course,
    service: found.service,
    count: found.service === 'plated' ? coversOf(evening, course) : dishes.length,
    toTable: Math.max(nowMs, msOfInstant(planned.toTable)),
    from: plates.length === 0 ? null : Math.min(...plates.map(({ start }) => msOfInstant(start))),
    fill: fillOf(evening, dishes, guards),
    guards,
    alarms: alarmsOf(moment).filter(({ dish }) => ids.has(dish)),
    hands,
    carriers: atTable.length > 0 ? atTable : hands,
    guardCarriers,
    waitsFor: [
      ...new Set(
        moment.works.filter(({ step, dish }) => dish?.course === course && !isServing(step.role)).map(({ step }) => step.id),
      ),
    ],
  }
}

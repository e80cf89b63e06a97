import { secondsOf, TICK_SECONDS } from '#lib/domain/duration.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { Dish, Step, Way } from '#lib/domain/menu.ts'
import { needsNobody } from '#lib/domain/needs-nobody.ts'
import type { Cue, RunningOrder } from '#lib/domain/running-order.ts'
import { msOfInstant } from '#lib/domain/time.ts'
import { stepTold, type Told } from './told.ts'

/** A moment at which somebody stands at something left alone. */
export interface TouchToCome {
  readonly what: 'in' | 'out' | number
  readonly at: number
  readonly takes: number
  readonly cook: string
  readonly does: string | null
}

/** A cue that is not done, with what was told of it. Times in ms. */
export interface Work {
  readonly step: Step
  readonly cue: Cue
  readonly way: Way
  readonly dish: Dish | null
  readonly batches: number
  /** Nobody tells each batch: the first begins what is told to begin, and the last ends what is told to be done. */
  readonly isFirst: boolean
  readonly isLast: boolean
  readonly isBegun: boolean
  /** It will have begun when what it waits for is told done: nobody is called for that. */
  readonly beginsItself: boolean
  readonly start: number
  /** When its usual minutes are over, with what was said of needing longer. */
  readonly end: number
  readonly extra: number
  /** Going in only while it has not begun; the others as the order still has them. */
  readonly touches: readonly TouchToCome[]
  /** Who does it or watches it; nobody when it is left alone. */
  readonly cooks: readonly string[]
  /** Whom it calls when it begins. */
  readonly beginners: readonly string[]
}

/** The order's grid, in ms. */
const TICK = TICK_SECONDS * 1000

const usualOf = (evening: Evening, way: Way, cooks: readonly string[]): number => {
  const likely = secondsOf(way.takes.likely) * 1000
  if (way.care !== 'hands-on') return likely
  const paces = evening.cooks.filter(({ id }) => cooks.includes(id)).map(({ pace }) => pace)
  return likely * (paces.length === 0 ? 1 : Math.max(...paces))
}

const onGrid = (ms: number): number => Math.ceil(ms / TICK - 1e-9) * TICK

/** Which of its looks in between each touch is, counted from the beginning, and how long the moment takes. */
const touchesOf = (way: Way, cue: Cue, isBegun: boolean): TouchToCome[] => {
  const start = msOfInstant(cue.start)
  const end = msOfInstant(cue.end)
  const into = way.touches.find(({ when }) => when === 'in')
  const out = way.touches.find(({ when }) => when === 'out')
  const between = way.touches.filter((touch) => typeof touch.when === 'object')
  const all = cue.touches.map(({ at, cook }) => ({ at: msOfInstant(at), cook })).sort((a, b) => a.at - b.at)
  const found: TouchToCome[] = []
  let looks = 0
  for (const [index, { at, cook }] of all.entries()) {
    if (into && at === start) {
      if (!isBegun) found.push({ what: 'in', at, takes: msOf(into.takes), cook, does: into.does ?? null })
      continue
    }
    if (out && index === all.length - 1 && at >= end - msOf(out.takes)) {
      found.push({ what: 'out', at, takes: msOf(out.takes), cook, does: out.does ?? null })
      continue
    }
    const look = between.find(({ when }) => typeof when === 'object' && isEach(at - start, msOf(when.every))) ?? between[0]
    const every = look && typeof look.when === 'object' ? msOf(look.when.every) : 0
    looks = Math.max(looks + 1, every > 0 ? Math.floor((at - start) / every) : 0)
    if (look) found.push({ what: looks, at, takes: msOf(look.takes), cook, does: look.does ?? null })
  }
  return found
}

const msOf = (duration: string): number => secondsOf(duration) * 1000
const isEach = (since: number, every: number): boolean => every > 0 && since > 0 && since % every === 0

/** Whom a thing calls that is left alone from the first: who puts it in, who did what it follows, or else who looks after it later. */
const beginnersOf = (order: RunningOrder, step: Step, cue: Cue): readonly string[] => {
  if (cue.cooks.length > 0) return cue.cooks
  const [first] = cue.touches.toSorted((a, b) => msOfInstant(a.at) - msOfInstant(b.at))
  if (first && msOfInstant(first.at) === msOfInstant(cue.start)) return [first.cook]
  const before = order.cues
    .filter((other) => step.after.some((after) => after.step === other.step))
    .toSorted((a, b) => msOfInstant(b.end) - msOfInstant(a.end))[0]
  if (before && before.cooks.length > 0) return before.cooks
  const [last] = (before?.touches ?? []).toSorted((a, b) => msOfInstant(b.at) - msOfInstant(a.at))
  return last ? [last.cook] : first ? [first.cook] : []
}

const willBeginItself = (evening: Evening, step: Step, told: Told): boolean =>
  needsNobody(step) && step.after.some((after) => stepTold(told, after.step).done === null && isOn(evening, after.step))

const isOn = (evening: Evening, id: string): boolean => {
  const step = evening.steps.find((each) => each.id === id)
  return step !== undefined && (step.dish === null || evening.dishes.some((dish) => dish.id === step.dish && dish.state === 'on'))
}

/** What rests by itself is over when what comes after it has begun. */
const isFollowed = (evening: Evening, { id }: Step, told: Told): boolean =>
  evening.steps.some(
    (step) =>
      step.after.some((after) => after.step === id && after.from === 'end') &&
      (stepTold(told, step.id).started !== null || stepTold(told, step.id).done !== null),
  )

/** The cues of an order that are still to be done or under way, by when they begin; none of a dish that is not on. */
export const workOf = (evening: Evening, order: RunningOrder, told: Told): readonly Work[] => {
  const steps = new Map(evening.steps.map((step) => [step.id, step]))
  const dishes = new Map(evening.dishes.map((dish) => [dish.id, dish]))
  const batches = new Map<string, number>()
  for (const { step } of order.cues) batches.set(step, (batches.get(step) ?? 0) + 1)
  return order.cues
    .flatMap((cue): Work[] => {
      const step = steps.get(cue.step)
      const way = step?.ways[cue.way]
      const dish = step?.dish === null ? null : dishes.get(step?.dish ?? '')
      if (!step || !way || dish === undefined || (dish !== null && dish.state !== 'on')) return []
      const said = stepTold(told, step.id)
      const count = batches.get(step.id) ?? 1
      const isLater = cue.batch > 0
      if (said.done !== null) return []
      if (said.started !== null && cue.state === 'done') return []
      if (way.care === 'leave' && way.touches.length === 0 && isFollowed(evening, step, told)) return []
      const isBegun = said.started !== null && (cue.state === 'running' || !isLater)
      const planned = msOfInstant(cue.start)
      const start = isBegun && !isLater ? (said.started ?? planned) : planned
      const extra = isLater ? 0 : said.extra
      const chosen = msOfInstant(cue.end) - planned
      const usual = onGrid(usualOf(evening, way, cue.cooks)) + extra
      const length = !isBegun ? chosen : way.upTo !== undefined ? Math.max(usual, chosen) : usual
      // An order from before it was told to have begun has the moments in between where they were planned.
      const moved = isBegun && cue.state !== 'running' ? start - planned : 0
      const away = (cook: string) => told.away.has(cook)
      return [
        {
          step,
          cue,
          way,
          dish,
          batches: count,
          isFirst: !isLater,
          isLast: cue.batch === count - 1,
          isBegun,
          beginsItself: !isBegun && willBeginItself(evening, step, told),
          start,
          end: start + length,
          extra: said.extra,
          touches: touchesOf(way, cue, isBegun).map((touch) => ({ ...touch, at: touch.at + moved })),
          cooks: cue.cooks.filter((cook) => !away(cook)),
          beginners: beginnersOf(order, step, cue).filter((cook) => !away(cook)),
        },
      ]
    })
    .sort((a, b) => a.start - b.start || (a.step.id < b.step.id ? -1 : a.step.id > b.step.id ? 1 : a.cue.batch - b.cue.batch))
}

import { EYE_PIECE, type Problem, type Use } from '#lib/scheduling/problem.ts'
import type { Schedule } from '#lib/scheduling/schedule.ts'
import { type Hold, type Placed, rampBetween, sceneOf } from './night-scene.ts'

/** A source of numbers in [0, 1). */
export type Unit = () => number

export interface Nights {
  /** Shares of the nights in which each serving was on time, in the schedule's order, and all of them. */
  readonly onTime: readonly number[]
  readonly all: number
}

/** A length between least and most with its peak at likely. */
export type Draw = (least: number, likely: number, most: number, unit: Unit) => number

/**
 * Carries a schedule out night by night, as a clock would: at each moment whoever may begin begins, in the planned order,
 * with real shelves, rings and hands counted. Slow, and written from M1-M5 without the engine's network.
 */
export const simulateNights = (problem: Problem, schedule: Schedule, nights: number, unit: Unit, draw: Draw): Nights => {
  const scene = sceneOf(problem, schedule)
  const onTime = scene.servings.map(() => 0)
  let all = 0
  for (let count = 0; count < nights; count++) {
    const night = oneNight(problem, scene, new Map(scene.placed.map((one) => [one, lengthOf(problem, one, unit, draw)])))
    const verdicts = scene.servings.map((serving) => {
      const late = (night.served.get(serving.id) ?? HUGE) - serving.due
      return serving.fact !== undefined || (late <= GRACE + 1e-6 && isFresh(problem, scene, night, serving))
    })
    for (const [i, good] of verdicts.entries()) if (good) onTime[i] = (onTime[i] ?? 0) + 1
    if (verdicts.every(Boolean)) all++
  }
  return { onTime: onTime.map((count) => count / nights), all: all / nights }
}

type Scene = ReturnType<typeof sceneOf>

/** What is known so far of a night. Undefined: not yet. */
export interface Night {
  readonly begun: Map<Placed, number>
  /** When it would be over, touches apart; when it is. */
  readonly over: Map<Placed, number>
  readonly ended: Map<Placed, number>
  /** Until when its kit is held. */
  readonly freed: Map<Placed, number>
  readonly touched: Map<string, number>
  readonly served: Map<string, number>
}

const HUGE = 1e9
/** Ticks: 2 min. */
const GRACE = 4

/** What happens when each step takes that long. */
export const oneNight = (problem: Problem, scene: Scene, lengths: ReadonlyMap<Placed, number>): Night => {
  let night = carryOut(problem, scene, lengths, new Map())
  // Whether a step waits for a touch that is still to come shows only when it has come: once more, knowing when.
  for (let again = 0; again < 9; again++) {
    const next = carryOut(problem, scene, lengths, night.touched)
    const isSame = [...next.touched].every(([id, at]) => night.touched.get(id) === at)
    night = next
    if (isSame) break
  }
  for (const { id } of scene.servings) if (!night.served.has(id)) throw new Error(`${id} is never served`)
  return night
}

const carryOut = (
  problem: Problem,
  scene: Scene,
  lengths: ReadonlyMap<Placed, number>,
  foreseen: ReadonlyMap<string, number>,
): Night => {
  const night: Night = {
    begun: new Map(),
    over: new Map(),
    ended: new Map(),
    freed: new Map(),
    touched: new Map(),
    served: new Map(),
  }
  for (const one of scene.placed) {
    if (!one.fact) continue
    night.begun.set(one, one.start)
    night.over.set(one, one.fact.kind === 'done' ? one.end : one.start + (lengths.get(one) ?? 0))
  }
  let clock = -HUGE
  for (;;) {
    let next = HUGE
    let moved = true
    while (moved) {
      moved = false
      next = HUGE
      const consider = (at: number, act: () => void) => {
        if (at <= clock) {
          act()
          moved = true
        } else if (at < next) next = at
      }
      for (const touch of scene.touches) {
        if (night.touched.has(touch.id)) continue
        consider(touchFrom(scene, night, touch), () => night.touched.set(touch.id, clock))
      }
      for (const one of scene.placed) {
        if (!night.begun.has(one)) {
          consider(beginFrom(problem, scene, night, one), () => {
            night.begun.set(one, clock)
            const over = clock + (lengths.get(one) ?? 0)
            night.over.set(one, one.chosen ? Math.max(over, one.end) : over)
          })
        }
        if (night.begun.has(one)) finish(scene, night, one, foreseen)
      }
      for (const [i, serving] of scene.servings.entries()) {
        if (night.served.has(serving.id)) continue
        consider(serveFrom(problem, scene, night, i), () => night.served.set(serving.id, clock))
      }
    }
    if (next >= HUGE) break
    clock = next
  }
  return night
}

const lengthOf = (problem: Problem, { fact, mode, start, end, pace }: Placed, unit: Unit, draw: Draw): number => {
  const [least, likely, most] = [mode.least * pace, mode.likely * pace, mode.most * pace]
  if (fact?.kind === 'done') return end - start
  const length = () => (least < most ? draw(least, likely, most, unit) : likely)
  if (!fact) return length()
  const lasted = (problem.now ?? start) - start
  const extra = Math.max(0, fact.atLeast - Math.ceil(likely - 1e-9))
  for (let tries = 0; tries < 1000; tries++) {
    const drawn = length() + extra
    if (drawn >= lasted) return drawn
  }
  return lasted
}

/** As soon as its out touches allow, it is over; when they have been, its kit is free. */
const finish = (scene: Scene, night: Night, one: Placed, foreseen: ReadonlyMap<string, number>): void => {
  const over = night.over.get(one) ?? HUGE
  let ended = over
  let freed = over
  for (const touch of scene.touches) {
    if (touch.of !== one || touch.when !== 'out') continue
    const at = night.touched.get(touch.id)
    ended = Math.max(ended, (at ?? foreseen.get(touch.id) ?? HUGE) + touch.takes - touch.lateBy)
    freed = Math.max(freed, at === undefined ? HUGE : at + touch.takes)
  }
  if (ended < HUGE) night.ended.set(one, ended)
  if (freed < HUGE) night.freed.set(one, Math.max(freed, ended))
}

const edgeAt = (night: Night, one: Placed, edge: 'start' | 'end'): number =>
  (edge === 'start' ? night.begun.get(one) : night.ended.get(one)) ?? HUGE

/** The moment from which it may begin, as far as can be known; HUGE while something before it is open. */
const beginFrom = (problem: Problem, scene: Scene, night: Night, one: Placed): number => {
  let at = one.start
  for (const lag of one.lagsBefore) if (lag.most !== undefined) at = Math.min(at, edgeAt(night, lag.before, lag.edge) + lag.most)
  for (const lag of one.lagsBefore) at = Math.max(at, edgeAt(night, lag.before, lag.edge) + lag.least)
  for (const cook of one.cooks) at = Math.max(at, cookFree(scene, night, cook, one, one))
  for (const touch of scene.touches)
    if (touch.of === one && touch.when === 'in') at = Math.max(at, cookFree(scene, night, touch.cook, one, touch))
  for (const hold of one.holds) at = Math.max(at, kitFree(problem, scene, night, hold))
  for (const group of problem.together) {
    if (!group.activities.includes(one.id)) continue
    const others = scene.placed.filter((other) => other !== one && group.activities.includes(other.id) && other.end <= one.start)
    const during = scene.placed.filter(
      (other) => other !== one && group.activities.includes(other.id) && other.start <= one.start && other.end > one.start,
    )
    const ends = others.map((other) => night.ended.get(other) ?? HUGE).sort((a, b) => b - a)
    at = Math.max(at, ends[Math.max(0, group.most - 1 - during.length)] ?? -HUGE)
  }
  return at
}

/** When this cook is done with all that was planned before and may not be done beside it. */
const cookFree = (
  scene: Scene,
  night: Night,
  cook: string,
  of: Placed,
  piece: { readonly start: number; readonly kind: 'hands' | 'eye' | 'road'; readonly short: boolean },
): number => {
  let at = -HUGE
  const excludes = (kind: 'hands' | 'eye' | 'road', spot: string, short: boolean) => {
    if (kind === 'eye' || piece.kind === 'eye') {
      const isShort = kind === 'eye' && piece.kind === 'eye' ? true : kind === 'eye' ? piece.short : short
      return spot !== of.spot || !isShort
    }
    return kind !== 'road' || piece.kind !== 'road'
  }
  for (const other of scene.placed) {
    if (other === of || !other.cooks.includes(cook) || other.end > piece.start) continue
    if (excludes(other.kind, other.spot, other.short)) at = Math.max(at, night.ended.get(other) ?? HUGE)
  }
  for (const touch of scene.touches) {
    if (touch.of === of || touch.cook !== cook || touch.start + touch.takes > piece.start) continue
    if (!excludes('hands', touch.of.spot, touch.takes <= EYE_PIECE)) continue
    const done = touch.when === 'in' ? night.begun.get(touch.of) : night.touched.get(touch.id)
    at = Math.max(at, done === undefined ? HUGE : done + touch.takes)
  }
  return at
}

const touchFrom = (scene: Scene, night: Night, touch: Scene['touches'][number]): number => {
  if (touch.when === 'in') return -HUGE
  const begun = night.begun.get(touch.of)
  const over = night.over.get(touch.of)
  if (begun === undefined || over === undefined) return HUGE
  const due = touch.when === 'out' ? over - touch.takes : begun + touch.start - touch.of.start
  return Math.max(due, cookFree(scene, night, touch.cook, touch.of, touch))
}

/** When the kit is free for it: what was planned before has let go, and the oven has had time to heat or cool. */
const kitFree = (problem: Problem, scene: Scene, night: Night, hold: Hold): number => {
  const before = scene.holds.filter((other) => other.kit === hold.kit && other.who !== hold.who && other.to <= hold.from)
  const freed = (other: Hold) => (other.of ? (night.freed.get(other.of) ?? HUGE) : arrivedAt(scene, night, other))
  const kit = problem.kit.find(({ id }) => id === hold.kit)
  if (kit?.kind === 'ring') {
    const same = before.filter(({ unit }) => unit === hold.unit)
    return Math.max(-HUGE, ...same.map((other) => lastOfPan(scene, night, other, hold, freed)))
  }
  let at = -HUGE
  if (kit?.kind === 'oven')
    for (const other of before) {
      const ramp = rampBetween(kit, other.use, hold.use)
      if (ramp > 0 && other.to + ramp <= hold.from) at = Math.max(at, freed(other) + ramp)
    }
  const room = (kit?.kind === 'oven' ? kit.shelves : kit?.kind === 'store' ? kit.capacity : 0) - amountOf(hold.use)
  const beside = scene.holds
    .filter((other) => other.kit === hold.kit && other.who !== hold.who && other.from <= hold.from && other.to > hold.from)
    .reduce((sum, { use }) => sum + amountOf(use), 0)
  // Enough of what came before must have let go, the first to be free first, for all that is planned at this moment.
  let held = before.reduce((sum, { use }) => sum + amountOf(use), 0)
  for (const other of [...before].sort((a, b) => freed(a) - freed(b))) {
    if (held <= room - beside) break
    held -= amountOf(other.use)
    at = Math.max(at, freed(other))
  }
  return at
}

/** A pan keeps its ring until its last step is over. */
const lastOfPan = (scene: Scene, night: Night, other: Hold, hold: Hold, freed: (one: Hold) => number): number => {
  if (other.pan === undefined || other.pan === hold.pan) return freed(other)
  const pan = scene.holds.filter((one) => one.kit === other.kit && one.unit === other.unit && one.pan === other.pan)
  return Math.max(...pan.map((one) => (one.of && night.begun.has(one.of) ? freed(one) : HUGE)))
}

const amountOf = (use: Use): number => (use.kind === 'oven' ? use.shelves : use.kind === 'store' ? use.amount : 1)

/** A dish that waits lets its kit go when it is at the table. */
const arrivedAt = (scene: Scene, night: Night, { dish }: Hold): number => {
  const own = scene.placed.filter(({ delivery }) => delivery === dish?.id)
  const served = dish && night.served.get(dish.serving)
  const soon = dish && served === undefined ? HUGE : (served ?? HUGE) - (dish?.early ?? 0)
  return Math.max(soon, ...own.map((one) => night.ended.get(one) ?? HUGE))
}

const serveFrom = (problem: Problem, scene: Scene, night: Night, index: number): number => {
  const serving = scene.servings[index]
  if (!serving || serving.fact) return serving?.due ?? -HUGE
  let at = serving.due
  for (const dish of problem.deliveries)
    if (dish.serving === serving.id)
      for (const one of scene.placed) if (one.delivery === dish.id) at = Math.max(at, (night.ended.get(one) ?? HUGE) - dish.late)
  const before = scene.servings[index - 1]
  if (!before) return at
  const served = night.served.get(before.id)
  if (served === undefined) return HUGE
  return Math.max(at, (before.fact?.platesOff ?? served + before.eating + before.clearing) + serving.pouring)
}

/** Nothing has waited longer than it may, or than planned, by more than the grace: between steps, and for the table. */
const isFresh = (problem: Problem, scene: Scene, night: Night, serving: Scene['servings'][number]): boolean =>
  problem.deliveries
    .filter((dish) => dish.serving === serving.id)
    .every((dish) => {
      const own = scene.placed.filter(({ delivery }) => delivery === dish.id)
      if (own.length === 0) return true
      const between = own.every((one) =>
        one.lagsBefore.every(
          (lag) =>
            lag.most === undefined ||
            (night.begun.get(one) ?? HUGE) - edgeAt(night, lag.before, lag.edge) <= lag.most + GRACE + 1e-6,
        ),
      )
      const ready = Math.max(...own.map((one) => night.ended.get(one) ?? HUGE))
      const planned = Math.max(0, serving.due - dish.early - Math.max(...own.map(({ end }) => end)))
      const waits = Math.max(0, (night.served.get(serving.id) ?? HUGE) - dish.early - ready)
      return between && waits <= Math.max(dish.keeps.most, planned) + GRACE + 1e-6
    })

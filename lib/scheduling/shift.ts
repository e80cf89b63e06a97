import { startBounds } from './bounds.ts'
import { backward } from './construct.ts'
import { fits } from './fits.ts'
import { insert } from './insert.ts'
import { refreshKeep } from './keeping.ts'
import type { Act, ServingModel } from './model.ts'
import { repairMoments } from './moments.ts'
import { afterWhatStays, isMovable, movable } from './movable.ts'
import type { Place } from './place.ts'
import { happened } from './price.ts'
import type { Random } from './random.ts'
import { deadline, put, putKeep, type State, setMoments, take } from './state.ts'

/** What lies so near before a serving that moves, it moves along: 2 h at 30 s. */
const NEAR = 240

export interface Shift {
  readonly serving: ServingModel
  readonly by: number
  /** Later servings stay where they are. */
  readonly alone: boolean
  /** stay: only what has no time left goes; along: what belongs to it moves by as much; anew: it finds new places. */
  readonly manner: 'stay' | 'along' | 'anew'
}

/** Some move of some serving. */
export const shiftServings = (state: State, random: Random): void => {
  const free = state.model.servings.filter((serving) => !serving.served)
  const serving = free[random.below(free.length)]
  if (!serving) return
  const far = [1, 2, 4, 8, 16, 32][random.below(6)] ?? 1
  const by = random.unit() < 0.6 ? -far : far
  const manner = (['stay', 'along', 'anew', 'anew'] as const)[random.below(4)] ?? 'anew'
  shift(state, { serving, by, alone: random.unit() < 0.5, manner }, random)
}

/** Moves one serving, or it and all later ones, and puts what belongs to them back around the new moments. */
export const shift = (state: State, { serving, by, alone, manner }: Shift, random: Random): void => {
  const { model } = state
  const before = [...state.moments]
  const wished = before.map((moment, i) => (i === serving.index || (!alone && i > serving.index) ? moment + by : moment))
  const moments = repairMoments(
    model,
    afterWhatStays(state, wished, (act) => isMovable(state, act)),
  )
  if (moments.every((moment, i) => moment === before[i])) return
  const moved = (act: Act) =>
    act.delivery ? (moments[act.delivery.serving.index] ?? 0) - (before[act.delivery.serving.index] ?? 0) : 0
  const out = manner === 'stay' ? tooLate(state, moved) : affected(state, before, moved)
  if (manner !== 'stay' && random.unit() < 0.5) out.push(...beside(state, out))
  if (manner === 'anew' && random.unit() < 0.5)
    out.push(...about(state, out, (before[serving.index] ?? 0) - random.below(NEAR / 2)))
  const places = new Map(out.map((act) => [act, state.places[act.index]]))
  for (const delivery of model.deliveries) putKeep(state, delivery, undefined)
  for (const act of out) take(state, act)
  setMoments(state, moments)
  for (const delivery of model.deliveries) refreshKeep(state, delivery)
  const order = backward(state, out)
  if (manner === 'along') for (const act of order) moveAlong(state, act, places.get(act), moved(act))
  for (const act of order) {
    if (state.places[act.index]) continue
    const place = places.get(act)
    insert(state, act, random, { ...(place ? { start: place.start + moved(act) } : {}), blink: 0.1 })
  }
}

/** The same place, so many ticks later, when nothing forbids it. */
const moveAlong = (state: State, act: Act, place: Place | undefined, by: number): void => {
  if (!place) return
  // One start tried, where an insertion tries many.
  state.steps += 0.25
  const start = place.start + by
  const len = place.end - place.start
  const { lo, hi } = startBounds(state, act, len)
  const again = start >= lo && start <= hi ? fits(state, act, place.mode, { cooks: place.team, len }, start, len) : undefined
  if (!again) return
  put(state, again)
  if (act.delivery) refreshKeep(state, act.delivery)
}

/** Only what the new moments leave no time for, and what has no place yet. */
const tooLate = (state: State, moved: (act: Act) => number): Act[] => {
  const inTheWay = besideWaiting(state)
  return movable(state).filter((act) => {
    const place = state.places[act.index]
    return !place || inTheWay.has(act) || (moved(act) < 0 && place.end > deadline(state, act) + moved(act))
  })
}

/** All that belongs to a serving that moves and lies near it. */
const affected = (state: State, before: readonly number[], moved: (act: Act) => number): Act[] => {
  const inTheWay = besideWaiting(state)
  return movable(state).filter((act) => {
    const place = state.places[act.index]
    if (!place || inTheWay.has(act)) return true
    return act.delivery !== undefined && moved(act) !== 0 && place.end > (before[act.delivery.serving.index] ?? 0) - NEAR
  })
}

/** What hangs on them by lags from other dishes. */
const beside = (state: State, out: readonly Act[]): Act[] => {
  const known = new Set(out)
  const found = new Set<Act>()
  for (const act of out)
    for (const other of [...act.preds.map((lag) => lag.from), ...act.succs.map((lag) => lag.to)])
      if (isMovable(state, other) && !known.has(other) && state.places[other.index] && other.delivery !== act.delivery)
        found.add(other)
  return [...found]
}

/** What happens within a quarter of an hour of this tick. */
const about = (state: State, out: readonly Act[], tick: number): Act[] => {
  const known = new Set(out)
  return movable(state).filter((act) => {
    const place = state.places[act.index]
    return place && !known.has(act) && place.start < tick + 30 && place.end > tick - 30
  })
}

/** What may share kit with a finished dish that waits for its course: it gives way when the course moves. */
const besideWaiting = (state: State): ReadonlySet<Act> =>
  new Set(
    state.model.deliveries.flatMap((delivery) =>
      happened(state, delivery)
        ? delivery.factUses.flatMap(({ kits }) =>
            kits.flatMap((kit) => (state.kitLanes[kit] ?? []).flatMap(({ who }) => state.model.acts[who] ?? [])),
          )
        : [],
    ),
  )

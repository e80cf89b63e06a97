import { backward } from './construct.ts'
import { insert } from './insert.ts'
import { refreshKeep } from './keeping.ts'
import type { Act } from './model.ts'
import { repairMoments } from './moments.ts'
import { movable } from './neighbourhoods.ts'
import { happened } from './price.ts'
import type { Random } from './random.ts'
import { putKeep, type State, setMoments, take } from './state.ts'

/** What lies so near before a serving that moves, it moves along: 2 h at 30 s. */
const NEAR = 240

/** Moves one serving, or it and all later ones, and puts what belongs to them back around the new moments. */
export const shiftServings = (state: State, random: Random): void => {
  const { model } = state
  const free = model.servings.filter((serving) => !serving.served)
  const serving = free[random.below(free.length)]
  if (!serving) return
  const far = [1, 2, 4, 8, 16, 32][random.below(6)] ?? 1
  const by = random.unit() < 0.6 ? -far : far
  const alone = random.unit() < 0.5
  const before = [...state.moments]
  const wished = before.map((moment, i) => (i === serving.index || (!alone && i > serving.index) ? moment + by : moment))
  const moments = repairMoments(model, wished)
  if (moments.every((moment, i) => moment === before[i])) return
  const moved = (index: number) => (moments[index] ?? 0) - (before[index] ?? 0)
  const inTheWay = besideWaiting(state)
  const out = movable(state).filter((act) => {
    const place = state.places[act.index]
    if (!place || inTheWay.has(act)) return true
    if (!act.delivery) return false
    const { index } = act.delivery.serving
    return moved(index) !== 0 && place.end > (before[index] ?? 0) - NEAR
  })
  if (random.unit() < 0.5) out.push(...beside(state, out))
  if (random.unit() < 0.3) out.push(...about(state, out, (before[serving.index] ?? 0) - random.below(NEAR / 2)))
  const starts = new Map(
    out.map((act) => {
      const start = state.places[act.index]?.start
      return [act, start === undefined || !act.delivery ? start : start + moved(act.delivery.serving.index)]
    }),
  )
  for (const delivery of model.deliveries) putKeep(state, delivery, undefined)
  for (const act of out) take(state, act)
  setMoments(state, moments)
  for (const delivery of model.deliveries) refreshKeep(state, delivery)
  for (const act of backward(state, out)) {
    const start = starts.get(act)
    insert(state, act, random, { ...(start === undefined ? {} : { start }), blink: 0.1 })
  }
}

/** What hangs on them by lags from other dishes. */
const beside = (state: State, out: readonly Act[]): Act[] => {
  const known = new Set(out)
  const found = new Set<Act>()
  for (const act of out)
    for (const other of [...act.preds.map((lag) => lag.from), ...act.succs.map((lag) => lag.to)])
      if (!other.fact && !known.has(other) && state.places[other.index] && other.delivery !== act.delivery) found.add(other)
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

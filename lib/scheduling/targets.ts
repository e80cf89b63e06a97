import type { Act, DeliveryModel, Model } from './model.ts'
import { NEVER } from './model.ts'
import type { Tick } from './problem.ts'
import type { Placement } from './schedule.ts'

/** From when on an activity of a known schedule may start, and where it had better end if it can last. */
export interface Target {
  start: Tick
  end: Tick
  /** Its length as short as may be, by who was told to do it. */
  readonly least: number
  /** Its length as long as may be. */
  readonly most: number
}

/**
 * The known schedule shifted right along its lags: no activity before it was, nor before what its lags ask of what
 * happened and of what was shifted (longest paths from the known starts, Bartusch, Möhring and Radermacher 1988). `kindly`:
 * what was not to wait long for something shifted is shifted along, as far as it waited no longer before.
 */
export const shiftedTargets = (
  model: Model,
  known: ReadonlyMap<Act, Placement>,
  before: readonly Tick[],
  moments: readonly Tick[],
  kindly: boolean,
): ReadonlyMap<Act, Target> => {
  const targets = new Map<Act, Target>()
  for (const [act, placement] of known) targets.set(act, firstTarget(act, placement))
  if (kindly) for (const delivery of model.deliveries) holdFresh(delivery, known, targets, before, moments)
  for (let round = 0, moved = true; moved && round < ROUNDS; round++) {
    moved = false
    for (const [act, target] of targets) {
      if (startNoEarlier(target, lowest(act, targets))) moved = true
      if (followUp(act, target, known, targets, kindly)) moved = true
    }
  }
  return targets
}

/** Lags in a circle that cannot all be kept would push one another on for ever. */
const ROUNDS = 30

const firstTarget = (act: Act, { mode: index, start, end, cooks }: Placement): Target => {
  const mode = act.modes.find((one) => one.index === index)
  const team = mode?.teams.find((one) => one.cooks.length === cooks.length && one.cooks.every((cook) => cooks.includes(cook.id)))
  const least = team?.len ?? act.minLen
  return { start: Math.max(start, act.from), end, least, most: mode?.care === 'leave' ? Math.max(least, mode.upTo) : least }
}

/** What its lags ask of what comes before it. */
const lowest = (act: Act, targets: ReadonlyMap<Act, Target>): Tick => {
  let start = -NEVER
  for (const { from, fromEnd, least } of act.preds) {
    const before = from.fact ? from.fact.start : targets.get(from)?.start
    if (before === undefined) continue
    const length = fromEnd ? (from.fact ? from.minLen : (targets.get(from)?.least ?? 0)) : 0
    start = Math.max(start, before + length + least)
  }
  return start
}

/** Shifts along what must be followed by this within its most. Says whether anything moved. */
const followUp = (
  act: Act,
  target: Target,
  known: ReadonlyMap<Act, Placement>,
  targets: ReadonlyMap<Act, Target>,
  kindly: boolean,
): boolean => {
  const was = known.get(act)
  let moved = false
  for (const { from, fromEnd, most, safety } of act.preds) {
    const before = targets.get(from)
    const old = known.get(from)
    if (!kindly && !safety) continue
    if (!before || !old || !was || most >= NEVER || target.start <= was.start) continue
    const over = Math.max(0, was.start - (fromEnd ? old.end : old.start) - most)
    const edge = target.start - most - over
    if (fromEnd ? endNoEarlier(before, edge) : startNoEarlier(before, edge)) moved = true
  }
  return moved
}

const startNoEarlier = (target: Target, start: Tick): boolean => {
  if (target.start >= start) return false
  target.start = start
  return true
}

/** It lasts longer if it can, and starts later otherwise. */
const endNoEarlier = (target: Target, end: Tick): boolean => {
  const later = target.end < end
  if (later) target.end = end
  return startNoEarlier(target, end - target.most) || later
}

/** A dish whose course comes later is ready no longer before it than it was, or than it keeps. */
const holdFresh = (
  delivery: DeliveryModel,
  known: ReadonlyMap<Act, Placement>,
  targets: ReadonlyMap<Act, Target>,
  before: readonly Tick[],
  moments: readonly Tick[],
): void => {
  const { index, served } = delivery.serving
  const [was, is] = [before[index], moments[index]]
  if (served || was === undefined || is === undefined || is <= was) return
  let last: Act | undefined
  for (const act of delivery.acts) if ((known.get(act)?.end ?? -NEVER) > (last ? (known.get(last)?.end ?? 0) : -NEVER)) last = act
  const target = last && targets.get(last)
  const ready = last && known.get(last)?.end
  if (!target || ready === undefined || delivery.acts.some((act) => act.fact && act.fact.start + act.minLen > ready)) return
  const over = Math.max(0, was - delivery.early - ready - delivery.most)
  endNoEarlier(target, is - delivery.early - delivery.most - over)
}

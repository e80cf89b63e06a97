import { holdEndOf, placeOf } from './fits.ts'
import { kitsFor, sameVessel } from './kit-fits.ts'
import { capacityBlocks, laneBlocks, stayBlocks, tripBlocks } from './lane-fits.ts'
import type { Act, ModeModel, TeamModel } from './model.ts'
import type { Place, TouchPlace } from './place.ts'
import { EYE_PIECE, type Tick } from './problem.ts'
import type { Placement } from './schedule.ts'
import type { State } from './state.ts'

/**
 * What was told moved to this start with its own hands and kit, when nothing placed so far forbids that. Lags and windows
 * are the caller's, as for `fits`.
 */
export const placeAsTold = (
  state: State,
  act: Act,
  mode: ModeModel,
  team: TeamModel,
  told: Placement,
  start: Tick,
  len: number,
): Place | undefined => {
  const end = start + len
  const kind = mode.care === 'eye' ? 'eye' : act.road ? 'road' : 'hands'
  for (const cook of team.cooks) {
    const [stays, lane] = [act.stays[cook.index] ?? [], state.cookLanes[cook.index] ?? []]
    if (stayBlocks(state, stays, start, len)) return undefined
    if (laneBlocks(state, lane, kind, act.spot, len <= EYE_PIECE, start, len)) return undefined
    if (act.road && tripBlocks(state, lane, stays, start, len)) return undefined
  }
  for (const group of act.groups)
    if (capacityBlocks(state, state.groupLanes[group] ?? [], state.model.groups[group] ?? 1, 1, start, end)) return undefined
  const touches = touchesAsTold(state, act, mode, team, told, start, end)
  if (!touches) return undefined
  const to = holdEndOf(mode, touches, end)
  if (sameVessel(state, act, mode, start, to)) return undefined
  const free = kitsFor(state, {
    who: act.index,
    uses: usesAsTold(state, mode, told),
    from: start,
    to,
    touches: touches.map((touch) => touch.at),
    vessel: act.vessel,
    isActivity: true,
  })
  return free && placeOf(act, mode, team.cooks, start, end, touches, free.kit, free.vesselKit)
}

/** The uses, each of the kit that was told alone where that can serve it. */
const usesAsTold = (state: State, mode: ModeModel, told: Placement): ModeModel['uses'] =>
  mode.uses.map((use, i) => {
    const kit = state.model.kits.find((one) => one.id === told.kit[i]?.id && one.unit === told.kit[i]?.unit)
    return kit && use.kits.includes(kit.index) ? { ...use, kits: [kit.index] } : use
  })

const touchesAsTold = (
  state: State,
  act: Act,
  mode: ModeModel,
  team: TeamModel,
  told: Placement,
  start: Tick,
  end: Tick,
): TouchPlace[] | undefined => {
  const windows = windowsOf(mode, start, end)
  if (windows.length !== told.touches.length) return undefined
  const chosen: TouchPlace[] = []
  for (const [i, { touch, lo, hi, takes }] of windows.entries()) {
    const was = told.touches[i]
    const cook = state.model.cooks.find(({ id }) => id === was?.cook)
    const at = (was?.at ?? 0) + start - told.start
    if (!cook || was?.touch !== touch || at < lo || at > hi) return undefined
    if (stayBlocks(state, act.touchStays[cook.index] ?? [], at, takes)) return undefined
    if (laneBlocks(state, state.cookLanes[cook.index] ?? [], 'hands', act.spot, takes <= EYE_PIECE, at, takes)) return undefined
    if (chosen.some((other) => other.cook === cook && other.at < at + takes && other.at + other.takes > at)) return undefined
    const attends = team.cooks.includes(cook) && start < at + takes && end > at
    if (attends && !(mode.care === 'eye' && takes <= EYE_PIECE)) return undefined
    chosen.push({ touch, at, takes, cook })
  }
  return chosen
}

const windowsOf = (mode: ModeModel, start: Tick, end: Tick): { touch: number; lo: Tick; hi: Tick; takes: number }[] =>
  mode.touches.flatMap(({ index: touch, when, every, takes, lateBy }) => {
    if (when === 'in') return [{ touch, lo: start, hi: start, takes }]
    if (when === 'out') return [{ touch, lo: end - takes, hi: end - takes + lateBy, takes }]
    const times = every > 0 ? Math.max(0, Math.ceil((end - start) / every) - 1) : 0
    return Array.from({ length: times }, (_, k) => {
      const lo = start + (k + 1) * every
      return { touch, lo, hi: lo + lateBy, takes }
    })
  })

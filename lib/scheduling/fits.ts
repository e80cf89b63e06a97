import { kitsFor, sameVessel } from './kit-fits.ts'
import { capacityBlocks, laneBlocks, stayBlocks } from './lane-fits.ts'
import type { Act, CookModel, ModeModel, TeamModel } from './model.ts'
import type { Piece, Place, TouchPlace } from './place.ts'
import { EYE_PIECE, type Tick } from './problem.ts'
import type { State } from './state.ts'
import { pickTouches } from './touch-fits.ts'

/**
 * The place of an activity at this start, when nothing placed so far forbids it; else undefined, and `lo` and `hi` of the
 * state say which starts around it are impossible too. Lags and windows are the caller's, see `startBounds`.
 */
export const fits = (state: State, act: Act, mode: ModeModel, team: TeamModel, start: Tick, len: number): Place | undefined => {
  const end = start + len
  const kind = mode.care === 'eye' ? 'eye' : act.road ? 'road' : 'hands'
  const short = len <= EYE_PIECE
  for (const cook of team.cooks) {
    if (stayBlocks(state, act.stays[cook.index] ?? [], start, len)) return undefined
    if (laneBlocks(state, state.cookLanes[cook.index] ?? [], kind, act.spot, short, start, len)) return undefined
  }
  for (const group of act.groups)
    if (capacityBlocks(state, state.groupLanes[group] ?? [], state.model.groups[group] ?? 1, 1, start, end)) return undefined
  const touches = pickTouches(state, act, mode, team, start, end, false)
  if (!touches) return undefined
  const place = withKit(state, act, mode, team, start, end, touches)
  if (place || !mode.touches.some((touch) => touch.when === 'out' && touch.lateBy > 0)) return place
  const eager = pickTouches(state, act, mode, team, start, end, true)
  return eager && withKit(state, act, mode, team, start, end, eager)
}

const withKit = (
  state: State,
  act: Act,
  mode: ModeModel,
  team: TeamModel,
  start: Tick,
  end: Tick,
  touches: readonly TouchPlace[],
): Place | undefined => {
  const holdEnd = holdEndOf(mode, touches, end)
  if (sameVessel(state, act, mode, start, holdEnd)) return undefined
  const kit = kitsFor(state, {
    who: act.index,
    uses: mode.uses,
    from: start,
    to: holdEnd,
    touches: touches.map((touch) => touch.at),
    vessel: act.vessel,
    isActivity: true,
  })
  return kit && placeOf(act, mode, team.cooks, start, end, touches, kit.kit, kit.vesselKit)
}

export const holdEndOf = (mode: ModeModel, touches: readonly TouchPlace[], end: Tick): Tick => {
  let holdEnd = end
  for (const touch of touches)
    if (mode.touches[touch.touch]?.when === 'out' && touch.at + touch.takes > holdEnd) holdEnd = touch.at + touch.takes
  return holdEnd
}

/** Puts together what `put` needs. Nothing is checked. */
export const placeOf = (
  act: Act,
  mode: ModeModel,
  team: readonly CookModel[],
  start: Tick,
  end: Tick,
  touches: readonly TouchPlace[],
  kit: readonly number[],
  vesselKit: number,
): Place => {
  const up = !act.atTable
  const pieces: Piece[] = []
  if (mode.care !== 'leave')
    for (const cook of team) pieces.push({ cook, from: start, to: end, hand: mode.care === 'hands-on', touch: false, up })
  for (const { cook, at, takes } of touches) pieces.push({ cook, from: at, to: at + takes, hand: true, touch: true, up })
  const holdEnd = holdEndOf(mode, touches, end)
  return { act, mode, team, start, end, holdEnd, touches, kit, vesselKit, missing: 0, pieces, items: [] }
}

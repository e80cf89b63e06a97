import { findKit, sameVessel } from './kit-fits.ts'
import { capacityBlocks, laneBlocks, stayBlocks, tripBlocks } from './lane-fits.ts'
import type { Act, CookModel, ModeModel, Stretch, TeamModel } from './model.ts'
import type { Lane, Piece, Place, TouchPlace } from './place.ts'
import { EYE_PIECE, type Tick } from './problem.ts'
import type { Trial } from './scratch.ts'
import type { State } from './state.ts'
import { pickTouches } from './touch-fits.ts'

/**
 * The place of an activity at this start, when nothing placed so far forbids it; else undefined, and `lo` and `hi` of the
 * state say which starts around it are impossible too. Lags and windows are the caller's, see `startBounds`.
 */
export const fits = (state: State, act: Act, mode: ModeModel, team: TeamModel, start: Tick, len: number): Place | undefined => {
  const { trial } = state.scratch
  return tries(state, trial, act, mode, team, start, len) ? placeOfTrial(trial) : undefined
}

/** As `fits`: whether it does, with the place written into the trial. */
export const tries = (
  state: State,
  trial: Trial,
  act: Act,
  mode: ModeModel,
  { cooks }: TeamModel,
  start: Tick,
  len: number,
): boolean => {
  const end = start + len
  const kind = mode.care === 'eye' ? 'eye' : act.road ? 'road' : 'hands'
  const short = len <= EYE_PIECE
  for (let i = 0; i < cooks.length; i++) {
    const { index } = cooks[i] as CookModel
    if (stayBlocks(state, act.stays[index] as readonly Stretch[], start, len)) return false
    const lane = state.cookLanes[index] as Lane
    if (laneBlocks(state, lane, kind, act.spot, short, start, len)) return false
    if (act.road && tripBlocks(state, lane, act.stays[index] as readonly Stretch[], start, len)) return false
  }
  for (let i = 0; i < act.groups.length; i++) {
    const group = act.groups[i] as number
    if (capacityBlocks(state, state.groupLanes[group] as Lane, state.model.groups[group] as number, 1, start, end)) return false
  }
  trial.act = act
  trial.mode = mode
  trial.team = cooks
  trial.start = start
  trial.end = end
  if (!pickTouches(state, trial, false)) return false
  if (hasKit(state, trial)) return true
  return mayHurry(mode) && pickTouches(state, trial, true) && hasKit(state, trial)
}

/** Could something be held for less long, were it taken out at once? */
const mayHurry = ({ touches }: ModeModel): boolean => {
  for (const touch of touches) if (touch.when === 'out' && touch.lateBy > 0) return true
  return false
}

const hasKit = (state: State, trial: Trial): boolean => {
  const act = trial.act as Act
  const mode = trial.mode as ModeModel
  trial.holdEnd = trial.end
  for (let i = 0; i < trial.touches; i++) {
    const until = (trial.at[i] as Tick) + (trial.takes[i] as number)
    if (until > trial.holdEnd && mode.touches[trial.touch[i] as number]?.when === 'out') trial.holdEnd = until
  }
  trial.vesselKit = -1
  if (mode.uses.length === 0) return true
  if (sameVessel(state, act, mode, trial.start, trial.holdEnd)) return false
  const { wanting } = state.scratch
  wanting.who = act.index
  wanting.uses = mode.uses
  wanting.from = trial.start
  wanting.to = trial.holdEnd
  wanting.touches = trial.at
  wanting.touched = trial.touches
  wanting.vessel = act.vessel
  wanting.isActivity = true
  if (!findKit(state, wanting, trial.kit)) return false
  trial.vesselKit = wanting.vesselKit
  return true
}

export const holdEndOf = (mode: ModeModel, touches: readonly TouchPlace[], end: Tick): Tick => {
  let holdEnd = end
  for (const touch of touches)
    if (mode.touches[touch.touch]?.when === 'out' && touch.at + touch.takes > holdEnd) holdEnd = touch.at + touch.takes
  return holdEnd
}

export const placeOfTrial = (trial: Trial): Place => {
  const mode = trial.mode as ModeModel
  const touches: TouchPlace[] = []
  for (let i = 0; i < trial.touches; i++)
    touches.push({
      touch: trial.touch[i] as number,
      at: trial.at[i] as Tick,
      takes: trial.takes[i] as number,
      cook: trial.cook[i] as CookModel,
    })
  const kit = trial.kit.slice(0, mode.uses.length)
  return placeOf(trial.act as Act, mode, trial.team, trial.start, trial.end, touches, kit, trial.vesselKit)
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

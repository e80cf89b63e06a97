import { startBounds } from './bounds.ts'
import { modelUses } from './compile-kit.ts'
import { kitsFor } from './kit-fits.ts'
import { capacityBlocks, laneBlocks, stayBlocks } from './lane-fits.ts'
import type { Act, ModeModel, TeamModel } from './model.ts'
import type { LeftOut } from './schedule.ts'
import type { State } from './state.ts'
import { pickTouches } from './touch-fits.ts'

/** Why an activity has no place, tested against all that has one: kit first, then cooks, then lags and windows. */
export const whyLeft = (state: State, act: Act): LeftOut['because'] => {
  if (act.modes.length === 0) return neverHasKit(state, act) ? 'no-kit' : 'no-cook'
  const tries = act.modes.flatMap((mode) => mode.teams.map((team) => ({ mode, team })))
  if (tries.every(({ mode, team }) => !anyStart(state, act, team, () => false, mode))) return 'safety'
  if (tries.every(({ mode, team }) => !anyStart(state, act, team, cooksBlock, mode))) return 'no-cook'
  if (tries.every(({ mode, team }) => !anyStart(state, act, team, kitBlocks, mode))) return 'no-kit'
  return 'safety'
}

const neverHasKit = (state: State, act: Act): boolean =>
  act.activity.modes.every((mode) =>
    modelUses(state.model.problem, state.model.kits, act.activity.place, mode.uses).some((use) => use.kits.length === 0),
  )

type Blocks = (state: State, act: Act, mode: ModeModel, team: TeamModel, start: number) => boolean

const anyStart = (state: State, act: Act, team: TeamModel, blocks: Blocks, mode: ModeModel): boolean => {
  const { lo, hi } = startBounds(state, act, team.len)
  for (let start = hi; start >= lo; start = Math.min(start - 1, state.lo)) {
    state.lo = start
    if (!blocks(state, act, mode, team, start)) return true
  }
  return false
}

const cooksBlock: Blocks = (state, act, mode, team, start) => {
  const kind = mode.care === 'eye' ? 'eye' : act.road ? 'road' : 'hands'
  return (
    team.cooks.some(
      (cook) =>
        stayBlocks(state, act.stays[cook.index] ?? [], start, team.len) ||
        laneBlocks(state, state.cookLanes[cook.index] ?? [], kind, act.spot, team.len <= 20, start, team.len),
    ) || pickTouches(state, act, mode, team, start, start + team.len, true) === undefined
  )
}

const kitBlocks: Blocks = (state, act, mode, team, start) => {
  const to = start + team.len
  if (
    act.groups.some((group) => capacityBlocks(state, state.groupLanes[group] ?? [], state.model.groups[group] ?? 1, 1, start, to))
  )
    return true
  return !kitsFor(state, { who: act.index, uses: mode.uses, from: start, to, touches: [], vessel: act.vessel, isActivity: true })
}

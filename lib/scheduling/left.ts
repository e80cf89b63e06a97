import { startBounds } from './bounds.ts'
import { modelUses } from './compile-kit.ts'
import { fits } from './fits.ts'
import { laneBlocks, stayBlocks, tripBlocks } from './lane-fits.ts'
import type { Act, CookModel, ModeModel, TeamModel } from './model.ts'
import { EYE_PIECE } from './problem.ts'
import type { LeftOut } from './schedule.ts'
import type { State } from './state.ts'
import { pickTouches } from './touch-fits.ts'

/**
 * Why an activity has no place, tested against all that has one: safety when it would fit if no safety limit held, or when
 * its window is too short; otherwise what is missing, cooks before kit.
 */
export const whyLeft = (state: State, act: Act): LeftOut['because'] => {
  if (act.modes.length === 0) return neverHasKit(state, act) ? 'no-kit' : 'no-cook'
  const anyStart = (blocks: Blocks) =>
    act.modes.some((mode) => mode.teams.some((team) => startFor(state, act, mode, team, blocks)))
  if (!anyStart(nothingBlocks) || anyStart(anythingBlocks)) return 'safety'
  return anyStart(cooksBlock) ? 'no-kit' : 'no-cook'
}

const neverHasKit = (state: State, act: Act): boolean =>
  act.activity.modes.every((mode) =>
    modelUses(state.model.problem, state.model.kits, act.activity.place, mode.uses).some((use) => use.kits.length === 0),
  )

type Blocks = (state: State, act: Act, mode: ModeModel, team: TeamModel, start: number) => boolean

const startFor = (state: State, act: Act, mode: ModeModel, team: TeamModel, blocks: Blocks): boolean => {
  const { lo, hi } = startBounds(state, act, team.len, false)
  for (let start = hi; start >= lo; start = Math.min(start - 1, state.lo)) {
    state.lo = start
    if (!blocks(state, act, mode, team, start)) return true
  }
  return false
}

const nothingBlocks: Blocks = () => false
const anythingBlocks: Blocks = (state, act, mode, team, start) => !fits(state, act, mode, team, start, team.len)

const cooksBlock: Blocks = (state, act, mode, team, start) => {
  const kind = mode.care === 'eye' ? 'eye' : act.road ? 'road' : 'hands'
  const isBusy = (cook: CookModel) => {
    const [stays, lane] = [act.stays[cook.index] ?? [], state.cookLanes[cook.index] ?? []]
    return (
      stayBlocks(state, stays, start, team.len) ||
      laneBlocks(state, lane, kind, act.spot, team.len <= EYE_PIECE, start, team.len) ||
      (act.road && tripBlocks(state, lane, stays, start, team.len))
    )
  }
  return team.cooks.some(isBusy) || !canTouch(state, act, mode, team, start)
}

const canTouch = (state: State, act: Act, mode: ModeModel, team: TeamModel, start: number): boolean =>
  pickTouches(state, Object.assign(state.scratch.trial, { act, mode, team: team.cooks, start, end: start + team.len }), true)

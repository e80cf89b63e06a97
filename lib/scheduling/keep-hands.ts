import { placeOf } from './fits.ts'
import { laneBlocks, stayBlocks } from './lane-fits.ts'
import type { Act } from './model.ts'
import type { Place, TouchPlace } from './place.ts'
import { EYE_PIECE } from './problem.ts'
import type { Placement } from './schedule.ts'
import { put, type State, take } from './state.ts'
import { touchesToCome } from './touches-to-come.ts'

/**
 * Pre: facts are placed, their touches to come by whoever was free first. Post: by who was told to, where that cook is
 * there and free, at the told moment or as near to it as its window has become.
 */
export const keepHands = (state: State, happened: ReadonlyMap<Act, Placement>): void => {
  // A second time for those that were in each other's way.
  for (let round = 0; round < 2; round++)
    for (const [act, told] of happened) {
      const place = state.places[act.index]
      if (!place || act.fact?.kind !== 'running' || place.touches.length === 0) continue
      take(state, act)
      put(state, byWhoWasTold(state, place, told) ?? place)
    }
}

const byWhoWasTold = (state: State, place: Place, told: Placement): Place | undefined => {
  const { act, mode, start, end, team, kit, vesselKit } = place
  const touches: TouchPlace[] = []
  for (const { touch, lo, hi, takes } of touchesToCome(
    act.activity.modes[mode.index] ?? { touches: [] },
    start,
    end,
    state.model.problem.now,
  )) {
    const own = told.touches.filter((one) => one.touch === touch)
    const was = own.find(({ at }) => at >= lo && at <= hi) ?? own.at(-1)
    const cook = state.model.cooks.find(({ id }) => id === was?.cook)
    if (!was || !cook) return undefined
    const at = Math.max(lo, Math.min(hi, was.at))
    if (stayBlocks(state, act.touchStays[cook.index] ?? [], at, takes)) return undefined
    if (laneBlocks(state, state.cookLanes[cook.index] ?? [], 'hands', act.spot, takes <= EYE_PIECE, at, takes)) return undefined
    if (touches.some((other) => other.cook === cook && other.at < at + takes && other.at + other.takes > at)) return undefined
    touches.push({ touch, at, takes, cook })
  }
  return placeOf(act, mode, team, start, end, touches, kit, vesselKit)
}

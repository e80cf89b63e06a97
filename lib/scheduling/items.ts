import { itemOf } from './lane.ts'
import type { Act } from './model.ts'
import type { Item, Lane, Lanes, Place } from './place.ts'
import { EYE_PIECE, type Tick } from './problem.ts'

/** What a placed activity holds, lane by lane; worked out when it is first put anywhere. */
export const fillItems = (lanes: Lanes, place: Place): void => {
  const { act, items, holdEnd, start, end } = place
  const kind = place.mode.care === 'eye' ? 'eye' : act.road && !act.fact ? 'road' : 'hands'
  const short = end - start <= EYE_PIECE
  for (const { cook, from, to, touch } of place.pieces)
    hold(
      items,
      lanes.cookLanes[cook.index],
      act.index,
      from,
      to,
      touch ? 'hands' : act.road && act.fact && inHole(act, cook.index, from, to) ? 'road' : kind,
      act.spot,
      touch ? to - from <= EYE_PIECE : short,
    )
  const ats = place.touches.length > 0 ? place.touches.map((touch) => touch.at) : NONE
  for (let i = 0; i < place.kit.length; i++) {
    const use = place.mode.uses[i]
    const kit = place.kit[i] as number
    const lane = kit < 0 ? undefined : lanes.kitLanes[kit]
    if (!use || !lane) continue
    const { amount, low, high, door } = use
    items.push(itemOf(lane, act.index, start, holdEnd, 'hold', -1, short, amount, low, high, door, ats))
  }
  for (const group of act.groups) hold(items, lanes.groupLanes[group], act.index, start, end, 'hold', -1, short)
}
const NONE: readonly Tick[] = []

const hold = (
  items: Item[],
  lane: Lane | undefined,
  who: number,
  from: Tick,
  to: Tick,
  kind: Item['kind'],
  spot: number,
  short: boolean,
): void => {
  if (lane) items.push(itemOf(lane, who, from, to, kind, spot, short, 1, 0, 0, 0, NONE))
}

const inHole = (act: Act, cook: number, from: Tick, to: Tick): boolean =>
  (act.stays[cook] ?? []).some((hole) => hole.from <= from && hole.to >= to)

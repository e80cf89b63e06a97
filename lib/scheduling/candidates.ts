import { type Act, type DeliveryModel, type ModeModel, NEVER, type SpareModel, type TeamModel } from './model.ts'
import { startPrice } from './outlook.ts'
import type { Item, Lane } from './place.ts'
import { CALM_HOUR, type Tick } from './problem.ts'
import type { Random } from './random.ts'
import { add, type Queue, type Ticks } from './scratch.ts'
import type { State } from './state.ts'

/** How many edges of what others do are tried, of all there are. */
const EDGES = 4
/** So little room that every start may be tried. */
const NARROW = 16
/** And so little that a thorough search tries them all. */
const MODEST = 64
/** Chance decides among equals: no price differs by less. */
export const WHIM = 5e-7

/**
 * Queues one way to do it: starts where the price has a corner, each with the stretch down to the next, and what a place
 * there costs at the least. Corners are: as late as may be, the limits of lags, just before the table's window and its calm
 * hour, beside what cooks do anyway, and where wished. Pre: the outlook is the activity's.
 */
export const queueStarts = (
  state: State,
  act: Act,
  mode: ModeModel,
  crew: readonly TeamModel[],
  len: number,
  lo: Tick,
  hi: Tick,
  wish: { readonly start?: Tick; readonly thorough?: boolean },
  random: Random,
): void => {
  const { queue, starts } = state.scratch
  starts.size = 0
  addStarts(state, act, mode, crew, len, lo, hi, wish, random)
  downward(starts, lo, hi)
  const choice = queue.choices++
  queue.modes[choice] = mode
  queue.lens[choice] = len
  queue.crews[choice] = crew
  for (let i = 0; i < starts.size; i++) {
    const start = starts.at[i] as number
    const least = i + 1 < starts.size ? (starts.at[i + 1] as number) + 1 : lo
    enqueue(queue, choice, start, least, startPrice(state, act, start, len) + WHIM * random.unit(), undefined)
  }
}

export const enqueue = (
  queue: Queue,
  choice: number,
  start: Tick,
  least: Tick,
  floor: number,
  team: TeamModel | undefined,
): void => {
  const at = queue.size++
  queue.choice[at] = choice
  queue.start[at] = start
  queue.least[at] = least
  queue.floor[at] = floor
  queue.team[at] = team
}

const addStarts = (
  state: State,
  act: Act,
  mode: ModeModel,
  crew: readonly TeamModel[],
  len: number,
  lo: Tick,
  hi: Tick,
  wish: { readonly start?: Tick; readonly thorough?: boolean },
  random: Random,
): void => {
  const { attention } = state
  const { outlook, starts } = state.scratch
  add(starts, hi)
  for (let i = 0; i < outlook.above.size; i++) add(starts, outlook.above.at[i] as number)
  for (let i = 0; i < outlook.below.size; i++) add(starts, outlook.below.at[i] as number)
  for (let i = 0; i < outlook.belowEnd.size; i++) add(starts, (outlook.belowEnd.at[i] as number) - len)
  add(starts, outlook.softFrom)
  add(starts, outlook.softEnd - len)
  if (act.delivery) addArrival(outlook.arrival, act.delivery, len, starts)
  const first = attention.first + attention.base
  const last = attention.last + attention.base
  if (lo < last && hi + len > first - CALM_HOUR) {
    add(starts, first - len)
    add(starts, first - CALM_HOUR - len)
    if (mode.care === 'leave') addTouchEdges(mode, len, first, starts)
    addEdges(state, act, mode, crew, len, Math.max(lo, first - CALM_HOUR - len), Math.min(hi, last), random)
  }
  for (let i = 0; i < act.spares.length; i++) addSpareEdges(act.spares[i] as SpareModel, mode, len, starts)
  if (wish.start !== undefined) add(starts, wish.start)
  if (act.told) add(starts, act.told.start)
  for (let i = 0; i < act.leaves.length; i++) add(starts, (act.leaves[i] as Tick) - len)
  add(starts, lo)
  if (hi - lo < (wish.thorough ? MODEST : NARROW) && (wish.thorough || random.unit() < 0.3))
    for (let start = lo; start < hi; start++) add(starts, start)
  add(starts, lo + random.below(hi - lo))
}

const addArrival = (arrival: Tick, delivery: DeliveryModel, len: number, starts: Ticks): void => {
  add(starts, arrival - len)
  if (delivery.most < NEVER) add(starts, arrival - delivery.most - len)
}

/** In place: in descending order, without doubles and what lies outside. */
const downward = (starts: Ticks, lo: Tick, hi: Tick): void => {
  const { at, size } = starts
  let kept = 0
  for (let i = 0; i < size; i++) {
    const start = at[i] as number
    if (start < lo || start > hi) continue
    let j = kept
    while (j > 0 && (at[j - 1] as number) < start) j--
    if (j > 0 && at[j - 1] === start) continue
    for (let k = kept; k > j; k--) at[k] = at[k - 1] as number
    at[j] = start
    kept++
  }
  starts.size = kept
}

const addTouchEdges = (mode: ModeModel, len: number, first: Tick, starts: Ticks): void => {
  for (const touch of mode.touches) {
    if (touch.when === 'in') add(starts, first - touch.takes)
    if (touch.when === 'out') add(starts, first - len - touch.lateBy)
    if (touch.when === 'every') add(starts, first - touch.takes - touch.every)
  }
}

/** Over before somebody is to be spared, and not begun until that is over; so with its touches. */
const addSpareEdges = ({ from, to }: SpareModel, mode: ModeModel, len: number, starts: Ticks): void => {
  add(starts, from - len)
  add(starts, to)
  if (mode.care !== 'leave') return
  addTouchEdges(mode, len, from, starts)
  add(starts, to - len)
}

/** Beside or under what cooks do anyway, so that they get up once: some edges of what lies about in [lo, hi + len]. */
const addEdges = (
  state: State,
  act: Act,
  mode: ModeModel,
  crew: readonly TeamModel[],
  len: number,
  lo: Tick,
  hi: Tick,
  random: Random,
): void => {
  for (let i = 0; i < EDGES; i++) {
    const cooks = mode.care === 'leave' ? act.touchCooks : (crew[random.below(crew.length)] as TeamModel).cooks
    const cook = cooks[random.below(cooks.length)]
    if (!cook) return
    const lane = state.cookLanes[cook.index] as Lane
    const first = firstFrom(lane, lo - SOON)
    const beyond = firstFrom(lane, hi + len + 1)
    if (first >= beyond) continue
    const item = lane[first + random.below(beyond - first)] as Item
    const edge = random.below(2) === 0 ? item.from : item.to
    add(state.scratch.starts, random.below(2) === 0 ? edge : edge - len)
  }
}

/** What begins so much before may still reach there. */
const SOON = 20

/** The first item of a lane that begins no sooner (binary search). */
const firstFrom = (lane: Lane, from: Tick): number => {
  let lo = 0
  let hi = lane.length
  while (lo < hi) {
    const middle = (lo + hi) >> 1
    if ((lane[middle] as Item).from < from) lo = middle + 1
    else hi = middle
  }
  return lo
}

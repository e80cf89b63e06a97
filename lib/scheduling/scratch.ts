import type { Act, CookModel, ModeModel, TeamModel, UseModel } from './model.ts'
import type { Tick } from './problem.ts'

/** What wants kit, see `Wanting`; of its touches the first `touched` count. `vesselKit` is an answer. */
export interface Want {
  who: number
  uses: readonly UseModel[]
  from: Tick
  to: Tick
  touches: readonly Tick[]
  touched: number
  vessel: number
  isActivity: boolean
  vesselKit: number
}

/** Room for working out one insertion, used again and again so that trying places makes nothing to be thrown away. */
export interface Scratch {
  readonly outlook: Outlook
  readonly queue: Queue
  /** Starts of one way to do it, before they are queued. */
  readonly starts: Ticks
  readonly wanting: Want
  readonly kit: number[]
  /** The place that is tried, and the best one that was found: they change roles. */
  trial: Trial
  best: Trial
}

/**
 * All that the places around an activity say about where it may start and what that costs, gathered once an insertion.
 * Costs are `past` for each tick that its start is after one of `above`, before one of `below`, or its end is before one of
 * `belowEnd`; together they are what a start surely costs whoever does it.
 */
export interface Outlook {
  /** Hard: the start is in [lo, hi], the end in [loEnd, hiEnd]. */
  lo: Tick
  hi: Tick
  loEnd: Tick
  hiEnd: Tick
  /** Room for what is yet to be placed: the start is in [roomLo, roomHi], counted as if it were as short as may be. */
  roomLo: Tick
  roomHi: Tick
  /** Does its end, too, decide when something that is yet to be placed may start? */
  pushesOn: boolean
  readonly above: Ticks
  readonly below: Ticks
  readonly belowEnd: Ticks
  /** A start before one, or an end before the other, breaks a wish of what is yet to be placed. */
  softFrom: Tick
  softEnd: Tick
  /** What its dish's waiting costs without it, when that is ready and arrives, and its serving's moment (−NEVER for a chore). */
  dish: number
  ready: Tick
  arrival: Tick
  moment: Tick
}

/** A list that is emptied and filled again: the first `size` count. */
export interface Ticks {
  size: number
  readonly at: Tick[]
}

export const add = (ticks: Ticks, tick: Tick): void => {
  ticks.at[ticks.size++] = tick
}

const newTicks = (): Ticks => ({ size: 0, at: [] })

/** Stretches of starts yet to be tried, from the latest start of each down: an open list, the cheapest first. */
export interface Queue {
  size: number
  readonly start: Tick[]
  /** Where the stretch ends: its earliest start. */
  readonly least: Tick[]
  readonly choice: number[]
  /** No place of the start is cheaper. */
  readonly floor: number[]
  /** Who is to do it; undefined while that is open, and what they miss not counted in the floor. */
  readonly team: (TeamModel | undefined)[]
  /** Ways to do it: a mode, a length, and who could. */
  choices: number
  readonly modes: ModeModel[]
  readonly lens: number[]
  readonly crews: (readonly TeamModel[])[]
}

/** A place in the making: what `fits` decides. */
export interface Trial {
  act: Act | undefined
  mode: ModeModel | undefined
  team: readonly CookModel[]
  start: Tick
  end: Tick
  holdEnd: Tick
  /** Touches in the order of the mode, one entry of each list for each. */
  touches: number
  readonly touch: number[]
  readonly at: Tick[]
  readonly takes: number[]
  readonly cook: CookModel[]
  /** One for each use; the vessel's ring is in `vesselKit`, here −1. */
  readonly kit: number[]
  vesselKit: number
}

export const newScratch = (): Scratch => ({
  outlook: newOutlook(),
  queue: newQueue(),
  starts: newTicks(),
  wanting: newWant(),
  kit: [],
  trial: newTrial(),
  best: newTrial(),
})

const newWant = (): Want => ({
  who: -1,
  uses: [],
  from: 0,
  to: 0,
  touches: [],
  touched: 0,
  vessel: -1,
  isActivity: false,
  vesselKit: -1,
})

const newOutlook = (): Outlook => ({
  lo: 0,
  hi: 0,
  loEnd: 0,
  hiEnd: 0,
  roomLo: 0,
  roomHi: 0,
  pushesOn: false,
  above: newTicks(),
  below: newTicks(),
  belowEnd: newTicks(),
  softFrom: 0,
  softEnd: 0,
  dish: 0,
  ready: 0,
  arrival: 0,
  moment: 0,
})

const newQueue = (): Queue => ({
  size: 0,
  start: [],
  least: [],
  choice: [],
  floor: [],
  team: [],
  choices: 0,
  modes: [],
  lens: [],
  crews: [],
})

const newTrial = (): Trial => ({
  act: undefined,
  mode: undefined,
  team: [],
  start: 0,
  end: 0,
  holdEnd: 0,
  touches: 0,
  touch: [],
  at: [],
  takes: [],
  cook: [],
  kit: [],
  vesselKit: -1,
})

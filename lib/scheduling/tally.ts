import type { Act, CookModel, LagModel, ModeModel, Told } from './model.ts'
import type { Place } from './place.ts'
import type { Tick } from './problem.ts'
import { sparedOf } from './spares.ts'

/**
 * The parts of the price that hang on single activities and on pairs of them, kept in step by every move. Whole ticks and
 * counts rather than prices, so that nothing drifts however often they are added and taken away.
 */
export interface Tally {
  /** Ticks that activities end before their serving. */
  early: number
  /** Ticks past the most of quality lags. */
  over: number
  /** Platings without their lead. */
  leads: number
  /** What all that is not as it was told costs. */
  moved: number
  /** What cooks are asked while they are to be spared costs. */
  spared: number
  /** Activities that are not placed, and touches to come that nobody does. */
  left: number
}

export const newTally = (acts: readonly Act[]): Tally => ({ early: 0, over: 0, leads: 0, moved: 0, spared: 0, left: acts.length })

/** Adds (1) or takes away (−1) what a place counts beside the other places. */
export const count = (
  tally: Tally,
  places: readonly (Place | undefined)[],
  moments: readonly Tick[],
  place: Place,
  by: 1 | -1,
): void => {
  const { act } = place
  tally.left += by * (place.missing - 1)
  tally.early += by * earlyBy(moments, act, place.end)
  if (isWithoutLead(place)) tally.leads += by
  tally.spared += by * sparedOf(place)
  if (isMoved(place)) tally.moved += by * (act.told?.price ?? 0)
  for (let i = 0; i < act.preds.length; i++) {
    const lag = act.preds[i] as LagModel
    tally.over += by * overBy(lag, lag.from === act ? place : places[lag.from.index], place)
  }
  for (let i = 0; i < act.succs.length; i++) {
    const lag = act.succs[i] as LagModel
    if (lag.to !== act) tally.over += by * overBy(lag, place, places[lag.to.index])
  }
}

/** Ticks that it ends before its serving; none for facts and chores. */
export const earlyBy = (moments: readonly Tick[], { delivery, fact }: Act, end: Tick): number => {
  if (!delivery || fact) return 0
  const early = (moments[delivery.serving.index] as number) - end
  return Math.max(0, early)
}

/** Ticks past the most of a quality lag; none while one of the two has no place. */
export const overBy = (lag: LagModel, from: Place | undefined, to: Place | undefined): number => {
  if (!lag.priced || !from || !to) return 0
  const over = to.start - (lag.fromEnd ? from.end : from.start) - lag.most
  return Math.max(0, over)
}

const isWithoutLead = ({ act, team }: Place): boolean => act.lead !== undefined && !team.includes(act.lead)

const isMoved = ({ act: { told, fact }, start, mode, team }: Place): boolean =>
  told !== undefined && !fact && isMovedTo(told, start, mode, team)

/** Is it not where, how and by whom it was told? */
export const isMovedTo = (told: Told, start: Tick, mode: ModeModel, team: readonly CookModel[]): boolean => {
  if (told.start !== start || told.mode !== mode.index || told.cooks.length !== team.length) return true
  for (const cook of team) if (!told.cooks.includes(cook.id)) return true
  return false
}

import type { Evening } from '#lib/domain/evening.ts'
import { coolingRate, coolingTime } from '#lib/domain/newton.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { temperatureAt } from './ovens.ts'
import { MINUTE, stepTold, toldOf } from './told.ts'

export interface Reading {
  /** Milliseconds since 1970. */
  readonly at: number
  readonly coreC: number
}

/** When the core reaches its temperature, in ms. `most` is null when, if both readings are a little off, it may never. */
export type CoreEstimate =
  | { readonly kind: 'reached'; readonly at: number }
  | { readonly kind: 'when'; readonly least: number; readonly likely: number; readonly most: number | null }

/** Readings closer together than this say nothing of how fast it goes. */
const APART = 2 * MINUTE
/** What a kitchen thermometer, put back in by hand, may be off by in °C; common practice, no source. */
const ERROR_C = 1

/** The last reading and the one before it, as far as they are apart; of two that are too close the later counts. */
const lastTwo = (readings: readonly Reading[]): readonly [Reading, Reading] | null => {
  const last = readings.at(-1)
  const before = last && readings.findLast(({ at }) => last.at - at >= APART)
  return last && before ? [before, last] : null
}

/** How long from the second reading to the target, in ms; null when it never gets there. */
const timeTo = (from: number, at: number, time: number, targetC: number, aroundC: number | null): number | null => {
  if (at >= targetC) return 0
  if (at <= from) return null
  if (aroundC === null) return ((targetC - at) / (at - from)) * time
  if (at >= aroundC || targetC >= aroundC) return null
  return coolingTime(at, targetC, aroundC, coolingRate(from, at, time, aroundC))
}

/**
 * When a core will be as warm as `targetC`, from its last two readings: by Newton's law towards the temperature around it (the later part of
 * warming a solid through follows it too: the first term of the series, Carslaw and Jaeger, "Conduction of Heat in Solids", from memory), or
 * straight on where that is not known. The range is for each reading 1 °C off. Null when it cannot be said: fewer than two readings, two less
 * than 2 min apart, a core that does not warm, a target above what is around it. An estimate: the thermometer decides.
 */
export const coreEstimate = (readings: readonly Reading[], targetC: number, aroundC: number | null): CoreEstimate | null => {
  const sorted = readings.toSorted((a, b) => a.at - b.at)
  const reached = sorted.at(-1)
  if (reached && reached.coreC >= targetC) return { kind: 'reached', at: reached.at }
  const two = lastTwo(sorted)
  if (two === null) return null
  const [before, last] = two
  const time = last.at - before.at
  const likely = timeTo(before.coreC, last.coreC, time, targetC, aroundC)
  const least = timeTo(before.coreC - ERROR_C, last.coreC + ERROR_C, time, targetC, aroundC)
  const most = timeTo(before.coreC + ERROR_C, last.coreC - ERROR_C, time, targetC, aroundC)
  if (likely === null || least === null) return null
  return {
    kind: 'when',
    least: last.at + Math.round(least),
    likely: last.at + Math.round(likely),
    most: most === null ? null : last.at + Math.round(most),
  }
}

/**
 * The estimate for a step with a core temperature, from what was told of it tonight. In an oven the surroundings are what the order has the
 * oven at as it was read last.
 */
export const coreOfStep = (evening: Evening, order: RunningOrder, step: string): CoreEstimate | null => {
  const found = evening.steps.find(({ id }) => id === step)
  const targetC = found?.until?.coreC
  const { readings } = stepTold(toldOf(evening), step)
  const last = readings.at(-1)
  if (!found || targetC === undefined || !last) return null
  const cue = order.cues.find((each) => each.step === step)
  const oven = order.ovens.find(({ kit }) => cue?.kit.some(({ id }) => id === kit))
  const heat = found.ways[cue?.way ?? 0]?.uses.find((use) => use.kind === 'oven')
  const lineC = oven ? temperatureAt(oven.line, last.at) : null
  // The line is cold again where the order had it out by now: then the least that the method asks for.
  const aroundC = heat?.kind !== 'oven' ? null : lineC !== null && lineC >= heat.lowC ? lineC : heat.lowC
  return coreEstimate(readings, targetC, aroundC)
}

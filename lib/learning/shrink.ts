/**
 * How far cooks and kitchens lie from what is written, as the sd of the logarithm, and how far one night lies from the next. From
 * kitchen experience, no published source: a quarter either way for both, so that one night weighs as much as what is written.
 */
const BETWEEN = 0.25
const WITHIN = 0.25
/** So many of its own sd the mean must lie from what is written; a measured choice (decision 037). */
const SURE = 2
/** For the spread a night counts as at most so many sd from the middle one. */
const CLIP = 1.5
/** As many nights' worth of the usual spread are believed before any was seen. */
const SPREAD_WEIGHT = 4

/** What the nights come to, in logarithms of what it took over what is written; 0: as written. */
export interface Shrunk {
  readonly mean: number
  /** How far the next night may lie from it. */
  readonly sd: number
  readonly nights: number
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0)

const median = (values: readonly number[]): number => {
  const sorted = values.toSorted((a, b) => a - b)
  const half = sorted.length / 2
  return ((sorted[Math.ceil(half) - 1] ?? 0) + (sorted[Math.floor(half)] ?? 0)) / 2
}

/** The mean without the night that speaks loudest for it, 0 when that leaves none or one that says the opposite: no single tap makes it. */
const withoutLoudest = (logs: readonly number[]): number => {
  if (logs.length < 2) return 0
  const total = sum(logs)
  const loudest = total > 0 ? Math.max(...logs) : Math.min(...logs)
  const rest = (total - loudest) / (logs.length - 1)
  return rest * total > 0 ? rest : 0
}

/**
 * The mean of a normal prior around "as written" and of the nights: an empirical-Bayes estimate, whose shrinking is James and Stein's
 * (Efron & Morris, Data Analysis Using Stein's Estimator and its Generalizations, JASA 70, 1975). Exactly as written where the nights
 * are too few, or not sure.
 */
export const shrink = (logs: readonly number[]): Shrunk => {
  const nights = logs.length
  const rest = withoutLoudest(logs)
  const isSure = Math.abs(rest) * Math.sqrt(nights) >= SURE * WITHIN
  const weight = nights / WITHIN ** 2 / (1 / BETWEEN ** 2 + nights / WITHIN ** 2)
  const middle = median(logs)
  const deviations = logs.map((log) => Math.min(CLIP * WITHIN, Math.abs(log - middle)) ** 2)
  const variance = (SPREAD_WEIGHT * WITHIN ** 2 + sum(deviations)) / (SPREAD_WEIGHT + nights)
  return { mean: isSure ? weight * rest : 0, sd: Math.sqrt(variance + (1 - weight) * BETWEEN ** 2), nights }
}

/** The mean of each night: what is told twice on one night is one night. */
export const byNight = (all: readonly { readonly evening: string; readonly log: number }[]): readonly number[] => {
  const nights = new Map<string, readonly number[]>()
  for (const { evening, log } of all) nights.set(evening, [...(nights.get(evening) ?? []), log])
  return [...nights.values()].map((logs) => sum(logs) / logs.length)
}

import { betaQuantiles } from './beta.ts'

/** triangular: Johnson 1997, "The triangular distribution as a proxy for the beta distribution in risk analysis". pert: Clark 1962. */
export type Shape = 'triangular' | 'pert'

/** How long something may take, in ticks: least ≤ likely ≤ most. */
export interface Spread {
  readonly least: number
  readonly likely: number
  readonly most: number
}

/** A length's chance upside down: `quantile(u)` is the length that is not passed with chance u, for u in [0, 1]. */
export interface Quantiles {
  readonly least: number
  readonly most: number
  /** The chance of no more than likely. */
  readonly split: number
  /** (most − least)(likely − least) and (most − least)(most − likely). */
  readonly low: number
  readonly high: number
  /** Lengths at equal steps of chance; none when the formula of the triangle is used. */
  readonly table: Float64Array | undefined
}

/** Steps of chance in a table: read between them by a straight line. */
export const CELLS = 512

export const quantilesOf = ({ least, likely, most }: Spread, shape: Shape): Quantiles => {
  const range = most - least
  return {
    least,
    most,
    split: range > 0 ? (likely - least) / range : 1,
    low: range * (likely - least),
    high: range * (most - likely),
    table: shape === 'pert' && range > 0 ? betaQuantiles(least, likely, most, CELLS) : undefined,
  }
}

export const quantile = ({ least, most, split, low, high, table }: Quantiles, u: number): number => {
  if (table) {
    const at = u * CELLS
    const cell = Math.min(CELLS - 1, Math.floor(at))
    const from = table[cell] as number
    return from + ((table[cell + 1] as number) - from) * (at - cell)
  }
  return u < split ? least + Math.sqrt(u * low) : most - Math.sqrt((1 - u) * high)
}

/** The chance that it takes no longer than that. */
export const chanceWithin = (quantiles: Quantiles, length: number): number => {
  if (length >= quantiles.most) return 1
  if (length <= quantiles.least) return 0
  let low = 0
  let high = 1
  for (let i = 0; i < 40; i++) {
    const middle = (low + high) / 2
    if (quantile(quantiles, middle) <= length) low = middle
    else high = middle
  }
  return low
}

import type { Span } from '#lib/domain/atoms.ts'
import { durationOf } from '#lib/domain/duration.ts'
import type { Source } from '#lib/domain/source.ts'

/** Minutes offered where a cook has left them empty: never a fact, always to be shown as an estimate with its source. */
export interface Estimate {
  readonly kind: 'estimate'
  readonly least: number
  readonly likely: number
  readonly most: number
  /** What was taken for granted, by name, in the unit that the name ends in. */
  readonly assumes: Readonly<Record<string, number | string>>
  readonly sources: readonly Source[]
}

const tenth = (minutes: number): number => Math.round(minutes * 10) / 10

/** An estimate with its minutes to a tenth, in order. */
export const estimate = (
  minutes: Pick<Estimate, 'least' | 'likely' | 'most'>,
  assumes: Estimate['assumes'],
  sources: readonly Source[],
): Estimate => ({
  kind: 'estimate',
  least: tenth(minutes.least),
  likely: tenth(minutes.likely),
  most: tenth(minutes.most),
  assumes,
  sources,
})

/** The estimate as an evening keeps a length, in half minutes: the least rounded down, the most up. */
export const estimateSpan = ({ least, likely, most }: Pick<Estimate, 'least' | 'likely' | 'most'>): Span => {
  const halves = (minutes: number, round: (value: number) => number) => Math.max(1, round(minutes * 2))
  const usual = halves(likely, Math.round)
  return {
    least: durationOf(Math.min(usual, halves(least, Math.floor)) * 30),
    likely: durationOf(usual * 30),
    most: durationOf(Math.max(usual, halves(most, Math.ceil)) * 30),
  }
}

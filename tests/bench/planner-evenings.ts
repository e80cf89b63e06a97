import type { Evening } from '#lib/domain/evening.ts'
import type { Step } from '#lib/domain/menu.ts'
import { type BenchSize, benchEvening } from '#tests/support/bench-evening.ts'

/** Evenings that are open at once, by size. */
const OPEN: readonly (readonly [size: BenchSize, count: number])[] = [
  ['small', 60],
  ['middle', 30],
  ['large', 10],
]

export interface OpenEvening {
  readonly size: BenchSize
  readonly evening: Evening
}

/** A hundred different evenings: the same in the process that serves them and in the one that edits them. */
export const openEvenings = (): readonly OpenEvening[] =>
  OPEN.flatMap(([size, count]) =>
    Array.from({ length: count }, (_, k) => ({ size, evening: { ...benchEvening(k + 1, size), id: `${size}-${k}` } })),
  )

/** The only host of an evening. */
export const hostOf = ({ id }: Evening): string => `host-of-${id}`

/** The edit of a round: another step of the evening takes a minute and a round's half minute longer. */
export const editOf = ({ steps }: Evening, round: number): { readonly step: string; readonly ways: Step['ways'] } => {
  const step = steps[(round * 7) % steps.length]
  const [way, ...others] = step?.ways ?? []
  if (!step || !way) throw new Error('the evening has no step')
  const likely = `PT${10 + round}M30S`
  return { step: step.id, ways: [{ ...way, takes: { least: likely, likely, most: likely } }, ...others] }
}

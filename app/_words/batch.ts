import type { Span } from '#lib/domain/atoms.ts'
import { batchesOf } from '#lib/quantities/batches.ts'
import { countOf } from './clock.ts'
import { minutesText } from './duration.ts'

/** "8 portions, 6 fit: two batches, 24 min": what a pan or tray of limited size does to a step's length. */
export const batchText = (
  portions: number,
  batch: { readonly portions: number; readonly together: number },
  takes: Span,
): string => {
  const { count, rounds, last, takes: whole } = batchesOf(portions, batch, takes)
  if (count === 1) return `${portions} portions, ${batch.portions} fit: all at once.`
  const together = batch.together > 1 ? `, ${countOf(rounds, 'round')} with ${batch.together} at once` : ''
  const rest = last < batch.portions - 1e-9 ? ` The last one has ${Math.round(last * 10) / 10} and takes as long.` : ''
  return `${portions} portions, ${batch.portions} fit: ${countOf(count, 'batch', 'batches')}${together}, ${minutesText(whole.likely / 60)} in all.${rest}`
}

import type { Evening } from '#lib/domain/evening.ts'
import type { CoreEstimate } from '#lib/night/core-estimate.ts'

/** Steps that end at a temperature inside, are begun and not done. */
export const probedSteps = (evening: Evening): readonly string[] => {
  const probed = new Set(evening.steps.flatMap(({ id, until }) => (until?.coreC === undefined ? [] : [id])))
  return evening.night.flatMap((fact) =>
    'step' in fact && probed.has(fact.step) && fact.started !== undefined && fact.done === undefined ? [fact.step] : [],
  )
}

/** Below this the order need not change. */
const LEAST_MINUTES = 2
const MOST_MINUTES = 60

/** How many minutes longer a step needs by the estimate than the order gives it; null: no longer than that. */
export const longerFor = (
  { likely }: Extract<CoreEstimate, { kind: 'when' }>,
  plannedEnd: number,
  nowMs: number,
): number | null => {
  const minutes = Math.ceil((Math.max(likely, nowMs) - plannedEnd) / 60_000)
  return minutes < LEAST_MINUTES ? null : Math.min(MOST_MINUTES, minutes)
}

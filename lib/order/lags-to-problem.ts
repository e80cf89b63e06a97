import { ticksDown, ticksUp } from '#lib/domain/duration.ts'
import type { Lag } from '#lib/scheduling/problem.ts'
import { activityId, byText } from './ids.ts'
import type { PlannedStep } from './steps-to-problem.ts'

/** Which steps a lag is between; `null` when it only puts the batches of one step in order. */
export type LagOf = { readonly step: string; readonly after: string } | null

const ids = ({ step, batches }: PlannedStep): string[] =>
  Array.from({ length: batches }, (_, batch) => activityId(step.id, batch, batches))

/**
 * The lags between steps that are on, in the order of the steps. Least runs between all batches. Most runs from the
 * first batch to the last one's start, between all of them when it is a safety lag. Batches start in the order of
 * their numbers, so a broken wish is counted once.
 */
export const lagsToProblem = (steps: readonly PlannedStep[]): { lags: Lag[]; of: LagOf[] } => {
  const byId = new Map(steps.map((planned) => [planned.step.id, planned]))
  const lags: Lag[] = []
  const of: LagOf[] = []
  for (const planned of steps) {
    const own = ids(planned)
    for (const [k, to] of own.entries()) {
      const from = own[k - 1]
      if (from === undefined) continue
      lags.push({ from, edge: 'start', to, least: 0, bound: 'quality' })
      of.push(null)
    }
    const afters = planned.step.after
      .filter((after) => after.step !== planned.step.id && byId.has(after.step))
      .sort((a, b) => byText(a.step, b.step) || byText(a.from, b.from))
    for (const after of afters) {
      const before = byId.get(after.step)
      if (!before) continue
      const least = ticksUp(after.least)
      const most = after.most === undefined ? undefined : Math.max(least, ticksDown(after.most))
      const others = ids(before)
      for (const [i, from] of others.entries())
        for (const [j, to] of own.entries()) {
          const spans = after.kind === 'safety' || (i === 0 && j === own.length - 1)
          const limit = most === undefined || !spans ? {} : { most }
          lags.push({ from, edge: after.from, to, least, ...limit, bound: most === undefined ? 'quality' : after.kind })
          of.push({ step: planned.step.id, after: after.step })
        }
    }
  }
  return { lags, of }
}

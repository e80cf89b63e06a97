import type { Evening } from '#lib/domain/evening.ts'
import type { Dish, Step } from '#lib/domain/menu.ts'
import type { SafeFix } from '#lib/domain/safe-fix.ts'
import type { Stage } from './finding.ts'
import { minutesOf, type Out } from './walk.ts'

/** Whether the step begins within so many minutes of the other one already, for safety. */
const isHard = (step: Step, after: string, minutes: number): boolean =>
  step.after.some(
    (lag) => lag.step === after && lag.kind === 'safety' && lag.most !== undefined && minutesOf(lag.most) <= minutes,
  )

/**
 * Edits that keep food from standing out for longer than `most`: the fridge between the two steps where it stands longest, when that can be
 * long by the plan, and a limit from the step that it was last hot or cold in.
 */
export const fixesOf = (
  evening: Evening,
  dish: Dish,
  stage: Stage,
  out: Out,
  step: string | null,
  most: number,
): readonly SafeFix[] => {
  const byId = new Map(evening.steps.map((each) => [each.id, each]))
  const fixes: SafeFix[] = []
  if (out.gap !== null && out.gap.ms / 60_000 > most / 2)
    fixes.push({ kind: 'fridge', after: out.gap.after, before: out.gap.before, minutes: most })
  const last = step ?? lastOf(evening, dish)
  const to = last === null ? undefined : byId.get(last)
  const from = out.after ?? out.first
  if (stage === 'to-table' && (to === undefined || to.id === from)) {
    if (minutesOf(dish.keeps.most) > most || dish.keeps.kind !== 'safety')
      fixes.push({ kind: 'keep', dish: dish.id, minutes: most })
    return fixes
  }
  if (!to || to.id === from) return fixes
  const left = stage === 'to-table' ? most - minutesOf(to.ways[0]?.takes.most ?? 'PT0S') - minutesOf(dish.keeps.most) : most
  const least = Math.max(0, ...to.after.filter((lag) => lag.step === from).map((lag) => minutesOf(lag.least)))
  if (left > 0 && least <= left && !isHard(to, from, left))
    fixes.push({ kind: 'limit', step: to.id, after: from, from: out.after === null ? 'start' : 'end', minutes: left })
  return fixes
}

/** The dish's last step by its own order: that which nothing of it waits for. */
const lastOf = (evening: Evening, dish: Dish): string | null => {
  const own = evening.steps.filter((step) => step.dish === dish.id)
  const waitedFor = new Set(own.flatMap((step) => step.after.map((after) => after.step)))
  return own.findLast(({ id }) => !waitedFor.has(id))?.id ?? null
}

/** A lag of the plan that lets food stand longer than `most` although this order does not, as a limit; null when the plan has it already. */
export const softLimit = (step: Step, out: Out, most: number): SafeFix | null => {
  const { after } = out
  if (after === null || isHard(step, after, most)) return null
  const lags = step.after.filter((lag) => lag.step === after && lag.from === 'end')
  const isOpen = lags.length > 0 && lags.every((lag) => lag.most === undefined || minutesOf(lag.most) > most)
  return isOpen && lags.every((lag) => minutesOf(lag.least) <= most)
    ? { kind: 'limit', step: step.id, after, from: 'end', minutes: most }
    : null
}

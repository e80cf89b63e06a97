import type { Evening } from '#lib/domain/evening.ts'
import { needsNobody } from '#lib/domain/needs-nobody.ts'
import { msOfInstant } from '#lib/domain/time.ts'
import { stepOf } from './night-facts.ts'

/**
 * What begins by itself as soon as a step is done, and when: meat that rests, dough that stands. It is left alone from its first moment,
 * nobody puts it in or on anything, and what it waits for is all done, `step` at `done`.
 */
export const beginsAfter = (
  evening: Evening,
  step: string,
  done: string,
): { readonly step: string; readonly started: string }[] => {
  const on = new Set(evening.dishes.flatMap(({ id, state }) => (state === 'on' ? [id] : [])))
  return evening.steps.flatMap((rest) => {
    if (!rest.after.some((after) => after.step === step) || !needsNobody(rest)) return []
    if (rest.dish !== null && !on.has(rest.dish)) return []
    const ends = rest.after.map((after) => (after.step === step ? done : stepOf(evening, after.step)?.done))
    const [last] = ends.flatMap((end) => end ?? []).toSorted((a, b) => msOfInstant(b) - msOfInstant(a))
    return last === undefined || ends.includes(undefined) ? [] : [{ step: rest.id, started: last }]
  })
}

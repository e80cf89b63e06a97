import { secondsOf, TICK_SECONDS } from '#lib/domain/duration.ts'
import type { Evening } from '#lib/domain/evening.ts'
import { msOfInstant, tickOfMs } from '#lib/domain/time.ts'
import type { CookId, Fact } from '#lib/scheduling/problem.ts'

/** All that was said of one step on the night. Later words replace earlier ones; extras add up. */
export interface StepFact {
  readonly started?: string
  readonly done?: string
  /** Ticks. */
  readonly extra: number
  /** Who said so last. */
  readonly by: CookId
}

export interface CourseFact {
  readonly toTable?: string
  readonly nearlyDone?: string
  readonly platesOff?: string
}

/** From when to when a cook was not there; `back` is missing while they are not. */
export interface Absence {
  readonly gone: string
  readonly back?: string | undefined
}

export interface NightFacts {
  readonly steps: ReadonlyMap<string, StepFact>
  readonly courses: ReadonlyMap<string, CourseFact>
  readonly absences: ReadonlyMap<CookId, Absence>
  /** When the guests sat down, or are told to. */
  readonly sitDown?: string
}

/** The night's facts gathered by what they are about. */
export const gatherFacts = (evening: Evening): NightFacts => {
  const steps = new Map<string, StepFact>()
  const seconds = new Map<string, number>()
  const courses = new Map<string, CourseFact>()
  const absences = new Map<CookId, Absence>()
  let sitDown: string | undefined
  for (const fact of evening.night) {
    if ('sitDown' in fact) sitDown = fact.sitDown
    else if ('cook' in fact) absences.set(fact.cook, { gone: fact.gone, back: fact.back })
    else if ('course' in fact) {
      const { course, by: _by, ...said } = fact
      courses.set(course, { ...courses.get(course), ...said })
    } else if ('step' in fact) {
      const { step, extra, readings: _readings, ...said } = fact
      if (extra !== undefined) seconds.set(step, (seconds.get(step) ?? 0) + secondsOf(extra))
      steps.set(step, { ...steps.get(step), ...said, extra: Math.ceil((seconds.get(step) ?? 0) / TICK_SECONDS) })
    }
  }
  return { steps, courses, absences, ...(sitDown === undefined ? {} : { sitDown }) }
}

/** Whether a cook has gone and not come back. */
export const isAway = ({ absences }: NightFacts, cook: CookId): boolean => {
  const absence = absences.get(cook)
  return absence !== undefined && absence.back === undefined
}

/** The tick of an instant: what began is never later than it was, what ended never earlier. */
export const factTick = (evening: Evening, instant: string, edge: 'began' | 'ended'): number =>
  tickOfMs(evening, msOfInstant(instant), edge === 'began' ? 'down' : 'up')

interface BatchPlan {
  readonly batches: number
  readonly together: number
  /** Ticks that one batch takes. */
  readonly length: number
  readonly cooks: readonly CookId[]
  readonly now?: number
  /** When each batch was told to begin; those that were not follow each other evenly. */
  readonly told: readonly (number | undefined)[]
}

/**
 * What the words about a step say of each of its batches: undefined where one is still to come. A step that is done
 * without having been started began one length before. Nobody taps for each pan: of a step under way a batch begins when
 * it was told to, or as soon as the one before it is over, whichever is later; those of a step that is done share its time.
 */
export const factsOfBatches = (evening: Evening, fact: StepFact, plan: BatchPlan): (Fact | undefined)[] => {
  const rounds = Math.ceil(plan.batches / plan.together)
  const round = (batch: number) => Math.floor(batch / plan.together)
  const by = plan.cooks.length === 0 ? {} : { cooks: plan.cooks }
  const batches = Array.from({ length: plan.batches }, (_, batch) => batch)
  if (fact.done !== undefined) {
    const end = factTick(evening, fact.done, 'ended')
    const begun = fact.started === undefined ? end - plan.length * rounds : factTick(evening, fact.started, 'began')
    const start = Math.min(begun, end)
    const edge = (k: number) => start + Math.floor(((end - start) * k) / rounds)
    return batches.map((batch) => ({ kind: 'done', start: edge(round(batch)), end: edge(round(batch) + 1), ...by }))
  }
  if (fact.started === undefined) return batches.map(() => undefined)
  const start = factTick(evening, fact.started, 'began')
  const starts = [start]
  for (let k = 1; k < rounds; k++) {
    const over = (starts[k - 1] as number) + plan.length + (k === 1 ? fact.extra : 0)
    starts.push(Math.max(over, plan.told[k * plan.together] ?? over))
  }
  const now = plan.now ?? start
  const current = Math.max(
    0,
    starts.findLastIndex((begins) => begins <= now),
  )
  return batches.map((batch) => {
    const k = round(batch)
    const begins = starts[k] as number
    const length = plan.length + (k === 0 ? fact.extra : 0)
    if (k > current) return undefined
    if (k < current) return { kind: 'done', start: begins, end: begins + length, ...by }
    return { kind: 'running', start: begins, atLeast: length, ...by }
  })
}

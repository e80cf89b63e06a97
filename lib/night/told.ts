import { secondsOf } from '#lib/domain/duration.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { NightFact } from '#lib/domain/people.ts'
import { msOfInstant } from '#lib/domain/time.ts'

/** What is due may be so much late, in ms, before it is called overdue and the rest is planned again. */
export const GRACE = 2 * 60_000
export const MINUTE = 60_000

/** All that was told of a step, in ms. */
export interface StepTold {
  readonly started: number | null
  readonly done: number | null
  /** How much longer it needs than usual. */
  readonly extra: number
  readonly readings: readonly { readonly at: number; readonly coreC: number }[]
  /** Who said so last. */
  readonly by: string
}

export interface CourseTold {
  readonly toTable: number | null
  readonly nearlyDone: number | null
  readonly platesOff: number | null
}

/** The night's facts by what they are about, in ms since 1970. */
export interface Told {
  readonly begun: number | null
  readonly closed: number | null
  readonly steps: ReadonlyMap<string, StepTold>
  readonly courses: ReadonlyMap<string, CourseTold>
  readonly sitDown: number | null
  /** Cooks who have gone and are not back. */
  readonly away: ReadonlySet<string>
  /** Dishes that came to nothing tonight. */
  readonly out: ReadonlySet<string>
  readonly alarms: readonly Extract<NightFact, { alarm: string }>[]
  /** The last moment of which something was told; null when nothing was. */
  readonly last: number | null
}

const NO_STEP: StepTold = { started: null, done: null, extra: 0, readings: [], by: '' }
const NO_COURSE: CourseTold = { toTable: null, nearlyDone: null, platesOff: null }

const ms = (instant: string | undefined): number | null => (instant === undefined ? null : msOfInstant(instant))

/** Gathers the facts; of two about one thing the later replaces the earlier, and extras add up. */
export const toldOf = ({ night }: Pick<Evening, 'night'>): Told => {
  const steps = new Map<string, StepTold>()
  const courses = new Map<string, CourseTold>()
  const away = new Set<string>()
  const out = new Set<string>()
  const alarms: Extract<NightFact, { alarm: string }>[] = []
  let begun: number | null = null
  let closed: number | null = null
  let sitDown: number | null = null
  const moments: (number | null)[] = []
  for (const fact of night) {
    if ('step' in fact) {
      const was = steps.get(fact.step) ?? NO_STEP
      const readings = (fact.readings ?? []).map(({ at, coreC }) => ({ at: msOfInstant(at), coreC }))
      steps.set(fact.step, {
        started: ms(fact.started) ?? was.started,
        done: ms(fact.done) ?? was.done,
        extra: was.extra + (fact.extra === undefined ? 0 : secondsOf(fact.extra) * 1000),
        readings: [...was.readings, ...readings].sort((a, b) => a.at - b.at),
        by: fact.by,
      })
      moments.push(ms(fact.started), ms(fact.done), ...readings.map(({ at }) => at))
    } else if ('course' in fact) {
      const was = courses.get(fact.course) ?? NO_COURSE
      courses.set(fact.course, {
        toTable: ms(fact.toTable) ?? was.toTable,
        nearlyDone: ms(fact.nearlyDone) ?? was.nearlyDone,
        platesOff: ms(fact.platesOff) ?? was.platesOff,
      })
      moments.push(ms(fact.toTable), ms(fact.nearlyDone), ms(fact.platesOff))
    } else if ('night' in fact) {
      begun = msOfInstant(fact.begun)
      closed = ms(fact.closed)
      moments.push(begun)
    } else if ('sitDown' in fact) {
      sitDown = msOfInstant(fact.sitDown)
    } else if ('alarm' in fact) {
      alarms.push(fact)
      moments.push(msOfInstant(fact.at))
    } else if ('cook' in fact) {
      if (fact.back === undefined) away.add(fact.cook)
      else away.delete(fact.cook)
      moments.push(msOfInstant(fact.gone), ms(fact.back))
    } else {
      out.add(fact.dish)
      moments.push(msOfInstant(fact.out))
    }
  }
  const known = moments.filter((moment) => moment !== null)
  return { begun, closed, steps, courses, sitDown, away, out, alarms, last: known.length === 0 ? null : Math.max(...known) }
}

export const stepTold = (told: Told, step: string): StepTold => told.steps.get(step) ?? NO_STEP
export const courseTold = (told: Told, course: string): CourseTold => told.courses.get(course) ?? NO_COURSE

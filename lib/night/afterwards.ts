import type { Span } from '#lib/domain/atoms.ts'
import { durationOf, secondsOf } from '#lib/domain/duration.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { Step, Way } from '#lib/domain/menu.ts'
import type { Cue, RunningOrder } from '#lib/domain/running-order.ts'
import { servedCourses } from '#lib/domain/served-courses.ts'
import { msOfInstant } from '#lib/domain/time.ts'
import { spanFromUsual } from '#lib/domain/usual-span.ts'
import { courseTold, MINUTE, stepTold, type Told, toldOf } from './told.ts'

/** What a step really took, as told. Minutes, with halves. */
export interface Actual {
  readonly step: string
  readonly way: number
  readonly care: Way['care']
  /** Who did it, and where: the minutes are theirs. */
  readonly cooks: readonly string[]
  readonly kitchen: string
  /** For one batch, at the pace of who did it, as it was planned. */
  readonly plannedMinutes: number
  readonly actualMinutes: number
  /** Both its ends were told; or the same cook told the end of what they did before, and then of this. */
  readonly how: 'both-told' | 'in-turn'
  /** What the step's usual minutes would be after that, before the pace of who did it; null when they are about right. */
  readonly suggests: Span | null
}

/** Off by less than this the usual minutes are right enough; common practice, no source. */
const OFF_LEAST = 2 * MINUTE
const OFF_SHARE = 0.15
/** Outside these shares of the usual minutes somebody forgot to tell: nothing is suggested from it. */
const BELIEVED = [1 / 3, 3] as const

const half = (ms: number): number => Math.round(ms / (MINUTE / 2)) / 2

const paceOf = (evening: Evening, cooks: readonly string[], care: Way['care']): number => {
  const paces = evening.cooks.filter(({ id }) => cooks.includes(id)).map(({ pace }) => pace)
  return care === 'hands-on' && paces.length > 0 ? Math.max(...paces) : 1
}

/** The end of what the same cook did right before, when they told nothing else since. */
const turnOf = (told: Told, step: string, done: number): number | null => {
  const by = told.steps.get(step)?.by
  const before = [...told.steps]
    .filter(([id, said]) => id !== step && said.by === by)
    .flatMap(([, said]) => [
      ...(said.started === null ? [] : [{ at: said.started, isEnd: false }]),
      ...(said.done === null ? [] : [{ at: said.done, isEnd: true }]),
    ])
    .filter(({ at }) => at <= done)
    .toSorted((a, b) => b.at - a.at)[0]
  return before?.isEnd ? before.at : null
}

/** Half minutes below five, whole ones above. */
const onGrid = (ms: number): number => {
  const seconds = ms / 1000
  const grid = seconds < 300 ? 30 : 60
  return Math.max(grid, Math.round(seconds / grid) * grid)
}

/** The span with another usual: as it is where that lies within it, otherwise a new one around it. */
const spanAround = (was: Span, usual: number): Span =>
  usual >= secondsOf(was.least) && usual <= secondsOf(was.most) ? { ...was, likely: durationOf(usual) } : spanFromUsual(usual)

const suggestionOf = (way: Way, planned: number, actual: number, pace: number): Span | null => {
  const off = Math.abs(actual - planned)
  if (off < OFF_LEAST || off < OFF_SHARE * planned) return null
  if (actual < planned * BELIEVED[0] || actual > planned * BELIEVED[1]) return null
  // How long it may rest is chosen, not usual.
  if (way.upTo !== undefined) return null
  return spanAround(way.takes, onGrid(actual / pace))
}

const actualOf = (evening: Evening, told: Told, step: Step, cues: readonly Cue[]): Actual | null => {
  const cue = cues[0]
  const way = cue && step.ways[cue.way]
  const { started, done } = stepTold(told, step.id)
  if (!cue || !way || done === null) return null
  const turn = started === null && way.care === 'hands-on' ? turnOf(told, step.id, done) : null
  const from = started ?? turn
  if (from === null || from >= done) return null
  const rounds = Math.ceil(cues.length / Math.min(cues.length, step.batch?.together ?? 1))
  const cooks = cue.cooks.length > 0 ? cue.cooks : [...new Set(cue.touches.map(({ cook }) => cook))]
  const pace = paceOf(evening, cue.cooks, way.care)
  const planned = secondsOf(way.takes.likely) * 1000 * pace
  const actual = (done - from) / rounds
  // Out of turn it may have been a pause: only what is likely by the step's own bounds is believed.
  const isLikely = actual >= secondsOf(way.takes.least) * 500 && actual <= secondsOf(way.takes.most) * 2000
  if (started === null && !isLikely) return null
  return {
    step: step.id,
    way: cue.way,
    care: way.care,
    cooks,
    kitchen: cue.kitchen,
    plannedMinutes: half(planned),
    actualMinutes: half(actual),
    how: started === null ? 'in-turn' : 'both-told',
    suggests: suggestionOf(way, planned, actual, pace),
  }
}

/**
 * What really took how long, of steps that were told to begin and to be done, or hands-on ones that the same cook told one after the other.
 * Of all others nothing is known, and nothing is guessed.
 */
export const actualsOf = (evening: Evening, order: RunningOrder): readonly Actual[] => {
  const told = toldOf(evening)
  return evening.steps.flatMap((step) => {
    const cues = order.cues.filter((cue) => cue.step === step.id).toSorted((a, b) => a.batch - b.batch)
    const actual = actualOf(evening, told, step, cues)
    return actual ? [actual] : []
  })
}

/** A dish of which something may be left, and since when it is out, as far as it was told; ms, null where nothing was. */
export interface Leftover {
  readonly dish: string
  readonly course: string
  readonly toTable: number | null
  /** When it came off the heat or out of the fridge for the last time: the end of its last step there that was told done. */
  readonly out: { readonly from: 'heat' | 'cold'; readonly at: number } | null
}

const outOf = (evening: Evening, order: RunningOrder, told: Told, dish: string): Leftover['out'] => {
  const ends = evening.steps.flatMap((step): NonNullable<Leftover['out']>[] => {
    const { done } = stepTold(told, step.id)
    const way = step.ways[order.cues.find((cue) => cue.step === step.id)?.way ?? 0]
    if (step.dish !== dish || done === null || !way) return []
    if (way.uses.some(({ kind }) => kind === 'oven' || kind === 'ring')) return [{ from: 'heat', at: done }]
    return way.uses.some(({ kind }) => kind === 'cold') ? [{ from: 'cold', at: done }] : []
  })
  return ends.toSorted((a, b) => b.at - a.at)[0] ?? null
}

/** The dishes that were served, in the courses' order. What is not known of them is never safe. */
export const leftoversOf = (evening: Evening, order: RunningOrder): readonly Leftover[] => {
  const told = toldOf(evening)
  return servedCourses(evening).flatMap(({ id: course }) =>
    evening.dishes
      .filter((dish) => dish.course === course && dish.state === 'on')
      .map(({ id: dish }) => ({
        dish,
        course,
        toTable: courseTold(told, course).toTable,
        out: outOf(evening, order, told, dish),
      })),
  )
}

/** A chore that is left when the last course is at the table; `cooks` as the order shares them out. */
export interface Closing {
  readonly step: string
  readonly cooks: readonly string[]
  /** In ms; null when the order has no place for it. */
  readonly at: number | null
}

/** The chores that are not done, those of after the last course and those that were left over from before it. */
export const closingOf = (evening: Evening, order: RunningOrder, nowMs: number): readonly Closing[] => {
  const told = toldOf(evening)
  const served = order.courses.map(({ toTable }) => msOfInstant(toTable))
  const after = served.length === 0 ? nowMs : Math.max(...served)
  return evening.steps
    .filter(({ id, dish }) => dish === null && stepTold(told, id).done === null)
    .map(({ id: step }): Closing => {
      const cues = order.cues.filter((cue) => cue.step === step)
      const cooks = [...new Set(cues.flatMap((cue) => [...cue.cooks, ...cue.touches.map(({ cook }) => cook)]))]
      return {
        step,
        cooks: cooks.filter((cook) => !told.away.has(cook)),
        at: cues.length === 0 ? null : Math.min(...cues.map(({ start }) => msOfInstant(start))),
      }
    })
    .filter(({ at }) => at === null || at >= after || nowMs >= after)
    .toSorted((a, b) => (a.at ?? Number.POSITIVE_INFINITY) - (b.at ?? Number.POSITIVE_INFINITY))
}

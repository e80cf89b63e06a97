import { secondsOf } from '#lib/domain/duration.ts'
import type { Clash, RunningOrder } from '#lib/domain/running-order.ts'
import { chanceText } from './chance.ts'
import { clashKey, clashSubject } from './clash.ts'
import { listText, sentence } from './clock.ts'
import { durationText, minutesText } from './duration.ts'
import { movesBetween, movesText } from './moves.ts'
import type { Names } from './names.ts'

/** One order against another, in a cook's words: sentences without their full stop. */
export interface Comparison {
  readonly better: readonly string[]
  readonly worse: readonly string[]
  /** "Two steps move." Null when none does. */
  readonly moved: string | null
  /** Neither a figure nor a step differs. */
  readonly same: boolean
}

type Sided = readonly [side: 'better' | 'worse', words: string]

/** What a change would make better and worse: clashes, courses to table, minutes up from the table, chances. */
export const comparedText = (before: RunningOrder, after: RunningOrder, names: Names): Comparison => {
  const said = [
    ...clashesText(before.clashes, after.clashes, names),
    ...coursesText(before, after, names),
    ...cooksText(before, after, names),
    ...chancesText(before, after, names),
  ]
  const of = (side: Sided[0]) => said.flatMap(([on, words]) => (on === side ? [words] : []))
  const moved = movesText(movesBetween(before, after))
  return { better: of('better'), worse: of('worse'), moved, same: said.length === 0 && moved === null }
}

const clashesText = (before: readonly Clash[], after: readonly Clash[], names: Names): Sided[] => {
  const byKey = (clashes: readonly Clash[]) => new Map(clashes.map((clash) => [clashKey(clash), clash]))
  const [was, is] = [byKey(before), byKey(after)]
  const gone = [...was].filter(([key]) => !is.has(key))
  const changed = [...is].flatMap(([key, clash]): Sided[] => {
    const old = was.get(key)
    if (!old) return [['worse', `A new clash about ${clashSubject(clash, names)}, of ${durationText(clash.by)}`]]
    const more = minutes(clash.by) - minutes(old.by)
    if (Math.abs(more) < 1) return []
    return [sided(more, `The clash about ${clashSubject(clash, names)} is ${minutesText(Math.abs(more))}`)]
  })
  return [...gone.map(([, clash]): Sided => ['better', `The clash about ${clashSubject(clash, names)} is gone`]), ...changed]
}

/** "… less" is better, "… more" is worse. */
const sided = (more: number, words: string, [less, much] = ['less', 'more']): Sided =>
  more < 0 ? ['better', `${words} ${less}`] : ['worse', `${words} ${much}`]

const minutes = (duration: string): number => secondsOf(duration) / 60

/** Courses that come later or earlier by the same are said together; so is a wait where its course did not move with the one before. */
const coursesText = (before: RunningOrder, after: RunningOrder, names: Names): Sided[] => {
  const was = new Map(before.courses.map((course) => [course.course, course]))
  const shifts = new Map<number, string[]>()
  for (const { course, toTable } of after.courses) {
    const old = was.get(course)
    const shift = old ? Math.round((Date.parse(toTable) - Date.parse(old.toTable)) / 60_000) : 0
    if (shift !== 0) shifts.set(shift, [...(shifts.get(shift) ?? []), names.courseName(course)])
  }
  const kept = new Set(after.courses.map(({ course }) => course))
  return [
    ...before.courses
      .filter(({ course }) => !kept.has(course))
      .map(({ course }): Sided => ['worse', `${names.courseName(course)} is not served`]),
    ...[...shifts].map(([shift, courses]) =>
      sided(shift, `${listText(courses)} to table ${minutesText(Math.abs(shift))}`, ['earlier', 'later']),
    ),
  ]
}

const cooksText = (before: RunningOrder, after: RunningOrder, names: Names): Sided[] => {
  const was = new Map(before.cooks.map(({ cook, missed }) => [cook, minutes(missed)]))
  const each = after.cooks.flatMap(({ cook, missed }): Sided[] => {
    const more = minutes(missed) - (was.get(cook) ?? 0)
    if (Math.abs(more) < 1) return []
    return [
      was.has(cook)
        ? sided(more, `${names.cookName(cook)} is up ${minutesText(Math.abs(more))}`)
        : (['worse', `${names.cookName(cook)} is up ${durationText(missed)}`] as const),
    ]
  })
  const away = minutes(after.allHostsAway) - minutes(before.allHostsAway)
  return Math.abs(away) < 1 ? each : [...each, sided(away, `All hosts are away together ${minutesText(Math.abs(away))}`)]
}

/** Two evenings in twenty are worth a word: less may be how the search came out. What was not reckoned in both is not compared. */
const chancesText = (before: RunningOrder, after: RunningOrder, names: Names): Sided[] => {
  const was = new Map(before.courses.map(({ course, onTime }) => [course, onTime]))
  return after.courses.flatMap(({ course, onTime }): Sided[] => {
    const old = was.get(course) ?? null
    if (old === null || onTime === null || Math.abs(onTime - old) < 0.1) return []
    const words = `${sentence(names.courseName(course))} is on time ${chanceText(onTime)} instead of ${chanceText(old)}`
    return [[onTime > old ? 'better' : 'worse', words]]
  })
}

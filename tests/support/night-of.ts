import type { Evening } from '#lib/domain/evening.ts'
import type { NightFact } from '#lib/domain/people.ts'
import { epochMsOf, instantOfMs, wallTimeOfMs } from '#lib/domain/time.ts'
import { at } from './evening-builders.ts'

/** Milliseconds of a wall-clock time of the evening: "19:30", or "-1 19:30" for the day before. */
export const msAt = (evening: Evening, time: string): number => epochMsOf(evening, at(time))

/** The evening's wall clock: "19:30". */
export const clockAt = (evening: Evening, ms: number): string => wallTimeOfMs(evening, ms).time

type Told =
  | { readonly begun: string; readonly closed?: string }
  | { readonly step: string; readonly started?: string; readonly done?: string; readonly extra?: string; readonly by?: string }
  | { readonly course: string; readonly toTable?: string; readonly nearlyDone?: string; readonly platesOff?: string }
  | { readonly sitDown: string }
  | { readonly gone: string; readonly cook: string; readonly back?: string }

/** The evening with facts of its night, each told in wall-clock times. */
export const nightOf = (evening: Evening, ...told: Told[]): Evening => {
  const times = new Set(['begun', 'closed', 'started', 'done', 'toTable', 'nearlyDone', 'platesOff', 'sitDown', 'gone', 'back'])
  const night = told.map((each) => ({
    ...('begun' in each ? { night: 'begun' } : {}),
    by: evening.cooks[0]?.id ?? '',
    ...Object.fromEntries(
      Object.entries(each).map(([key, value]) => [key, times.has(key) ? instantOfMs(evening, msAt(evening, value)) : value]),
    ),
  })) as NightFact[]
  return { ...evening, night: [...evening.night, ...night] }
}

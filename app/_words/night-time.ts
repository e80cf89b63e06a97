import { minutesText } from './duration.ts'
import type { Names } from './names.ts'
import { thingOf } from './short-step.ts'

/** Whole minutes between two moments, as a person counts them: 90 s are one, for the second is not over. */
export const wholeMinutes = (fromMs: number, toMs: number): number => Math.trunc((toMs - fromMs) / 60_000)

/** "in 8 min", "now", "8 min ago". */
export const inText = (minutes: number): string =>
  minutes === 0 ? 'now' : minutes > 0 ? `in ${minutesText(minutes)}` : `${minutesText(-minutes)} ago`

/** "the potatoes", "“Cook”": what a step is done to, as a reason. */
const stepThing = (step: string, names: Names): string => {
  const thing = thingOf(names.step(step)?.does ?? '')
  const dish = names.dish(names.step(step)?.dish ?? null)?.name
  if (thing !== null) return `the ${thing}`
  return `“${names.stepName(step)}”${dish ? ` (${dish})` : ''}`
}

/** "on time", "6 late, because of the potatoes": late is always a word. */
export const lateText = (lateMin: number, because: string | null, names: Names): string =>
  lateMin <= 0 ? 'on time' : `${lateMin} late${because === null ? '' : `, because of ${stepThing(because, names)}`}`

/** Instead of "on time", of an order that is not the last word: it may lie in the past. */
export const PLANNED_AGAIN = 'being planned again'
export const NOT_PLANNED = 'not planned again'

/** "tomorrow", "in 5 days": how far the evening is. */
export const daysText = (days: number): string => (days === 1 ? 'tomorrow' : `in ${days} days`)

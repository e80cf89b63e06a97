import type { Evening } from '#lib/domain/evening.ts'
import type { Actual } from '#lib/night/afterwards.ts'
import type { DishTime } from '#lib/safety/finding.ts'
import type { SafetyRules } from '#lib/safety/rules.ts'
import { countText, listText } from './clock.ts'
import { durationText, minutesText } from './duration.ts'
import type { Names } from './names.ts'
import { whenText } from './safety.ts'
import { sourceText } from './source.ts'

export const closeText =
  'Closing it ends the timers and the alerts. What was told stays, and it can be opened again until the day after is over.'
export const CLOSED = 'Nobody is called any more. What was told stays with the evening.'

/** What to do with what is left of a dish. Nothing known is never said to be safe. */
export const leftoverText = (
  time: DishTime | undefined,
  nowMs: number,
  evening: Evening,
): { readonly says: string; readonly isLate: boolean } => {
  if (time === undefined)
    return { says: 'nothing is known of how long it has stood: in the fridge soon, or not kept', isLate: false }
  const unsure = time.unsure ? '; its ingredients are not known, so it counts as perishable' : ''
  if (time.minutes > time.most)
    return { says: `stood too long before it was on the table: nothing of it is kept${unsure}`, isLate: true }
  if (nowMs > time.leftoversBy)
    return {
      says: `out since ${whenText(evening, time.since)}, too long now: what is not in the fridge is thrown away${unsure}`,
      isLate: true,
    }
  return { says: `in the fridge by ${whenText(evening, time.leftoversBy)}${unsure}`, isLate: false }
}

/** How long what is left keeps, by the evening's rules. */
export const keptText = ({ keeps, reheatC }: SafetyRules): string =>
  `In shallow boxes it is cold sooner. In the fridge it keeps ${minutesText(keeps.value)} (${sourceText(keeps.source)}); heated again once, to ${reheatC.value}° all through (${sourceText(reheatC.source)}).`

/** "31 min instead of 22, by Kim": what a step really took. */
export const tookText = ({ actualMinutes, plannedMinutes, cooks, care, how }: Actual, names: Names): string => {
  const instead = actualMinutes === plannedMinutes ? ', as planned' : ` instead of ${minutesText(plannedMinutes)}`
  const who = care === 'leave' || cooks.length === 0 ? '' : `, by ${listText(cooks.map(names.cookName))}`
  return `${minutesText(actualMinutes)}${instead}${who}${how === 'in-turn' ? ', since what they had told before' : ''}`
}

/** "Say 30 min from now on". */
export const usualText = ({ suggests, plannedMinutes }: Actual): string =>
  `Say ${suggests ? durationText(suggests.likely) : minutesText(plannedMinutes)} from now on`

export const LEARNT =
  'From what was told tonight, in this kitchen and at the pace of who did it. Taken over, it stands in the method and comes along when the dish is copied to another evening.'

export const learntText = (steps: number): string =>
  steps === 1 ? 'The method says it now.' : `The methods say it now, of ${countText(steps)} steps.`

/** "Kim has two and Lou has one": what sharing out comes to, before it is done. */
export const sharedText = (shares: readonly { readonly cook: string }[], names: Names): string => {
  const counts = new Map<string, number>()
  for (const { cook } of shares) counts.set(cook, (counts.get(cook) ?? 0) + 1)
  return `${listText([...counts].map(([cook, count]) => `${names.cookName(cook)} has ${countText(count)}`))}: who was up least at the table comes first.`
}

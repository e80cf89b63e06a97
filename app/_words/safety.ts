import type { Evening } from '#lib/domain/evening.ts'
import type { SafeFix } from '#lib/domain/safe-fix.ts'
import type { Doneness } from '#lib/safety/doneness.ts'
import type { Finding, InTime, Stage } from '#lib/safety/finding.ts'
import type { Equivalent } from '#lib/safety/lethality.ts'
import type { AlsoSaid } from '#lib/safety/rules.ts'
import { clockText, dayName, dayOf, listText, sentence } from './clock.ts'
import { minutesText } from './duration.ts'
import type { Names } from './names.ts'
import { sourceText } from './source.ts'

/** Said wherever something of safety is said. */
export const DEFER = 'Follow your local rules; the thermometer decides.'

const degrees = (celsius: number): string => `${Math.round(celsius * 10) / 10}°`

/** "19:30", or "Friday 22:14" on another day. */
export const whenText = (evening: Evening, ms: number): string => {
  const day = dayOf(evening, ms)
  return `${day === 0 ? '' : `${dayName(evening.date, day)} `}${clockText(ms, evening.zone)}`
}

const stageWords: Readonly<Record<Stage, string>> = {
  'before-heat': 'before it is heated again',
  'before-fridge': 'before it is in the fridge',
  'to-table': 'before it is on the table',
}

/** A shallow box, and a pot of four litres, in a fridge of 4°: estimates. */
const inTimeWords: Readonly<Record<InTime, string>> = {
  yes: '(cold in time)',
  perhaps: '(which may be cold in time: measure)',
  no: '(too slow all the same: measure)',
}
const potWords: Readonly<Record<InTime, string>> = {
  yes: 'is cold in time too',
  perhaps: 'may be too slow',
  no: 'would be far too slow',
}

export interface SafetyWords {
  readonly says: string
  readonly todo: string
  /** Whose rule it is, with its edition. */
  readonly rule: string
}

/** What was found, what to do, and by which rule. */
export const safetyWords = (finding: Finding, names: Names, evening: Evening): SafetyWords => {
  const rule = sourceText(finding.source)
  const dish = names.dishName(finding.dish)
  const step = finding.step === null ? dish : `“${names.stepName(finding.step)}”`
  const at = finding.from === null ? '' : whenText(evening, finding.from)
  switch (finding.kind) {
    case 'out':
      return {
        says: `${sentence(dish)}: ${minutesText(finding.minutes)} neither hot nor cold from ${at}, ${stageWords[finding.stage]}. The limit is ${minutesText(finding.most)}.`,
        todo: finding.unsure
          ? 'Nothing is known of its ingredients, so it counts as perishable: write them down, or keep it in the fridge.'
          : 'Say that it stands in the fridge, or do the two closer together.',
        rule,
      }
    case 'out-in-all':
      return {
        says: `${sentence(dish)}: ${minutesText(finding.minutes)} neither hot nor cold in all since it was cooked. From ${minutesText(finding.most)} on it is not eaten.`,
        todo: 'Take it out of the fridge later, or make it later.',
        rule,
      }
    case 'cool':
      return {
        says: `${sentence(dish)}: in the fridge at ${finding.to === null ? 'its time' : whenText(evening, finding.to)}, ${minutesText(finding.minutes)} after the heat.`,
        todo: `To 21° within 2 h and to 5° within 6 h: in boxes at most 5 cm deep ${inTimeWords[finding.box]}, in small parts or over ice. Its full pot ${potWords[finding.pot]}.`,
        rule,
      }
    case 'kept-long':
      return {
        says: `${sentence(dish)}: eaten ${minutesText(finding.minutes)} after it was cooked. ${finding.rice ? 'Cooked rice' : 'Cooked food'} keeps ${minutesText(finding.most)} in the fridge.`,
        todo: 'Cook it later, or freeze it in between.',
        rule,
      }
    case 'reheat':
      return {
        says: `${step} heats what was cooked before.`,
        todo: `Steaming hot all through, ${degrees(finding.coreC)} inside, and once only; within ${minutesText(finding.within)} from the fridge.`,
        rule,
      }
    case 'reheat-again':
      return {
        says: `${step} heats ${dish} for the second time from the cold.`,
        todo: 'Heat again only as much as is eaten, and once.',
        rule,
      }
    case 'keep-hot':
      return {
        says: `${sentence(dish)} is kept hot from ${at}.`,
        todo: `It stays at ${degrees(finding.hotC)} or hotter inside: measure it, not the oven.`,
        rule,
      }
    case 'keep-too-cool':
      return {
        says: `${sentence(dish)} is kept hot in an oven that may be as cool as ${degrees(finding.ovenC)}.`,
        todo: `Food that waits hot is ${degrees(finding.hotC)} or hotter inside: keep the oven above that.`,
        rule,
      }
    case 'core-low':
      return {
        says: `${step} stops at ${degrees(finding.coreC)} inside. For ${finding.food} ${degrees(finding.leastC)} is published.`,
        todo: `Cook it to ${degrees(finding.leastC)}, or keep it as hot for as long as your rules say does as much.`,
        rule,
      }
    case 'raw-egg':
      return {
        says: `${sentence(dish)} has egg that is not cooked.`,
        todo:
          finding.by === 'lion'
            ? 'Use eggs with the British Lion mark; they may be served runny also to children, the old and the pregnant. Other eggs are cooked through for them.'
            : 'Use pasteurised egg, above all for children under five, the old, the pregnant and whoever is weak.',
        rule,
      }
    case 'shellfish':
      return {
        says: `${sentence(dish)}: ${finding.food}.`,
        todo: 'Buy them on the day, and keep them cold under a damp cloth, never in fresh water. Throw away what is cracked, what does not shut when tapped, and what stays shut when cooked.',
        rule,
      }
    case 'thaw':
      return {
        says: finding.inFridge ? `${step} thaws in the fridge.` : `${sentence(dish)}: something frozen is to thaw.`,
        todo: 'Thaw in the fridge, about a day for two kilos; or in cold water, changed every half hour, and cook it at once. Not on the worktop.',
        rule,
      }
  }
}

/** What an offered edit does, as the words on its button. */
export const safeFixText = (fix: SafeFix, names: Names): string => {
  switch (fix.kind) {
    case 'fridge':
      return `Put it in the fridge after “${names.stepName(fix.after)}”`
    case 'limit':
      return `Never more than ${minutesText(fix.minutes)} from “${names.stepName(fix.after)}” to “${names.stepName(fix.step)}”`
    case 'keep':
      return `Never let ${names.dishName(fix.dish)} wait more than ${minutesText(fix.minutes)}`
  }
}

/** What others allow, for information. */
export const alsoSaidWords: Readonly<Record<AlsoSaid, string>> = {
  'uk-hot-two-hours': 'businesses in the UK may keep hot food below 63° once for less than two hours',
  'uk-cold-four-hours': 'businesses in the UK may show cold food above 8° once for less than four hours',
  'scotland-party-four-hours': 'Food Standards Scotland gives party food at home up to four hours',
  'fsanz-four-hours':
    'FSANZ: under two hours it may go back in the fridge, from two to four it is eaten and not kept, from four on it is thrown away',
}

const seconds = ({ celsius, seconds: time }: Equivalent): string =>
  `${degrees(celsius)} for ${time < 60 ? `${time} s` : minutesText(time / 60)}`

/** "74° or more inside for poultry", at a glance. */
export const donenessText = ({ cores, low, coreC }: Doneness): string =>
  `${low && coreC !== null ? `This step says ${degrees(coreC)}, less than is published: ` : 'Inside '}${listText(
    cores.map(
      ({ words, atLeastC, restMinutes }) =>
        `${degrees(atLeastC)} or more for ${words}${restMinutes > 0 ? `, then ${restMinutes} min of rest` : ''}`,
    ),
  )}.`

/** Whose figure that is, and what is worth as much. */
export const donenessMore = ({ source, equivalents, hold, coreC }: Doneness): readonly string[] => [
  `${sourceText(source)}.`,
  ...(equivalents
    ? [`As much as 70° for 2 min all through: ${listText(equivalents.rows.map(seconds))} (${sourceText(equivalents.source)}).`]
    : []),
  ...(hold && coreC !== null
    ? [`At ${degrees(coreC)} that is ${holdText(hold.minutes)} all through (${sourceText(hold.source)}).`]
    : []),
]

const holdText = (minutes: number): string =>
  minutes < 1 ? `${Math.ceil(minutes * 60)} s` : minutesText(Math.ceil(minutes * 10) / 10)

import type { Say } from '#lib/plan/say.ts'
import { clockText } from './clock.ts'
import { minutesText } from './duration.ts'
import type { Names } from './names.ts'
import { needText } from './need.ts'

const agoText = (ago: number | undefined): string => (ago ? `, ${minutesText(ago)} ago` : '')

/** What was told, for the line in which it can be taken back. */
export const toldText = (say: Say, names: Names, zone: string): string => {
  switch (say.kind) {
    case 'begin':
      return 'The evening has begun.'
    case 'close':
      return 'The evening is closed.'
    case 'started':
      return `Begun${agoText(say.ago)}: ${names.stepName(say.step)}.`
    case 'done':
      return `Done${agoText(say.ago)}: ${names.stepName(say.step)}.`
    case 'longer':
      return say.minutes > 0
        ? `${say.minutes} min longer: ${names.stepName(say.step)}.`
        : `${-say.minutes} min shorter: ${names.stepName(say.step)}.`
    case 'reading':
      return `${say.coreC}° inside: ${names.stepName(say.step)}.`
    case 'to-table':
      return `${names.courseName(say.course)} is on the table${agoText(say.ago)}.`
    case 'nearly':
      return `${names.courseName(say.course)}: nearly finished.`
    case 'plates-off':
      return `${names.courseName(say.course)}: plates off${agoText(say.ago)}.`
    case 'sit-down':
      return say.to === null ? 'Sit down as planned.' : `Sit down at ${clockText(say.to, zone)}.`
    case 'gone':
      return `${names.cookName(say.cook)} is gone.`
    case 'back':
      return `${names.cookName(say.cook)} is back.`
    case 'out':
      return `${names.dishName(say.dish)} is out${say.instead ? `, ${names.dishName(say.instead)} instead` : ''}.`
    case 'alarm':
      return `Told to all cooks: do not serve ${names.dishName(say.dish)}${
        say.need === null ? '' : ` (${needText({ need: say.need, grade: 'allergy' })})`
      }.`
    case 'confirm':
      return `${names.cookName(say.cook)} has heard it.`
    case 'take-back':
      return 'Taken back.'
  }
}

import type { HardWork } from '#lib/domain/hard-work.ts'
import type { Couple } from '#lib/sharing/couple.ts'
import { clockText, listText } from './clock.ts'
import { minutesText } from './duration.ts'
import type { Names } from './names.ts'

/** "Never both up from the table, but 4 min at plating." Empty when there is no couple. */
export const awayText = (away: Couple['away'], hosts: number): string => {
  if (away === null) return ''
  const [never, all] = hosts === 2 ? ['Never both up', 'Both up'] : ['Never all hosts up', 'All hosts up']
  const plating = away.plating > 0 ? `${minutesText(away.plating)} at plating` : ''
  if (away.beyond > 0) return `${all} from the table for ${minutesText(away.beyond)}${plating ? `, beside ${plating}` : ''}.`
  return `${never} from the table${plating ? `, but ${plating}` : ''}.`
}

/** "The 25 min before the guests come are free." or what is not. */
export const quietText = (quiet: Couple['quiet'], names: Names): string => {
  if (quiet === null) return ''
  const free = `The ${minutesText(quiet.minutes)} before the guests come are free`
  return quiet.broken.length === 0
    ? `${free}.`
    : `${free}, but for ${listText(quiet.broken.map(({ cook, minutes }) => `${minutesText(minutes)} of ${names.cookName(cook)}`))}.`
}

const WHY: Readonly<Record<HardWork, string>> = {
  sharp: 'a blade',
  'hot-fat': 'hot fat or sugar',
  'hot-load': 'something hot to carry or pour',
  long: 'long work',
}

/** "Kim has a glass by then: “Carve the lamb” at 19:51 is a blade. Go slowly, or let somebody else." */
export const glassText = ({ cook, step, start, because }: Couple['glasses'][number], names: Names, zone: string): string =>
  `${names.cookName(cook)} may have had a glass by ${clockText(start, zone)}: “${names.stepName(step)}” is ${WHY[because]}. Go slowly, or let somebody else.`

import type { Span } from '#lib/domain/atoms.ts'
import { minutesOf } from '#lib/domain/duration.ts'
import type { Left } from '#lib/learning/eaten.ts'
import type { Pace, Usual } from '#lib/learning/usual.ts'
import type { Time, Verdict } from '#server/learning/library.ts'
import { countOf, countText } from './clock.ts'
import { durationText, minutesText, spanText } from './duration.ts'

const nightsText = (nights: number): string => countOf(nights, 'night')

/** "Usually 25 min here, 21 to 31 (3 nights; written: 20 min)." */
export const usualHereText = ({ takes, nights }: Usual, written: Span): string =>
  `Usually ${durationText(takes.likely)} here, ${spanText(takes.least, takes.most)} (${nightsText(nights)}; written: ${durationText(written.likely)}).`

const shareText = ({ factor }: Pace): string =>
  `about ${Math.round(Math.abs(factor - 1) * 100)} % ${factor > 1 ? 'longer' : 'shorter'} than written`

/** "Steps like this take Kim about 20 % longer than written here (4 nights): 24 min." */
export const kinText = (pace: Pace, cook: string | null, written: Span): string =>
  `Steps like this take ${cook === null ? '' : `${cook} `}${shareText(pace)} here (${nightsText(pace.nights)}): ${minutesText(Math.round(minutesOf(written.likely) * pace.factor))}.`

/** "About 10 % slower in this oven (4 nights)." */
export const ovenText = (pace: Pace): string =>
  `About ${Math.round(Math.abs(pace.factor - 1) * 100)} % ${pace.factor > 1 ? 'slower' : 'faster'} than written in this oven (${nightsText(pace.nights)}). Leave its temperature as it is: whether food is done its sign and a thermometer say, not the clock.`

export const verdictWords: Readonly<Record<Verdict, string>> = { again: 'Again', changes: 'With changes', never: 'Not again' }

export const leftWords: Readonly<Record<Left, string>> = {
  short: 'there was too little',
  none: 'nothing was left',
  quarter: 'about a quarter was left',
  half: 'about half was left',
}

/** "its steps took 52 min instead of 45, of those that were told". */
export const toldText = ({ told }: Time): string =>
  told === null
    ? 'nobody told how long its steps took'
    : `${told.steps === 1 ? 'one step was told' : `${countText(told.steps)} steps were told`}: ${minutesText(Math.round(told.took))} instead of ${minutesText(Math.round(told.written))}`

/** "For 8 make as much as for 6 next time." */
export const nextText = (covers: number, portions: number): string =>
  portions === covers
    ? `For ${covers}, what was made is about right.`
    : `For ${covers}, make it for ${portions} next time: drawn from what was left.`

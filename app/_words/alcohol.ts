import type { Measure } from '#lib/drinks/alcohol.ts'
import type { Moderation } from '#lib/drinks/moderation.ts'
import type { NoAlcohol } from '#lib/drinks/pour.ts'

const one = (value: number): string => String(Math.round(value * 10) / 10)

const measureWords: Readonly<Record<Measure, readonly [one: string, many: string]>> = {
  'uk-unit': ['UK unit', 'UK units'],
  'us-drink': ['US standard drink', 'US standard drinks'],
  'au-drink': ['Australian standard drink', 'Australian standard drinks'],
}

/** "2.1 UK units". */
export const measuredText = (value: number, measure: Measure): string => {
  const shown = one(value)
  return `${shown} ${measureWords[measure][shown === '1' ? 0 : 1]}`
}

/** "2.1 units": where it has been said which they are. */
export const shortMeasuredText = (value: number, measure: Measure): string => {
  const shown = one(value)
  return `${shown} ${measure === 'uk-unit' ? (shown === '1' ? 'unit' : 'units') : shown === '1' ? 'drink' : 'drinks'}`
}

/** Why somebody is poured from the second line, for the host's eyes. */
export const noAlcoholWords: Readonly<Record<NoAlcohol, string>> = {
  child: 'a child',
  drives: 'drives',
  pregnant: 'pregnant or breastfeeding',
  abstains: 'drinks no alcohol',
  'not-known': 'has not said',
}

const WHO = { anybody: 'anybody', men: 'men', women: 'women' } as const

/** A gentle word about how much is poured. */
export const moderationText = (note: Moderation): string => {
  switch (note.kind) {
    case 'pace':
      return `that is ${one(note.unitsAnHour)} UK units an hour; a body manages about one, and it varies. Slower, smaller, or water in between`
    case 'day':
      return `${one(note.drinks)} of the standard drinks in which guidance gives at most ${note.most} on a day for ${WHO[note.who]}`
    case 'week':
      return `${one(note.units)} of the ${note.most} UK units that guidance gives for a week`
  }
}

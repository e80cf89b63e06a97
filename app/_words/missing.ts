import type { TableThing } from '#lib/domain/offer.ts'
import type { Idea } from '#lib/potluck/idea.ts'
import type { Missing } from '#lib/potluck/missing.ts'
import { countOf, countText, listText } from './clock.ts'
import type { Names } from './names.ts'
import { needsText } from './need.ts'

/** "one chair", "12 chairs". */
const thingCounts: Readonly<Record<TableThing, readonly [one: string, more: string]>> = {
  chairs: ['chair', 'chairs'],
  plates: ['plate', 'plates'],
  glasses: ['glass', 'glasses'],
  cutlery: ['set of cutlery', 'sets of cutlery'],
  ice: ['kilo of ice', 'kilos of ice'],
}

/** "12 chairs", "one kilo of ice". */
export const thingCountText = (thing: TableThing, count: number): string => countOf(count, ...thingCounts[thing])

const partWords: Readonly<Record<Idea['part'], string>> = {
  bite: 'a bite to have standing up',
  beginning: 'something small to begin with',
  middle: 'something for the middle of the meal',
  beside: 'something to go beside it',
  end: 'something for the end',
}
const heatWords: Readonly<Record<Idea['heat'], string>> = { cold: 'served cold', either: '' }
const baseWords: Readonly<Record<Idea['base'], string>> = {
  anything: '',
  vegetables: 'with vegetables',
  pulses: 'with beans, lentils or other pulses',
  plain: 'of few things, each of them known',
}

/** A kind of food, never a dish: "something to go beside it, served cold, with vegetables". */
export const ideaText = ({ part, heat, base }: Idea): string =>
  [partWords[part], heatWords[heat], baseWords[base]].filter(Boolean).join(', ')

/** What nobody brings yet, in one sentence without its end. */
export const missingText = (missing: Missing, names: Names): string => {
  switch (missing.kind) {
    case 'dish':
      return `${names.courseName(missing.course)}: nothing yet, for ${countText(missing.want)}`
    case 'portions':
      return `${names.courseName(missing.course)}: enough for ${countText(missing.have)} of ${countText(missing.want)}`
    case 'need': {
      const for_ = needsText(missing.needs)
      const course = names.courseName(missing.course)
      if (missing.open.length === 0) return `${course}: nothing for ${for_}`
      return `${course}: nothing known to be right for ${for_}; ${listText(missing.open.map(names.dishName))} may be, once somebody says what is in it`
    }
    case 'needs-unknown':
      return `${countOf(missing.guests, 'guest')} ${missing.guests === 1 ? 'has' : 'have'} not told what they eat: nothing is known to be right for them`
    case 'thing':
      return `${thingCountText(missing.thing, missing.want - missing.have)} more: there ${missing.have === 1 ? 'is' : 'are'} ${countText(missing.have)} of ${countText(missing.want)}`
    case 'not-said':
      return `${thingCountText(missing.thing, missing.want)}: nobody has said what the house has`
    case 'tool':
      return `${missing.count === 1 ? `The ${missing.tool}` : `${countText(missing.count)} × ${missing.tool}`} for ${listText(missing.dishes.map(names.dishName)) || 'a chore'}: the kitchen here has none`
  }
}

/** The kind of food that would help, for what is missing of food. */
export const missingIdea = (missing: Missing): string | null => ('idea' in missing ? ideaText(missing.idea) : null)

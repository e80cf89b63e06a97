import { secondsOf } from '#lib/domain/duration.ts'
import type { Use } from '#lib/domain/kitchen.ts'
import type { After, Way } from '#lib/domain/menu.ts'
import { careWords, handsWords, touchesText } from './care.ts'
import { listText } from './clock.ts'
import { durationText, spanText } from './duration.ts'
import { useText } from './kit.ts'

const PLACE: Readonly<Record<Use['kind'], string>> = { oven: 'in', ring: 'on', worktop: 'on', cold: 'with', tool: 'with' }

const placeOf = (use: Use | undefined): string => {
  if (!use) return ''
  return use.kind === 'worktop' && use.places > 1 ? 'with' : PLACE[use.kind]
}

/** "in the oven at 190°, one shelf, and with the blender". */
const usesText = (uses: readonly Use[]): string => {
  const words = uses.map(useText)
  const texts = words.map((text, index) => {
    const [place, before] = [placeOf(uses[index]), placeOf(uses[index - 1])]
    return place === before && !text.startsWith('the oven') ? text : `${place} ${text}`
  })
  return listText(texts)
}

/** One way of doing a step as a sentence: "Leave it in the oven at 190 to 200°, one shelf, usually 60 min, 55 to 70; put in, taken out." */
export const wayText = (way: Way): string => {
  const hands = way.care === 'hands-on' && way.cooks > 1 ? `, ${handsWords[way.cooks === 3 ? 3 : 2]}` : ''
  const uses = way.uses.length > 0 ? `${way.care === 'hands-on' ? ',' : ''} ${usesText(way.uses)}` : ''
  const exact = secondsOf(way.takes.least) === secondsOf(way.takes.most)
  const span = exact ? '' : ` (${spanText(way.takes.least, way.takes.most)})`
  const upTo = way.upTo === undefined ? '' : `, up to ${durationText(way.upTo)}`
  const touches = way.touches.length > 0 ? `; ${touchesText(way.touches)}` : ''
  return `${careWords[way.care]}${hands}${uses}, usually ${durationText(way.takes.likely)}${span}${upTo}${touches}.`
}

/** How long a step may wait for the one before it: "right after", "within 10 min", "at least 2 h, at most 2 days". */
export const lagText = (after: After): string => {
  const from = after.from === 'start' ? ' from its start' : ''
  const least = secondsOf(after.least) === 0 ? '' : durationText(after.least)
  const why = after.most !== undefined && after.kind === 'safety' ? ', or it is not safe' : ''
  if (after.most === undefined) return least ? `at least ${least}${from}` : ''
  if (secondsOf(after.most) === 0) return `right away${from}${why}`
  const most = durationText(after.most)
  return `${least ? (least === most ? least : spanText(after.least, after.most)) : `within ${most}`}${from}${why}`
}

import { secondsOf } from '#lib/domain/duration.ts'
import type { After, Way } from '#lib/domain/menu.ts'
import { careWords, handsWords, touchesText } from './care.ts'
import { listText } from './clock.ts'
import { durationText } from './duration.ts'
import { useText } from './kit.ts'

/** One way of doing a step as a sentence: "Hands on, usually 25 min, on the worktop." */
export const wayText = (way: Way): string => {
  const hands = way.care === 'hands-on' && way.cooks > 1 ? `, ${handsWords[way.cooks === 3 ? 3 : 2]}` : ''
  const uses = way.uses.length > 0 ? `, with ${listText(way.uses.map(useText))}` : ''
  const upTo = way.upTo === undefined ? '' : `, up to ${durationText(way.upTo)}`
  const touches = way.care === 'leave' && way.touches.length > 0 ? `; ${touchesText(way.touches)}` : ''
  return `${careWords[way.care]}${hands}, usually ${durationText(way.takes.likely)}${upTo}${uses}${touches}.`
}

/** How long a step may wait for the one before it: "at once, within 10 min", "after 2 h, within 2 days". */
export const lagText = (after: After): string => {
  const from = after.from === 'start' ? 'of its start' : ''
  const least = secondsOf(after.least) === 0 ? '' : `not before ${durationText(after.least)}`
  const most = after.most === undefined ? '' : secondsOf(after.most) === 0 ? 'at once' : `within ${durationText(after.most)}`
  const both = [least, most].filter(Boolean).join(', ')
  const why = after.most === undefined ? '' : after.kind === 'safety' ? ', or it is not safe' : ''
  return both ? `${both}${from ? ` ${from}` : ''}${why}` : ''
}

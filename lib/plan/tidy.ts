import type { Span } from '#lib/domain/atoms.ts'
import { secondsOf } from '#lib/domain/duration.ts'
import type { Use } from '#lib/domain/kitchen.ts'
import type { After, Course, Dish, Step, Touch, Way } from '#lib/domain/menu.ts'
import type { AtHost, Offer } from '#lib/domain/offer.ts'
import type { EntryOf, EntryRoot } from './layout.ts'

/** Puts in order, within one entry, what the evening's check refuses. Gives the same object back when all is in order. */
export const tidyEntry = <R extends EntryRoot>(root: R, entry: EntryOf[R], report: (why: string) => void): EntryOf[R] => {
  const tidy = TIDY[root] as ((entry: EntryOf[R], report: (why: string) => void) => EntryOf[R]) | undefined
  return tidy ? tidy(entry, report) : entry
}

type Report = (why: string) => void

const tidySpan = (span: Span, report: Report): Span => {
  const [least, likely, most] = [span.least, span.likely, span.most].toSorted((a, b) => secondsOf(a) - secondsOf(b))
  if (least === undefined || likely === undefined || most === undefined) return span
  if (secondsOf(span.least) <= secondsOf(span.likely) && secondsOf(span.likely) <= secondsOf(span.most)) return span
  report('its least, likely and most time were not in order')
  return { least, likely, most }
}

const tidyUse = (use: Use, report: Report): Use => {
  if (use.kind !== 'oven' || use.lowC <= use.highC) return use
  report('its oven temperatures were the wrong way round')
  return { ...use, lowC: use.highC, highC: use.lowC }
}

/** Maps a list and gives the same list back when no item changed. */
export const mapKept = <T>(items: T[], change: (item: T) => T): T[] => {
  const changed = items.map(change)
  return changed.every((item, index) => item === items[index]) ? items : changed
}

const isEndless = (touch: Touch): boolean => typeof touch.when === 'object' && secondsOf(touch.when.every) === 0

const tidyWay = (way: Way, report: Report): Way => {
  const takes = tidySpan(way.takes, report)
  const uses = mapKept(way.uses, (use) => tidyUse(use, report))
  const endless = way.touches.some(isEndless)
  if (endless) {
    report('a touch after no time at all was left out')
    return tidyWay({ ...way, touches: way.touches.filter((touch) => !isEndless(touch)) }, report)
  }
  if (way.upTo !== undefined && way.care !== 'leave') {
    report('only a step that is left alone may last longer by choice')
    const { upTo: _cut, ...rest } = way
    return { ...rest, takes, uses }
  }
  if (way.upTo !== undefined && secondsOf(way.upTo) < secondsOf(takes.most)) {
    report('it may not last less than its most time')
    return { ...way, takes, uses, upTo: takes.most }
  }
  return takes === way.takes && uses === way.uses ? way : { ...way, takes, uses }
}

const tidyAfter = (after: After, report: Report): After => {
  if (after.most === undefined || secondsOf(after.most) >= secondsOf(after.least)) return after
  report('the most of a wait was shorter than its least')
  return { ...after, most: after.least }
}

const tidyAtHost = (atHost: AtHost, report: Report): AtHost => {
  const { heat, finish, lowC, highC } = atHost
  const tidied = {
    ...atHost,
    ...(heat ? { heat: tidySpan(heat, report) } : {}),
    ...(finish ? { finish: tidySpan(finish, report) } : {}),
  }
  if (lowC === undefined || highC === undefined || lowC <= highC)
    return tidied.heat === heat && tidied.finish === finish ? atHost : tidied
  report('its oven temperatures were the wrong way round')
  return { ...tidied, lowC: highC, highC: lowC }
}

const TIDY = {
  courses: (course: Course, report: Report): Course => {
    const eating = tidySpan(course.eating, report)
    const [short, long] = course.wait.ideal
    if (secondsOf(short) > secondsOf(long)) {
      report('its shorter wait comes first')
      return { ...course, eating, wait: { ...course.wait, ideal: [long, short] } }
    }
    return eating === course.eating ? course : { ...course, eating }
  },
  dishes: (dish: Dish, report: Report): Dish => {
    const uses = mapKept(dish.keeps.uses, (use) => tidyUse(use, report))
    return uses === dish.keeps.uses ? dish : { ...dish, keeps: { ...dish.keeps, uses } }
  },
  steps: (step: Step, report: Report): Step => {
    const ways = mapKept(step.ways, (way) => tidyWay(way, report))
    const after = mapKept(step.after, (one) => tidyAfter(one, report))
    return ways === step.ways && after === step.after ? step : { ...step, ways, after }
  },
  offers: (offer: Offer, report: Report): Offer => {
    const home = offer.home && tidySpan(offer.home, report)
    const atHost = offer.atHost && tidyAtHost(offer.atHost, report)
    if (home === offer.home && atHost === offer.atHost) return offer
    return { ...offer, ...(home ? { home } : {}), ...(atHost ? { atHost } : {}) }
  },
} as { readonly [root in EntryRoot]?: unknown }

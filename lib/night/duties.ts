import type { Told } from './told.ts'
import type { TouchToCome, Work } from './work.ts'

/** Who watches it, takes it out, or put it in; nobody who has gone. */
export const lookersOf = (work: Work, told: Told): readonly string[] => {
  const last = work.touches.at(-1)
  const all = work.cooks.length > 0 ? work.cooks : last ? [last.cook] : work.beginners
  return all.filter((cook) => !told.away.has(cook))
}

/** At the end of its usual minutes somebody looks whether it is done; not where it is taken out then, or may last longer by choice. */
export const isLookedAt = ({ way, touches }: Work): boolean =>
  way.care === 'eye' || (way.care === 'leave' && way.upTo === undefined && !touches.some(({ what }) => what === 'out'))

/** It rests as long as one likes, and nobody takes it out: no end of it is waited for. */
export const isOpenEnded = ({ way }: Work): boolean => way.upTo !== undefined && !way.touches.some(({ when }) => when === 'out')

/** A moment at which a cook is wanted. */
export interface Duty {
  readonly work: Work
  readonly cook: string
  readonly at: number
  readonly what: 'begin' | 'touch' | 'look'
  readonly touch: TouchToCome | null
}

/**
 * Everything that is still to call a cook, in order of time: what has not begun, touches, and a look at what was left alone. Who watches
 * something is at it anyway.
 */
export const dutiesOf = (works: readonly Work[], told: Told): readonly Duty[] =>
  works
    .flatMap((work): Duty[] => [
      ...(work.isBegun || work.beginsItself
        ? []
        : work.beginners.map((cook): Duty => ({ work, cook, at: work.start, what: 'begin', touch: null }))),
      ...work.touches.flatMap((touch): Duty[] =>
        touch.what === 'in' || told.away.has(touch.cook) ? [] : [{ work, cook: touch.cook, at: touch.at, what: 'touch', touch }],
      ),
      ...(work.way.care === 'leave' && isLookedAt(work)
        ? lookersOf(work, told).map((cook): Duty => ({ work, cook, at: work.end, what: 'look', touch: null }))
        : []),
    ])
    .sort((a, b) => a.at - b.at)

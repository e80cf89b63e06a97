import { touchKind, touchTags } from '#app/_words/care.ts'
import type { Names } from '#app/_words/names.ts'
import { secondsOf } from '#lib/domain/duration.ts'
import type { Touch, Way } from '#lib/domain/menu.ts'
import type { Cue, RunningOrder } from '#lib/domain/running-order.ts'

/** Something one cook is seen doing: a whole hands-on or watched step, or one touch of a step that is left alone. */
export interface Doing {
  readonly key: string
  readonly cue: Cue
  readonly cook: string
  readonly from: number
  readonly to: number
  readonly mark: 'bar' | 'ladder' | 'dots' | 'knot'
  /** The touch, when it is one: put in, taken out, seen to. */
  readonly touch: 'in' | 'out' | 'every' | null
  /** What to call it, and an end that is kept apart: ": in", ", with Lou". */
  readonly words: string
  readonly tail: string
}

/** The touch a cue's moment belongs to: the nearest by its rule. */
const touchAt = (way: Way | undefined, cue: Cue, at: number): Touch | undefined => {
  const [start, end] = [Date.parse(cue.start), Date.parse(cue.end)]
  const distance = (touch: Touch): number => {
    if (touch.when === 'in') return Math.abs(at - start)
    if (touch.when === 'out') return Math.abs(at - (end - secondsOf(touch.takes) * 1000))
    const every = secondsOf(touch.when.every) * 1000
    const k = Math.max(1, Math.round((at - start) / every))
    return Math.abs(at - (start + k * every))
  }
  return way?.touches.reduce<Touch | undefined>(
    (best, touch) => (best === undefined || distance(touch) < distance(best) ? touch : best),
    undefined,
  )
}

/** What a cue is called, with its batch when it is not the first: "Fry the fritters", "Brew (2)". */
const cueName = (cue: Cue, names: Names): string => {
  const does =
    names
      .step(cue.step)
      ?.does.trim()
      .replace(/[.;,]+$/, '') || names.stepName(cue.step)
  return cue.batch > 0 ? `${does} (${cue.batch + 1})` : does
}

const doingsOf = (cue: Cue, names: Names): Doing[] => {
  const step = names.step(cue.step)
  const way = step?.ways[cue.way]
  const [from, to] = [Date.parse(cue.start), Date.parse(cue.end)]
  if (way?.care === 'leave' || (way === undefined && cue.cooks.length === 0)) {
    return cue.touches.map(({ at, cook }, index) => {
      const moment = Date.parse(at)
      const touch = touchAt(way, cue, moment)
      const kind = touch ? touchKind(touch) : 'every'
      return {
        key: `${cue.step}.${cue.batch}.t${index}`,
        cue,
        cook,
        from: moment,
        to: moment + (touch ? secondsOf(touch.takes) * 1000 : 60_000),
        mark: 'knot' as const,
        touch: kind,
        words: cueName(cue, names),
        tail: `: ${touchTags[kind]}`,
      }
    })
  }
  const mark = step?.role === 'carry' ? 'dots' : way?.care === 'eye' ? 'ladder' : 'bar'
  return cue.cooks.map((cook) => {
    const others = cue.cooks.filter((other) => other !== cook).map(names.cookName)
    return {
      key: `${cue.step}.${cue.batch}.${cook}`,
      cue,
      cook,
      from,
      to,
      mark,
      touch: null,
      words: cueName(cue, names),
      tail: others.length > 0 ? `, with ${others.join(', ')}` : '',
    }
  })
}

/** Everything that cooks are seen doing, in time, then by step. */
export const doings = (order: RunningOrder, names: Names): readonly Doing[] =>
  order.cues.flatMap((cue) => doingsOf(cue, names)).sort((a, b) => a.from - b.from || a.to - b.to || (a.key < b.key ? -1 : 1))

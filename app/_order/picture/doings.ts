import type { Names } from '#app/_words/names.ts'
import { type Moment, momentShort, momentTag, type Short, stepForms } from '#app/_words/short-step.ts'
import { shorten } from '#app/_words/shorten.ts'
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
  /** The same for a line that has little room. */
  readonly short: Short
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

const momentOf = (touch: Touch | undefined): Moment => {
  if (touch?.when === 'in' || touch?.when === 'out') return { kind: touch.when }
  return { kind: 'every', does: touch?.does }
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

const ofBatch = ({ forms, tag }: Short, batch: number): Short => ({ forms, tag: batch > 0 ? `${tag} (${batch + 1})` : tag })

const doingsOf = (cue: Cue, names: Names): Doing[] => {
  const step = names.step(cue.step)
  const way = step?.ways[cue.way]
  const [from, to] = [Date.parse(cue.start), Date.parse(cue.end)]
  const does = step?.does.trim() || names.stepName(cue.step)
  const place = names.kit(cue.kit[0]?.id ?? '')?.kit.kind ?? 'none'
  if (way?.care === 'leave' || (way === undefined && cue.cooks.length === 0)) {
    return cue.touches.map(({ at, cook }, index) => {
      const moment = Date.parse(at)
      const touch = touchAt(way, cue, moment)
      const kind = momentOf(touch)
      return {
        key: `${cue.step}.${cue.batch}.t${index}`,
        cue,
        cook,
        from: moment,
        to: moment + (touch ? secondsOf(touch.takes) * 1000 : 60_000),
        mark: 'knot' as const,
        touch: kind.kind,
        words: cueName(cue, names),
        tail: `: ${momentTag(kind, place)}`,
        short: ofBatch(momentShort(does, kind, place), cue.batch),
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
      short: ofBatch({ forms: stepForms(does), tag: '' }, cue.batch),
    }
  })
}

/** Where two steps of different dishes are told in the same words, the dish is said as well. */
const toldApart = (all: readonly Doing[], names: Names): readonly Doing[] => {
  const said = ({ short }: Doing) => `${short.forms[short.forms.length - 1]}${short.tag}`
  const dishOf = (doing: Doing) => names.step(doing.cue.step)?.dish ?? null
  const dishes = new Map<string, Set<string | null>>()
  for (const doing of all) dishes.set(said(doing), (dishes.get(said(doing)) ?? new Set()).add(dishOf(doing)))
  return all.map((doing) => {
    const dish = names.dish(dishOf(doing))
    if (!dish || (dishes.get(said(doing))?.size ?? 0) < 2) return doing
    const { forms, tag } = doing.short
    return { ...doing, short: { forms: forms.map((form) => `${form}${tag}, ${shorten(dish.name, 16)}`), tag: '' } }
  })
}

/** Everything that cooks are seen doing, in time, then by step. */
export const doings = (order: RunningOrder, names: Names): readonly Doing[] =>
  toldApart(
    order.cues.flatMap((cue) => doingsOf(cue, names)),
    names,
  ).toSorted((a, b) => a.from - b.from || a.to - b.to || (a.key < b.key ? -1 : 1))

import { clockText } from '#app/_words/clock.ts'
import type { Column, Shape } from './columns.ts'
import type { Doing } from './doings.ts'
import type { Box } from './outline.ts'
import type { Demand } from './scale.ts'
import { breakLine, fitText, textWidth } from './text.ts'

/** Sizes of a label line, in pixels. `pitch`: between two lines of one cook. */
export const LINE = {
  wide: { size: 12.5, clock: 36, left: 31, mark: 18, pitch: 16, text: 13, lines: 1, lead: 0 },
  phone: { size: 14.5, clock: 44, left: 36, mark: 20, pitch: 44, text: 16, lines: 2, lead: 17 },
} as const

/** Doings of one cook that begin at one moment: their lines stand below each other. */
export interface Group {
  readonly cook: string
  readonly at: number
  readonly doings: readonly Doing[]
}

export const groupsOf = (doings: readonly Doing[]): readonly Group[] => {
  const groups = new Map<string, Doing[]>()
  for (const doing of doings) {
    const id = `${doing.cook} ${doing.from}`
    groups.set(id, [...(groups.get(id) ?? []), doing])
  }
  return [...groups.values()].map((group) => ({ cook: group[0]?.cook ?? '', at: group[0]?.from ?? 0, doings: group }))
}

/**
 * What the labels ask of the scale: in each cook's column every line has its pitch, the lines before a course line stay
 * above its plates, and a notch is as high as the lines written in it.
 */
export const labelDemands = (groups: readonly Group[], lines: readonly number[], shape: Shape): readonly Demand[] => {
  const { pitch, lines: deep, lead } = LINE[shape]
  const text = LINE[shape].text + (deep - 1) * lead
  const clear = shape === 'wide' ? 12 : 14
  return groups.flatMap((group, index) => {
    const next = groups.slice(index + 1).find((other) => other.cook === group.cook)
    const line = lines.find((at) => at > group.at)
    const served = lines.findLast((at) => at < group.at)
    const below = (group.doings.length - 1) * pitch
    const start = lines.includes(group.at) ? clear : 0
    const until = Math.max(...group.doings.map((doing) => doing.to))
    const demands: Demand[] = []
    if (served !== undefined) demands.push({ from: served, to: group.at, px: clear })
    if (next) demands.push({ from: group.at, to: next.at, px: start + below + pitch })
    if (line !== undefined) demands.push({ from: group.at, to: line, px: start + below + text + clear })
    if (until > group.at) demands.push({ from: group.at, to: until, px: start + below + text + 1 })
    return demands
  })
}

export interface Label {
  readonly key: string
  readonly doing: Doing
  readonly cook: string
  readonly clock: string
  /** One line, or on a phone two. */
  readonly words: readonly string[]
  readonly x: number
  /** Baseline. */
  readonly y: number
  /** What the words cover. */
  readonly box: Box
  /** Where the mark is, when the line had to move away from it. */
  readonly leader: number | null
}

/** A touch keeps its "in" or "out"; who helps is dropped first, for it shows in the other column at the same height. */
const wordsOf = (doing: Doing, size: number, room: number, lines: number): readonly string[] => {
  const done = doing.cue.state === 'done' ? ' ✓' : ''
  const whole = `${doing.words}${doing.tail}${done}`
  const kept = `${doing.touch === null ? '' : doing.tail}${done}`
  if (textWidth(whole, size) <= room) return [whole]
  if (lines === 1) return [`${fitText(doing.words, size, room - textWidth(kept, size))}${kept}`]
  const { first, rest } = breakLine(whole, size, room)
  if (textWidth(rest, size) <= room) return [first, rest]
  const cut = breakLine(doing.words, size, room)
  return [cut.first, `${fitText(cut.rest, size, room - textWidth(kept, size))}${kept}`]
}

/** Sets each label beside its mark. The scale has made room, so two lines of a column never meet. */
export const placeLabels = (
  groups: readonly Group[],
  columns: readonly Column[],
  y: (ms: number) => number,
  lines: readonly number[],
  zone: string,
  shape: Shape,
): readonly Label[] => {
  const line = LINE[shape]
  return groups.flatMap((group) => {
    const column = columns.find((candidate) => candidate.id === group.cook)
    if (!column) return []
    const clear = lines.includes(group.at) ? (shape === 'wide' ? 12 : 14) : 0
    return group.doings.map((doing, index) => {
      const top = y(group.at) + clear + index * line.pitch
      const x = column.x + line.left
      const words = wordsOf(doing, line.size, column.width - line.left - line.clock - 5, line.lines)
      return {
        key: doing.key,
        doing,
        cook: doing.cook,
        clock: clockText(doing.from, zone),
        words,
        x,
        y: top + line.text - 2,
        box: {
          x,
          y: top,
          width: line.clock + Math.max(...words.map((each) => textWidth(each, line.size))),
          height: line.text + 1 + (words.length - 1) * line.lead,
        },
        leader: index > 0 || clear > 0 ? y(group.at) : null,
      }
    })
  })
}

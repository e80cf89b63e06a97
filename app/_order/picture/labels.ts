import { clockText } from '#app/_words/clock.ts'
import type { CookColumn } from './columns.ts'
import type { Doing } from './doings.ts'
import type { Line } from './lines.ts'
import type { Box } from './outline.ts'
import type { Demand } from './scale.ts'
import { breakLine, fitText, textWidth } from './text.ts'

/** Doings of one column that begin at one moment: their lines stand below each other. */
export interface Group {
  readonly column: CookColumn
  readonly at: number
  readonly doings: readonly Doing[]
}

/** What a column's lines are: in the column of several cooks, what they do together is one line. */
export const groupsOf = (doings: readonly Doing[], columns: readonly CookColumn[]): readonly Group[] =>
  columns
    .flatMap((column) => {
      const groups = new Map<number, Doing[]>()
      const seen = new Set<string>()
      for (const doing of doings) {
        if (!column.cooks.includes(doing.cook)) continue
        const one = `${doing.cue.step}.${doing.cue.batch}.${doing.from}`
        if (doing.touch === null && seen.has(one)) continue
        seen.add(one)
        groups.set(doing.from, [...(groups.get(doing.from) ?? []), doing])
      }
      return [...groups].map(([at, list]) => ({ column, at, doings: list }))
    })
    .sort((a, b) => a.at - b.at)

/**
 * What the labels ask of the scale: in each column every line has its pitch, the lines before a course line stay above its
 * plates, and a notch is as high as the lines written in it.
 */
export const labelDemands = (groups: readonly Group[], courses: readonly number[], line: Line): readonly Demand[] => {
  const text = line.text + (line.lines - 1) * line.lead
  const next = new Map<Group, Group>()
  const last = new Map<string, Group>()
  for (const group of groups) {
    const before = last.get(group.column.id)
    if (before) next.set(before, group)
    last.set(group.column.id, group)
  }
  return groups.flatMap((group) => {
    const after = next.get(group)
    const served = courses.findLast((at) => at < group.at)
    const course = courses.find((at) => at > group.at)
    const below = (group.doings.length - 1) * line.pitch
    const start = courses.includes(group.at) ? line.clear : 0
    const until = Math.max(...group.doings.map((doing) => doing.to))
    const demands: Demand[] = []
    if (served !== undefined) demands.push({ from: served, to: group.at, px: line.clear })
    if (after) demands.push({ from: group.at, to: after.at, px: start + below + line.pitch })
    if (course !== undefined) demands.push({ from: group.at, to: course, px: start + below + text + line.clear })
    if (until > group.at) demands.push({ from: group.at, to: until, px: start + below + text + 1 })
    return demands
  })
}

export interface Label {
  readonly key: string
  readonly doing: Doing
  /** The column it is written in. */
  readonly column: string
  readonly clock: string
  /** One line or two. */
  readonly words: readonly string[]
  readonly x: number
  /** Baseline. */
  readonly y: number
  /** What the words cover. */
  readonly box: Box
  /** Where the mark is, when the line had to move away from it. */
  readonly leader: number | null
}

/** The longest way of saying it that fits. The end of a touch, and that it is done, are never cut. */
const wordsOf = (doing: Doing, who: string, line: Line, room: number): readonly string[] => {
  const { forms, tag } = doing.short
  const end = `${tag}${doing.cue.state === 'done' ? ' ✓' : ''}`
  const helped = doing.touch === null && who === '' ? doing.tail : ''
  const whole = forms[0] ?? doing.words
  const least = forms[forms.length - 1] ?? doing.words
  const said = [...(helped ? [`${whole}${helped}${end}`] : []), ...forms.map((form) => `${who}${form}${end}`)]
  const one = said.find((text) => textWidth(text, line.size) <= room)
  if (one !== undefined && (line.lines === 1 || one === said[0])) return [one]
  if (line.lines === 1) return [`${fitText(`${who}${least}`, line.size, room - textWidth(end, line.size))}${end}`]
  for (const text of said) {
    const { first, rest } = breakLine(text, line.size, room)
    if (textWidth(rest, line.size) <= room) return [first, rest].filter(Boolean)
  }
  const { first, rest } = breakLine(`${who}${least}`, line.size, room)
  return [first, `${fitText(rest, line.size, room - textWidth(end, line.size))}${end}`]
}

interface Setting {
  readonly y: (ms: number) => number
  readonly courses: readonly number[]
  readonly zone: string
  readonly line: Line
  /** Who does it, where a column is of several cooks: "Noor: ". */
  readonly who: (group: Group, doing: Doing) => string
}

/** Sets each label beside its mark. The scale has made room, so two lines of a column never meet. */
export const placeLabels = (groups: readonly Group[], { y, courses, zone, line, who }: Setting): readonly Label[] =>
  groups.flatMap((group) => {
    const { column } = group
    const clear = courses.includes(group.at) ? line.clear : 0
    return group.doings.map((doing, index) => {
      const top = y(group.at) + clear + index * line.pitch
      const x = column.x + column.inset + line.left
      const words = wordsOf(doing, who(group, doing), line, column.width - column.inset - line.left - line.clock - 5)
      return {
        key: doing.key,
        doing,
        column: column.id,
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

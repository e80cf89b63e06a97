import { listText } from '#app/_words/clock.ts'
import type { Names } from '#app/_words/names.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { type Cloth, clothOf, type Sit, sitBoxes, sitTimes, tableWindow, upTimes } from './cloth.ts'
import { type Column, type Columns, type CookColumn, columnsOf, type Shape } from './columns.ts'
import { type CourseRow, courseDemands, courseRows } from './courses.ts'
import { type Doing, doings } from './doings.ts'
import { type Frame, frameOf, pacesOf } from './frame.ts'
import type { Ribbon } from './heat.ts'
import { heldOf } from './held.ts'
import { type Hatch, kitOf, laneCount, lanesByKit, type Thread } from './kit.ts'
import { type Group, groupsOf, type Label, labelDemands, placeLabels } from './labels.ts'
import { LINES, type Line, type Zoom } from './lines.ts'
import type { Box } from './outline.ts'
import { elastic, type Scale } from './scale.ts'
import { type Tick, ticksOf } from './ticks.ts'

export interface Mark {
  readonly key: string
  readonly doing: Doing
  readonly x: number
  readonly y: number
  readonly height: number
}

/** The evening's own day, ready to be painted: every number is in pixels from the top left. */
export interface Picture {
  readonly width: number
  readonly height: number
  /** It needs more width than there is. */
  readonly isWider: boolean
  readonly shape: Shape
  readonly zoom: Zoom
  readonly line: Line
  readonly columns: Columns
  readonly frame: Frame
  readonly scale: Scale
  readonly ticks: readonly Tick[]
  readonly courses: readonly CourseRow[]
  readonly cloth: Cloth
  readonly laid: number
  readonly sits: readonly Sit[]
  readonly marks: readonly Mark[]
  readonly labels: readonly Label[]
  readonly ribbons: readonly { readonly column: Column; readonly ribbon: Ribbon; readonly threads: readonly Thread[] }[]
  readonly pans: readonly Thread[]
  readonly colds: readonly Thread[]
  readonly hatches: readonly Hatch[]
  /** x of the kit a step stands in, by step and batch: where the thread of the selection leads. */
  readonly kitAt: ReadonlyMap<string, number>
}

export interface Asked {
  readonly width: number
  readonly shape: Shape
  readonly zoom: Zoom
  /** Who reads: the one cook of the phone's picture, and of a wide one in which not everybody fits. */
  readonly cook: string | null
}

/** Between what one cook does at once, or several in one column. */
const LANE = 7.5
const BOTTOM = 10
/** Room above the drawing's zero. */
export const ABOVE = 8
/** px: a drawing becomes longer or shorter by so much at once. */
const STRETCH = 600

/**
 * The attributes of an SVG that the picture fits into. A new order is a few pixels longer or shorter than the one before, and an SVG of
 * another size has every text in it laid out and painted again: it is the sheet beneath that has the picture's own height.
 */
export const viewOf = ({ width, height }: Picture): { viewBox: string; width: number; height: number } => {
  const enough = Math.ceil((height + ABOVE) / STRETCH) * STRETCH
  return { viewBox: `0 ${-ABOVE} ${width} ${enough}`, width, height: enough }
}

/** Lays out the running order as a table seen from above with time flowing down (look, drawing rules 1 to 13). */
export const pictureOf = (
  evening: Evening,
  order: RunningOrder,
  names: Names,
  asked: Asked,
  all: readonly Doing[] = doings(order, names),
): Picture => {
  const frame = frameOf(evening, order, all)
  const held = heldOf(evening, order, names).filter((item) => item.to > frame.from && item.from < frame.to)
  const coldLanes = lanesByKit(held.filter((item) => names.kit(item.kit)?.kit.kind === 'cold'))
  const columns = columnsOf(evening, order, asked, new Map([...coldLanes].map(([kit, lanes]) => [kit, laneCount(lanes)])))
  const line = LINES[asked.shape][asked.zoom]
  const shown = all.filter((doing) => doing.from >= frame.from)
  const groups = groupsOf(shown, columns.cooks)
  const lines = order.courses.map((course) => Date.parse(course.toTable)).sort((a, b) => a - b)
  const events = [...shown.flatMap((doing) => [doing.from, doing.to]), ...lines, frame.guestsFrom]
  const scale = elastic(frame.from, frame.to, pacesOf(frame, events, asked.shape, asked.zoom), [
    ...labelDemands(groups, lines, line),
    ...courseDemands(order, frame, asked.shape),
  ])
  const height = Math.ceil(scale.height) + BOTTOM
  const who = (group: Group, doing: Doing): string => whoOf(group, doing, names)
  const labels = placeLabels(groups, { y: scale.y, courses: lines, zone: evening.zone, line, who })
  const rows = courseRows(evening, order, names, columns, scale, asked.shape)
  const laid = laidAt(evening, all, scale)
  const sits = columns.cooks.flatMap((column) => sitsOf(evening, column, all, frame, labels, scale, lines, height))
  const edges = {
    left: Math.min(...columns.cooks.map((column) => column.x), columns.table.x),
    right: columns.board.x + columns.board.width,
  }
  return {
    width: columns.width,
    height,
    isWider: columns.width > asked.width,
    shape: asked.shape,
    zoom: asked.zoom,
    line,
    columns,
    frame,
    scale,
    ticks: ticksOf(
      scale,
      rows.map((row) => row.y),
      evening.zone,
      asked.zoom,
    ),
    courses: rows,
    laid,
    cloth: clothOf([
      { x: columns.table.x, y: laid, width: columns.table.width, height: height - 8 - laid },
      ...sits.map((sit) => trim(sit.box, edges)),
    ]),
    sits,
    marks: marksOf(groups, scale, line, lines),
    labels,
    ...kitOf(order, names, columns, held, coldLanes, scale),
  }
}

/** In a column of several cooks a line begins with who does it. */
const whoOf = ({ column }: Group, doing: Doing, names: Names): string => {
  if (column.cooks.length < 2) return ''
  const together = doing.touch === null ? doing.cue.cooks.filter((cook) => column.cooks.includes(cook)) : [doing.cook]
  return `${listText(together.map(names.cookName))}: `
}

/** Cloth stays 8 px clear of the board's own edges. */
const trim = (box: Box, edges: { left: number; right: number }): Box => {
  const left = box.x <= edges.left ? box.x + 8 : box.x
  const right = box.x + box.width >= edges.right ? edges.right - 8 : box.x + box.width
  return { ...box, x: left, width: right - left }
}

const laidAt = (evening: Evening, all: readonly Doing[], scale: Scale): number => {
  const table = new Set(evening.steps.filter((step) => step.where === 'table' && step.role === 'chore').map((step) => step.id))
  const first = all.find((doing) => table.has(doing.cue.step))
  return first ? Math.max(8, scale.y(Math.min(first.to, scale.to))) : 8
}

/** Where the cloth lies in a column: none of its cooks is up. */
const sitsOf = (
  evening: Evening,
  column: CookColumn,
  all: readonly Doing[],
  frame: Frame,
  labels: readonly Label[],
  scale: Scale,
  courses: readonly number[],
  height: number,
): readonly Sit[] => {
  if (!evening.cooks.some((cook) => cook.eats && column.cooks.includes(cook.id))) return []
  const atTable = new Set(evening.steps.filter((step) => step.where === 'table').map((step) => step.id))
  const window = tableWindow(frame)
  const ups = upTimes(
    all.filter((doing) => column.cooks.includes(doing.cook) && !atTable.has(doing.cue.step)),
    window,
  )
  return sitBoxes(column, sitTimes(ups, window), labels, scale.y, courses, height - 8, window.to)
}

const marksOf = (groups: readonly Group[], scale: Scale, line: Line, courses: readonly number[]): readonly Mark[] => {
  const busy = new Map<string, { from: number; to: number; lane: number }[]>()
  return groups.flatMap(({ column, doings }) => {
    const lanes = column.inset / LANE + 2
    const right = column.x + column.inset + line.mark
    return doings.map((doing) => {
      const before = (busy.get(column.id) ?? []).filter((other) => other.to > doing.from)
      const free = Array.from({ length: lanes }, (_, lane) => lane)
      const lane = free.find((each) => before.every((other) => other.lane !== each)) ?? lanes
      busy.set(column.id, [...before, { from: doing.from, to: doing.to, lane }])
      const top = scale.y(doing.from) + (courses.includes(doing.from) ? 2 : 0)
      const bottom = scale.y(doing.to) - (courses.includes(doing.to) ? 2 : 0.6)
      return { key: doing.key, doing, x: right - lane * LANE, y: top, height: Math.max(5, bottom - top) }
    })
  })
}

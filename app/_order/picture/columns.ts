import { secondsOf } from '#lib/domain/duration.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { Kit, Kitchen } from '#lib/domain/kitchen.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'

export type Shape = 'wide' | 'phone'

export interface Column {
  readonly id: string
  readonly x: number
  readonly width: number
}

/** A column of one cook, or of all the others together. */
export interface CookColumn extends Column {
  readonly cooks: readonly string[]
  /** Room before the marks for more of them side by side. */
  readonly inset: number
}

export interface RingUnit extends Column {
  readonly kit: string
  readonly unit: number
  readonly size: 'small' | 'medium' | 'large'
}

export interface Columns {
  readonly width: number
  readonly cooks: readonly CookColumn[]
  readonly table: Column
  /** The board of the cooks and the table. */
  readonly board: Column
  readonly ovens: readonly Column[]
  readonly rings: { readonly board: Column; readonly units: readonly RingUnit[] } | null
  readonly colds: readonly Column[]
}

const GUTTER = 50
const RING = 17.5
const LANE = 13
const GAP = 8
const KIT_GAP = 14
const OVEN = 110
const TABLE = { wide: 224, narrow: 206, phone: 104 } as const
const NARROW_BELOW = 960
const COOK = { least: 164, most: 340 } as const
/** Where the cooks do not all fit: who reads, and all the others in one column. */
const FOLDED = { reader: 300, others: 210, most: 460 } as const
export const OTHERS = 'others'
const INSET = 22.5
const SIZES = { small: 0, medium: 1, large: 2 } as const

/** Who is missed most sits outermost, so that the cloth is whole near the guests: half the cooks left of the table, half right. */
export const seatCooks = (
  evening: Evening,
  order: RunningOrder | null,
): { left: readonly string[]; right: readonly string[] } => {
  const missed = new Map(order?.cooks.map(({ cook, missed: minutes }) => [cook, secondsOf(minutes)]) ?? [])
  const sorted = evening.cooks
    .map((cook, index) => ({ id: cook.id, index, weight: missed.get(cook.id) ?? 0 }))
    .sort((a, b) => b.weight - a.weight || a.index - b.index)
  const left = sorted.filter((_, index) => index % 2 === 0).map((cook) => cook.id)
  const right = sorted.filter((_, index) => index % 2 === 1).map((cook) => cook.id)
  return { left, right: right.reverse() }
}

const ofKind = <K extends Kit['kind']>(kitchen: Kitchen | undefined, kind: K): Extract<Kit, { kind: K }>[] =>
  (kitchen?.kit ?? []).filter((kit): kit is Extract<Kit, { kind: K }> => kit.kind === kind)

interface Seat {
  readonly id: string
  readonly cooks: readonly string[]
  readonly width: number
}

/** Everybody in a column of their own where there is room; otherwise who reads, the table, and the others together. */
const seatsOf = (
  evening: Evening,
  order: RunningOrder,
  reader: string | null,
  room: number,
): { readonly left: readonly Seat[]; readonly right: readonly Seat[] } => {
  const { left, right } = seatCooks(evening, order)
  const all = [...left, ...right]
  const each = Math.floor(room / Math.max(1, all.length))
  const first = all.find((id) => id === reader) ?? evening.cooks[0]?.id
  if (all.length <= 2 || each >= COOK.least || first === undefined) {
    const width = Math.min(COOK.most, Math.max(COOK.least, each))
    const own = (id: string): Seat => ({ id, cooks: [id], width })
    return { left: left.map(own), right: right.map(own) }
  }
  const width = Math.max(COOK.least, Math.min(FOLDED.reader, Math.floor(room * 0.44)))
  const others = Math.max(FOLDED.others, Math.min(FOLDED.most, room - width))
  return {
    left: [{ id: first, cooks: [first], width }],
    right: [{ id: OTHERS, cooks: all.filter((id) => id !== first), width: others }],
  }
}

/**
 * Where every column stands. `wide`: clock gutter, cooks around the table, then ovens, rings and cold places of the hosts'
 * kitchen. `phone`: one cook and the table. The result may be wider than asked when much kit leaves too little room.
 */
export const columnsOf = (
  evening: Evening,
  order: RunningOrder,
  asked: { readonly width: number; readonly shape: Shape; readonly cook: string | null },
  coldLanes: ReadonlyMap<string, number>,
): Columns => {
  const table = TABLE[asked.shape === 'wide' && asked.width < NARROW_BELOW ? 'narrow' : asked.shape]
  if (asked.shape === 'phone') {
    const cook = asked.cook ?? evening.cooks[0]?.id
    const lane = Math.max(120, asked.width - GUTTER - table)
    const cooks = cook === undefined ? [] : [{ id: cook, cooks: [cook], inset: 0, x: GUTTER, width: lane }]
    return {
      width: GUTTER + lane + table,
      cooks,
      table: { id: 'table', x: GUTTER + lane, width: table - 8 },
      board: { id: 'board', x: GUTTER, width: lane + table },
      ovens: [],
      rings: null,
      colds: [],
    }
  }
  const kitchen = evening.kitchens.find((candidate) => candidate.id === evening.host)
  const ovens = ofKind(kitchen, 'oven')
  const rings = ofKind(kitchen, 'ring').toSorted((a, b) => SIZES[a.size] - SIZES[b.size])
  const units = rings.flatMap((ring) =>
    Array.from({ length: ring.count }, (_, unit) => ({ kit: ring.id, unit, size: ring.size })),
  )
  const colds = ofKind(kitchen, 'cold').filter((cold) => (coldLanes.get(cold.id) ?? 0) > 0)
  const coldWidth = (id: string) => Math.max(34, (coldLanes.get(id) ?? 1) * LANE + 6)
  const kitWidth =
    (ovens.length + units.length + colds.length > 0 ? KIT_GAP - GAP : 0) +
    ovens.length * (OVEN + GAP) +
    (units.length > 0 ? Math.max(52, units.length * RING) + GAP : 0) +
    colds.reduce((sum, cold) => sum + coldWidth(cold.id) + GAP, 0)
  const seats = seatsOf(evening, order, asked.cook, asked.width - GUTTER - table - kitWidth)

  let x = GUTTER
  const take = (id: string, width: number, gap = 0): Column => {
    const column = { id, x, width }
    x += width + gap
    return column
  }
  const seat = ({ id, cooks, width }: Seat): CookColumn => ({ ...take(id, width), cooks, inset: cooks.length > 1 ? INSET : 0 })
  const leftColumns = seats.left.map(seat)
  const tableColumn = take('table', table)
  const rightColumns = seats.right.map(seat)
  if (rightColumns.length === 0) x += 8
  const board = { id: 'board', x: GUTTER, width: x - GUTTER }
  x += KIT_GAP
  const ovenColumns = ovens.map((oven) => take(oven.id, OVEN, GAP))
  const ringStart = x
  const ringBoard = units.length > 0 ? take('rings', Math.max(52, units.length * RING), GAP) : null
  const coldColumns = colds.map((cold) => take(cold.id, coldWidth(cold.id), GAP))
  return {
    width: x - GAP,
    cooks: [...leftColumns, ...rightColumns],
    table: tableColumn,
    board,
    ovens: ovenColumns,
    rings: ringBoard
      ? {
          board: ringBoard,
          units: units.map((unit, index) => ({
            ...unit,
            id: `${unit.kit}.${unit.unit}`,
            x: ringStart + (ringBoard.width - units.length * RING) / 2 + index * RING,
            width: RING,
          })),
        }
      : null,
    colds: coldColumns,
  }
}

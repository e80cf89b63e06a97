import { clashKey } from '#app/_words/clash.ts'
import type { Names } from '#app/_words/names.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import type { Columns } from './columns.ts'
import { ribbonOf } from './heat.ts'
import { type Held, lanesOf } from './held.ts'
import type { Box } from './outline.ts'
import type { Scale } from './scale.ts'

export interface Thread {
  readonly held: Held
  readonly x: number
  readonly width: number
  readonly y: number
  readonly height: number
  readonly knots: readonly number[]
}

export interface Hatch {
  readonly key: string
  /** What its clash is of. */
  readonly clash: string
  readonly box: Box
}

const COLD_LANES = 4

/** Side by side what stands in one cold place at once. */
export const lanesByKit = (held: readonly Held[]): ReadonlyMap<string, ReadonlyMap<string, number>> => {
  const kits = [...new Set(held.map((item) => item.kit))]
  return new Map(
    kits.map((kit) => [
      kit,
      lanesOf(
        held.filter((item) => item.kit === kit),
        COLD_LANES,
      ),
    ]),
  )
}

export const laneCount = (lanes: ReadonlyMap<string, number>): number =>
  Math.max(0, ...[...lanes.values()].map((lane) => lane + 1))

const threadOf = (held: Held, x: number, width: number, scale: Scale): Thread => {
  const [from, to] = [scale.y(held.from), scale.y(held.to)]
  const knots = held.touches.filter((at) => at > scale.from).map((at) => Math.min(scale.y(at), to))
  return { held, x, width, y: from, height: Math.max(3, to - from), knots }
}

/** What is in the kit, drawn: dishes in ovens, pans on rings, things in the cold, and what clashes over it. */
export const kitOf = (
  order: RunningOrder,
  names: Names,
  columns: Columns,
  held: readonly Held[],
  coldLanes: ReadonlyMap<string, ReadonlyMap<string, number>>,
  scale: Scale,
) => {
  const of = (kit: string) => held.filter((item) => item.kit === kit)
  const ribbons = columns.ovens.map((column) => {
    const lanes = lanesOf(of(column.id), 3)
    const line = order.ovens.find((oven) => oven.kit === column.id)?.line ?? []
    return {
      column,
      ribbon: ribbonOf(line, column, scale),
      threads: of(column.id).map((item) => threadOf(item, column.x + 17 + (lanes.get(item.key) ?? 0) * 20, 14, scale)),
    }
  })
  const pans = (columns.rings?.units ?? []).flatMap((unit) =>
    of(unit.kit)
      .filter((item) => item.unit === unit.unit)
      .map((item) => threadOf(item, unit.x + 2, unit.width - 4, scale)),
  )
  const colds = columns.colds.flatMap((column) =>
    of(column.id).map((item) => threadOf(item, column.x + 4 + (coldLanes.get(column.id)?.get(item.key) ?? 0) * 13, 11, scale)),
  )
  const threads = [...ribbons.flatMap((ribbon) => ribbon.threads), ...pans, ...colds]
  const kitAt = new Map<string, number>()
  for (const thread of threads) {
    const key = `${thread.held.step}.${thread.held.batch}`
    if (thread.held.step !== null && !kitAt.has(key))
      kitAt.set(key, names.kit(thread.held.kit)?.kit.kind === 'oven' ? thread.x : thread.x + thread.width / 2)
  }
  return { ribbons, pans, colds, kitAt, hatches: hatchesOf(order, columns, held, scale) }
}

/** A clash over kit: where it is wanted twice, for as long as one of the steps in question has it meanwhile. */
const hatchesOf = (order: RunningOrder, columns: Columns, held: readonly Held[], scale: Scale): readonly Hatch[] =>
  order.clashes.flatMap((clash, index): Hatch[] => {
    const { kit } = clash
    if (kit === null) return []
    const [from, to] = [Date.parse(clash.from), Date.parse(clash.to)]
    const having = held.filter(
      (item) => item.kit === kit && item.step !== null && clash.steps.includes(item.step) && item.from < to && item.to > from,
    )
    const units = columns.rings?.units.filter((unit) => unit.kit === kit) ?? []
    const wanted = units.filter((unit) => having.some((item) => item.unit === unit.unit))
    const boards = [...columns.ovens, ...columns.colds].filter((column) => column.id === kit)
    const start = having.length > 0 ? Math.max(from, Math.min(...having.map((item) => item.from))) : from
    const end = having.length > 0 ? Math.min(to, Math.max(...having.map((item) => item.to))) : to
    const [top, bottom] = [scale.y(start), scale.y(end)]
    return [...boards, ...(wanted.length > 0 ? wanted : units.slice(0, 1))].map((board) => ({
      key: `${index}.${board.id}`,
      clash: clashKey(clash),
      box: { x: board.x + 2, y: top, width: board.width - 4, height: Math.max(22, bottom - top) },
    }))
  })

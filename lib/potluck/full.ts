import { secondsOf } from '#lib/domain/duration.ts'
import type { Evening } from '#lib/domain/evening.ts'
import { serves } from '#lib/domain/kit-wants.ts'
import type { Kit, Use } from '#lib/domain/kitchen.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { instantOfMs, msOfInstant } from '#lib/domain/time.ts'

/** Kit of the host's that has no room, from when to when. */
export interface Busy {
  readonly kit: string
  readonly from: string
  readonly to: string
}

interface Held {
  readonly from: number
  readonly to: number
  readonly use: Use
}

/** What holds a piece of kit in an order, and when: steps, and dishes that wait in it. */
const heldIn = (evening: Evening, order: RunningOrder, kit: Kit): readonly Held[] => {
  const steps = new Map(evening.steps.map((step) => [step.id, step]))
  const dishes = new Map(evening.dishes.map((dish) => [dish.id, dish]))
  const isIts = (use: Use): boolean => serves(kit, use)
  const cues = order.cues.flatMap(({ step, way, kit: units, start, end }) =>
    units.some(({ id }) => id === kit.id)
      ? (steps.get(step)?.ways[way]?.uses ?? [])
          .filter(isIts)
          .map((use) => ({ from: msOfInstant(start), to: msOfInstant(end), use }))
      : [],
  )
  const waiting = order.keeping.flatMap(({ dish, kit: units, from, to }) =>
    units.some(({ id }) => id === kit.id)
      ? (dishes.get(dish)?.keeps.uses ?? []).filter(isIts).map((use) => ({ from: msOfInstant(from), to: msOfInstant(to), use }))
      : [],
  )
  return [...cues, ...waiting]
}

/** Whether one more use has room beside these in that kit. An oven has one heat at a time. */
const hasRoom = (kit: Kit, held: readonly Use[], wanted: Use): boolean => {
  switch (kit.kind) {
    case 'ring':
      return held.length < kit.count
    case 'oven': {
      if (wanted.kind !== 'oven') return false
      const others = held.flatMap((use) => (use.kind === 'oven' ? [use] : []))
      const shelves = others.reduce((sum, use) => sum + use.shelves, wanted.shelves)
      const low = Math.max(wanted.lowC, ...others.map(({ lowC }) => lowC))
      const high = Math.min(wanted.highC, ...others.map(({ highC }) => highC))
      return shelves <= kit.shelves && low <= high
    }
    case 'cold':
    case 'worktop':
      return sumOf(held, 'places') + placesOf(wanted) <= kit.places
    case 'tool':
      return sumOf(held, 'count') + (wanted.kind === 'tool' ? wanted.count : 0) <= kit.count
  }
}

const placesOf = (use: Use): number => ('places' in use ? use.places : 0)
const sumOf = (uses: readonly Use[], by: 'places' | 'count'): number =>
  uses.reduce((sum, use) => sum + (by === 'places' ? placesOf(use) : use.kind === 'tool' ? use.count : 0), 0)

/** Stretches in which a piece of kit has no room for the use. */
const fullStretches = (
  kit: Kit,
  held: readonly Held[],
  wanted: Use,
): readonly { readonly from: number; readonly to: number }[] => {
  const edges = [...new Set(held.flatMap(({ from, to }) => [from, to]))].toSorted((a, b) => a - b)
  const full: { from: number; to: number }[] = []
  for (const [at, from] of edges.entries()) {
    const to = edges[at + 1]
    if (to === undefined) continue
    const then = held.filter((one) => one.from < to && from < one.to).map(({ use }) => use)
    if (hasRoom(kit, then, wanted)) continue
    const last = full.at(-1)
    if (last?.to === from) last.to = to
    else full.push({ from, to })
  }
  return full
}

/**
 * Kit that the dish wants at the host's and that others hold in an order without it, just before its course comes to the table: the first
 * of its steps there for which no piece has room in any way. Null when there is room, by this reckoning.
 */
export const fullWhile = (evening: Evening, before: RunningOrder, dish: string): Busy | null => {
  const found = evening.dishes.find(({ id }) => id === dish)
  const course = before.courses.find((each) => each.course === found?.course)
  const host = evening.kitchens.find(({ id }) => id === evening.host)
  if (!found || !course || !host) return null
  const own = evening.steps.filter((step) => step.dish === dish && (step.role === 'finish' || step.role === 'plate'))
  let until = msOfInstant(course.toTable)
  for (const step of own.toReversed()) {
    const from = until - Math.max(...step.ways.map(({ takes }) => secondsOf(takes.likely))) * 1000
    const blocked = step.ways.map((way) => blockedBy(evening, before, host.kit, way.uses, from, until))
    const [first] = blocked
    if (first && blocked.every((one) => one !== null)) return first
    until = from
  }
  return null
}

/** The first of these uses for which no piece of the kit has room through that time, with the stretch in which it is full. */
const blockedBy = (
  evening: Evening,
  before: RunningOrder,
  kit: readonly Kit[],
  uses: readonly Use[],
  from: number,
  until: number,
): Busy | null => {
  for (const use of uses) {
    const fitting = kit.filter((piece) => serves(piece, use))
    const stretches = fitting.map((piece) => {
      const full = fullStretches(piece, heldIn(evening, before, piece), use).find((one) => one.from < until && from < one.to)
      return full ? { kit: piece.id, from: instantOfMs(evening, full.from), to: instantOfMs(evening, full.to) } : null
    })
    const [first] = stretches
    if (first && stretches.every((one) => one !== null)) return first
  }
  return null
}

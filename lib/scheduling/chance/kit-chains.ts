import { roundUp } from '#lib/scheduling/pace.ts'
import type { Kit, Problem, Use } from '#lib/scheduling/problem.ts'
import type { KitUse } from '#lib/scheduling/schedule.ts'
import { type Arc, arcsBetween, chain, type EventId, type Gate, gates, type Hold, inTime } from './event.ts'
import type { Step } from './steps.ts'

/** A finished dish and what it holds while it waits for the table. */
export interface Waiting extends Hold {
  readonly uses: readonly Use[]
  readonly kit: readonly KitUse[]
}

interface Held extends Hold {
  readonly use: Use
  readonly unit: number
  readonly vessel: string | undefined
}

/** A pan on a ring follows the one before it; an oven takes its time to heat or to cool between two dishes (H11, H12, H14). */
export const kitArcs = (problem: Problem, steps: readonly Step[], waiting: readonly Waiting[]): Arc[] =>
  problem.kit.flatMap((kit) => {
    const held = heldOf(kit, steps, waiting).sort(inTime)
    if (kit.kind === 'oven') return rampArcs(kit, held)
    if (kit.kind === 'store') return []
    const units = [...new Set(held.map(({ unit }) => unit))]
    return units.flatMap((unit) => ringArcs(held.filter((one) => one.unit === unit)))
  })

/** Shelves, amounts of a store and places of a group are waited for (H5, H13). */
export const kitGates = (
  problem: Problem,
  steps: readonly Step[],
  waiting: readonly Waiting[],
  last: (hold: Hold) => EventId,
): Gate[] => [
  ...problem.kit.flatMap((kit) => {
    if (kit.kind === 'ring') return []
    const capacity = kit.kind === 'oven' ? kit.shelves : kit.capacity
    return gates(heldOf(kit, steps, waiting).sort(inTime).map(withAmount), capacity, last)
  }),
  ...problem.together.flatMap(({ activities, most }) => {
    const own = steps.filter(({ placed }) => activities.includes(placed.activity.id))
    const turns = own.map((step) => ({
      ...holdOf(step),
      to: step.placed.placement.end,
      ends: [{ event: step.ends, lag: 0 }],
      amount: 1,
    }))
    return gates(turns.sort(inTime), most, last)
  }),
]

const holdOf = ({ index, placed: { activity, placement }, begins, holdEnds, holdTo }: Step): Hold => ({
  who: index,
  from: placement.start,
  to: holdTo,
  begins: activity.fact ? undefined : begins,
  ends: holdEnds,
})

const heldOf = (kit: Kit, steps: readonly Step[], waiting: readonly Waiting[]): Held[] => {
  const of = (hold: Hold, uses: readonly Use[], kits: readonly KitUse[], vessel?: string): Held[] =>
    uses.flatMap((use, i) => {
      const held = kits[i]
      return held?.id === kit.id && use.kind === kit.kind ? [{ ...hold, use, unit: held.unit, vessel }] : []
    })
  return [
    ...steps.flatMap((step) => {
      const { activity, mode, placement } = step.placed
      const vessel = activity.vessel === undefined ? undefined : `${activity.vessel}\n${activity.place}`
      return of(holdOf(step), mode.uses, placement.kit, vessel)
    }),
    ...waiting.flatMap((dish) => of(dish, dish.uses, dish.kit)),
  ]
}

const withAmount = (held: Held) => ({
  ...held,
  amount: held.use.kind === 'oven' ? held.use.shelves : held.use.kind === 'store' ? held.use.amount : 1,
})

/** A pan keeps its ring from its first step to its last, and its steps follow each other. */
const ringArcs = (held: readonly Held[]): Arc[] => {
  const pans = new Map<string, Held[]>()
  for (const one of held) {
    const pan = one.vessel ?? `${one.who} ${one.from}`
    pans.set(pan, [...(pans.get(pan) ?? []), one])
  }
  const spans = [...pans.values()].flatMap((pan): Hold[] => {
    const [first, last] = [pan[0], pan[pan.length - 1]]
    return first && last ? [{ ...first, to: Math.max(...pan.map(({ to }) => to)), ends: last.ends }] : []
  })
  const within = [...pans.values()].flatMap((pan) => chain(pan, () => true))
  return [...within, ...chain(spans, () => true)]
}

/** Between two dishes whose temperatures do not meet lies the time to heat or to cool. */
const rampArcs = (oven: Extract<Kit, { kind: 'oven' }>, held: readonly Held[]): Arc[] =>
  held.flatMap((after, j) =>
    held.slice(0, j).flatMap((before) => {
      const ramp = rampOf(oven, before.use, after.use)
      const apart = ramp > 0 && before.who !== after.who && before.to + ramp <= after.from
      return apart ? arcsBetween(before, after, ramp) : []
    }),
  )

const rampOf = ({ up, down }: { readonly up: number; readonly down: number }, before: Use, after: Use): number => {
  if (before.kind !== 'oven' || after.kind !== 'oven') return 0
  if (after.lowC > before.highC) return roundUp((after.lowC - before.highC) / up)
  return before.lowC > after.highC ? roundUp((before.lowC - after.highC) / down) : 0
}

import type { Use } from '#lib/scheduling/problem.ts'
import type { KitUse } from '#lib/scheduling/schedule.ts'
import { type Hold, isServable, type Scene, serves } from './scene.ts'
import { type Violation, violation } from './violation.ts'

/** H11, first half: each use has a kit of its place that can serve it. A fact that nothing can serve holds nothing. */
export const h11 = (scene: Scene): Violation[] => [
  ...scene.placed.flatMap(({ activity, mode, placement, planned, start }) =>
    unfit(scene, mode.uses, activity.place, placement.kit, planned, start, { activities: [activity.id] }),
  ),
  ...scene.schedule.keeping.flatMap((keeping) => {
    const of = scene.delivered.find(({ delivery }) => delivery.id === keeping.delivery)
    if (!of) return []
    const { uses, place } = of.delivery.keeps
    const planned = of.served.planned && !of.happened
    return unfit(scene, uses, place, keeping.kit, planned, keeping.from, { deliveries: [of.delivery.id] })
  }),
]

const unfit = (
  { problem }: Scene,
  uses: readonly Use[],
  place: string,
  held: readonly KitUse[],
  planned: boolean,
  at: number,
  parties: Partial<Violation>,
): Violation[] => {
  if (!planned && held.length === 0 && uses.some((use) => !isServable(problem, use, place))) return []
  if (held.length !== uses.length)
    return [violation('H11', at, { what: 'missing', wanted: uses.length, found: held.length }, parties)]
  return uses.flatMap((use, index) => {
    const entry = held[index]
    const kit = problem.kit.find(({ id }) => id === entry?.id)
    if (entry && kit && serves(kit, entry.unit, use, place)) return []
    return [violation('H11', at, { what: 'unfit' }, { ...parties, kit: entry ? [entry.id] : [] })]
  })
}

/** H13: shelves and amounts are never exceeded while something planned holds the kit. Judged whenever a hold begins. */
export const h13 = ({ problem, holds }: Scene): Violation[] =>
  problem.kit.flatMap((kit) => {
    if (kit.kind === 'ring') return []
    const capacity = kit.kind === 'oven' ? kit.shelves : kit.capacity
    const here = holds.filter((hold) => hold.kit.id === kit.id)
    return [...new Set(here.map(({ from }) => from))].flatMap((at) => {
      const held = here.filter(({ from, to }) => from <= at && at < to)
      const found = held.reduce((sum, { use }) => sum + amountOf(use), 0)
      if (found <= capacity || !held.some(({ planned }) => planned)) return []
      return [violation('H13', at, { what: 'full', wanted: capacity, found }, { kit: [kit.id], ...partiesOf(held) })]
    })
  })

const amountOf = (use: Use): number => (use.kind === 'oven' ? use.shelves : use.kind === 'store' ? use.amount : 1)

/** Who holds, as the parties of a violation. */
export const partiesOf = (holds: readonly Hold[]): Pick<Violation, 'activities' | 'deliveries'> => ({
  activities: [...new Set(holds.flatMap(({ by }) => ('activity' in by ? [by.activity.activity.id] : [])))],
  deliveries: [...new Set(holds.flatMap(({ by }) => ('delivery' in by ? [by.delivery.id] : [])))],
})

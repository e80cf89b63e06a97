import type { KitModel, UseModel } from './model.ts'
import type { Kit, Problem, Use } from './problem.ts'

/** Every ring on its own, then ovens and stores. */
export const kitModels = (problem: Problem): KitModel[] => {
  const units = problem.kit.flatMap((kit): Omit<KitModel, 'index'>[] => {
    if (kit.kind === 'ring')
      return Array.from({ length: kit.count }, (_, unit) => ({
        id: kit.id,
        unit,
        kind: kit.kind,
        capacity: 1,
        up: 1,
        down: 1,
        heatUp: 0,
      }))
    if (kit.kind === 'oven')
      return [
        { id: kit.id, unit: 0, kind: kit.kind, capacity: kit.shelves, up: kit.up, down: kit.down, heatUp: kit.maxC / kit.up },
      ]
    return [{ id: kit.id, unit: 0, kind: kit.kind, capacity: kit.capacity, up: 1, down: 1, heatUp: 0 }]
  })
  return units.map((unit, index) => ({ ...unit, index }))
}

/**
 * Each use with the kit of its place that could serve it, the smallest rings first. For a fact, which happened on
 * whatever there was, kit that is too small comes after.
 */
export const modelUses = (
  problem: Problem,
  models: readonly KitModel[],
  place: string,
  uses: readonly Use[],
  fact = false,
): readonly UseModel[] => {
  const here = problem.kit.filter((kit) => kit.place === place)
  return uses.map((use): UseModel => {
    const able = here.filter((kit) => isAble(kit, use)).sort(bySize)
    const forced = fact ? here.filter((kit) => isOfKind(kit, use) && !able.includes(kit)) : []
    const kits = [...able, ...forced].flatMap(({ id }) => models.filter((m) => m.id === id).map((m) => m.index))
    if (use.kind !== 'oven') return { ...PLAIN, kind: use.kind, kits, amount: use.kind === 'ring' ? 1 : use.amount }
    const { shelves, lowC, highC, preheated, doorShut } = use
    return { kind: 'oven', kits, amount: shelves, low: lowC, high: highC, preheated, door: doorShut ?? 0 }
  })
}
const PLAIN = { low: 0, high: 0, preheated: false, door: 0 }

const bySize = (a: Kit, b: Kit): number => (a.kind === 'ring' && b.kind === 'ring' ? a.size - b.size : 0)

const isOfKind = (kit: Kit, use: Use): boolean => {
  if (kit.kind === 'ring') return use.kind === 'ring' && kit.size >= use.size
  if (kit.kind === 'oven') return use.kind === 'oven' && (use.oven ?? kit.id) === kit.id
  return use.kind === 'store' && kit.of === use.of
}

const isAble = (kit: Kit, use: Use): boolean => {
  if (!isOfKind(kit, use)) return false
  if (kit.kind === 'oven' && use.kind === 'oven') return kit.shelves >= use.shelves && kit.maxC >= use.lowC
  return kit.kind !== 'store' || use.kind !== 'store' || kit.capacity >= use.amount
}

import type { KitModel, UseModel } from './model.ts'
import type { Problem, Use } from './problem.ts'

/** Every ring on its own, then ovens and stores. */
export const kitModels = (problem: Problem): KitModel[] => {
  const units = problem.kit.flatMap((kit): Omit<KitModel, 'index'>[] => {
    if (kit.kind === 'ring')
      return Array.from({ length: kit.count }, (_, unit) => ({ id: kit.id, unit, kind: kit.kind, capacity: 1, up: 1, down: 1 }))
    if (kit.kind === 'oven') return [{ id: kit.id, unit: 0, kind: kit.kind, capacity: kit.shelves, up: kit.up, down: kit.down }]
    return [{ id: kit.id, unit: 0, kind: kit.kind, capacity: kit.capacity, up: 1, down: 1 }]
  })
  return units.map((unit, index) => ({ ...unit, index }))
}

/** Each use with the kit of its place that could serve it: the smallest rings first. */
export const modelUses = (
  problem: Problem,
  models: readonly KitModel[],
  place: string,
  uses: readonly Use[],
): readonly UseModel[] => {
  const modelsOf = (ids: readonly string[]) => ids.flatMap((id) => models.filter((m) => m.id === id).map((m) => m.index))
  return uses.map((use): UseModel => {
    const here = problem.kit.filter((kit) => kit.place === place)
    const plain = { low: 0, high: 0, preheated: false, door: 0 }
    if (use.kind === 'ring') {
      const rings = here.flatMap((kit) => (kit.kind === 'ring' && kit.size >= use.size ? [kit] : []))
      const sorted = rings.sort((a, b) => a.size - b.size).map((kit) => kit.id)
      return { kind: 'ring', kits: modelsOf(sorted), amount: 1, ...plain }
    }
    if (use.kind === 'oven') {
      const ovens = here.filter(
        (kit) => kit.kind === 'oven' && kit.shelves >= use.shelves && kit.maxC >= use.lowC && (use.oven ?? kit.id) === kit.id,
      )
      return {
        kind: 'oven',
        kits: modelsOf(ovens.map((kit) => kit.id)),
        amount: use.shelves,
        low: use.lowC,
        high: use.highC,
        preheated: use.preheated,
        door: use.doorShut ?? 0,
      }
    }
    const stores = here.filter((kit) => kit.kind === 'store' && kit.of === use.of && kit.capacity >= use.amount)
    return { kind: 'store', kits: modelsOf(stores.map((kit) => kit.id)), amount: use.amount, ...plain }
  })
}

import { gapBetween } from './kit-fits.ts'
import type { Act } from './model.ts'
import type { Place } from './place.ts'
import type { State } from './state.ts'

/** What happens where this place would be, so many ticks later: with its cooks, on its rings, in its oven and stores; and what is carried on its trip. */
export const inTheWayAt = (state: State, place: Place, by: number): ReadonlySet<Act> => {
  const found = new Set<Act>()
  const from = place.start + by
  const to = place.holdEnd + by
  const visit = (who: number) => {
    const other = state.model.acts[who]
    if (other && other !== place.act) found.add(other)
  }
  for (const piece of place.pieces)
    for (const item of state.cookLanes[piece.cook.index] ?? [])
      if ((item.from < piece.to + by && item.to > piece.from + by) || (place.act.road && item.kind === 'road')) visit(item.who)
  const rings = place.vesselKit < 0 ? [] : [place.vesselKit]
  for (const [i, index] of place.kit.entries()) {
    const kit = state.model.kits[index]
    const use = place.mode.uses[i]
    if (!kit || !use) continue
    if (kit.kind === 'ring') rings.push(index)
    const lane = state.kitLanes[index] ?? []
    let held = use.amount
    for (const item of lane) if (item.from < to && item.to > from) held += item.amount
    for (const item of lane) {
      const apart = kit.kind === 'oven' && (use.low > item.high || use.high < item.low)
      if (
        apart
          ? item.from < to + gapBetween(kit, use, item) && from < item.to + gapBetween(kit, item, use)
          : held > kit.capacity && item.from < to && item.to > from
      )
        visit(item.who)
    }
  }
  for (const ring of rings) for (const item of state.kitLanes[ring] ?? []) if (item.from < to && item.to > from) visit(item.who)
  return found
}

import type { Names } from '#app/_words/names.ts'
import { shorten } from '#app/_words/shorten.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'

/** One thing in one unit of kit for a stretch of time. */
export interface Held {
  readonly key: string
  readonly kit: string
  readonly unit: number
  readonly from: number
  readonly to: number
  readonly name: string
  /** The cue's step; null while a finished dish is kept there. */
  readonly step: string | null
  readonly batch: number
  readonly touches: readonly number[]
}

/**
 * What occupies which kit when. Steps of one vessel on one ring are one pan, from the first start to the last end.
 */
export const heldOf = (evening: Evening, order: RunningOrder, names: Names): readonly Held[] => {
  const pans = new Map<string, Held>()
  const single: Held[] = []
  for (const cue of order.cues) {
    const step = names.step(cue.step)
    const dish = names.dish(step?.dish ?? null)
    for (const { id, unit } of cue.kit) {
      const isCold = names.kit(id)?.kit.kind === 'cold'
      const name = shorten((isCold ? dish?.name : step?.does) || step?.does || '', 22)
      const held: Held = {
        key: `${cue.step}.${cue.batch}.${id}.${unit}`,
        kit: id,
        unit,
        from: Date.parse(cue.start),
        to: Date.parse(cue.end),
        name,
        step: cue.step,
        batch: cue.batch,
        touches: cue.touches.map((touch) => Date.parse(touch.at)),
      }
      const pan = step?.vessel && names.kit(id)?.kit.kind === 'ring' ? `${step.vessel}.${cue.batch}.${id}.${unit}` : null
      const before = pan === null ? undefined : pans.get(pan)
      if (pan === null) single.push(held)
      else
        pans.set(
          pan,
          before
            ? {
                ...before,
                from: Math.min(before.from, held.from),
                to: Math.max(before.to, held.to),
                touches: [...before.touches, ...held.touches],
              }
            : held,
        )
    }
  }
  const keeping = order.keeping.flatMap((keep, index) =>
    keep.kit.map(({ id, unit }) => ({
      key: `keep.${index}.${id}.${unit}`,
      kit: id,
      unit,
      from: Date.parse(keep.from),
      to: Date.parse(keep.to),
      name: shorten(evening.dishes.find((dish) => dish.id === keep.dish)?.name ?? '', 18),
      step: null,
      batch: 0,
      touches: [],
    })),
  )
  return [...single, ...pans.values(), ...keeping].filter((held) => held.to > held.from).sort((a, b) => a.from - b.from)
}

/** Puts overlapping stretches side by side, at most `most` of them; what is beyond shares the last lane. */
export const lanesOf = (held: readonly Held[], most: number): ReadonlyMap<string, number> => {
  const free: number[] = []
  const lanes = new Map<string, number>()
  for (const item of held) {
    const found = free.findIndex((until) => until <= item.from)
    const lane = found >= 0 ? found : free.length < most ? free.length : most - 1
    free[lane] = Math.max(free[lane] ?? 0, item.to)
    lanes.set(item.key, lane)
  }
  return lanes
}

import { whyLeft } from './left.ts'
import type { Place } from './place.ts'
import { readyOf } from './price.ts'
import type { Keeping, KitUse, LeftOut, Placement, Schedule } from './schedule.ts'
import type { State } from './state.ts'

/** The schedule in the problem's own terms. */
export const copyOut = (state: State): Schedule => {
  const { model } = state
  const placements = state.places.flatMap((place) => (place ? [placementOf(state, place)] : []))
  placements.sort((a, b) => a.start - b.start || (a.activity < b.activity ? -1 : a.activity > b.activity ? 1 : 0))
  const left = model.acts.flatMap((act): LeftOut[] =>
    state.places[act.index] ? [] : [{ activity: act.activity.id, because: whyLeft(state, act) }],
  )
  return {
    placements,
    servings: model.servings.map((serving, i) => ({ serving: serving.id, toTable: state.moments[i] ?? 0 })),
    keeping: model.deliveries.flatMap((delivery): Keeping[] => {
      const keep = state.keeps[delivery.index]
      if (!keep || readyOf(state, delivery) === Number.NEGATIVE_INFINITY) return []
      return [{ delivery: delivery.id, from: keep.from, to: keep.to, kit: kitUses(state, keep.kit ?? [], -1) }]
    }),
    left,
  }
}

const placementOf = (state: State, place: Place): Placement => {
  const { act } = place
  const ring = act.vessel >= 0 ? (state.vessels[act.vessel]?.kit ?? -1) : -1
  return {
    activity: act.activity.id,
    mode: place.mode.index,
    start: place.start,
    end: place.end,
    cooks: place.team.map((cook) => cook.id),
    kit: kitUses(state, place.kit, ring),
    touches: place.touches.map(({ touch, at, cook }) => ({ touch, at, cook: cook.id })),
  }
}

const kitUses = (state: State, kit: readonly number[], vessel: number): KitUse[] =>
  kit.flatMap((index) => {
    const model = state.model.kits[index < 0 ? vessel : index]
    return model ? [{ id: model.id, unit: model.unit }] : []
  })

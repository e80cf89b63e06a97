import type { Keep, Place } from './place.ts'
import { put, putKeep, type State, setMoments, spanVessel, take } from './state.ts'

/** All that a schedule in the making decides; cheap to take, and to go back to. */
export interface Snapshot {
  readonly places: readonly (Place | undefined)[]
  readonly moments: readonly number[]
  readonly vessels: readonly number[]
  readonly keeps: readonly (Keep | undefined)[]
}

export const snapshotOf = (state: State): Snapshot => ({
  places: [...state.places],
  moments: [...state.moments],
  vessels: state.vessels.map((vessel) => vessel.kit),
  keeps: [...state.keeps],
})

/** Post: the state is as when the snapshot was taken. */
export const restore = (state: State, snapshot: Snapshot): void => {
  const { acts, deliveries } = state.model
  for (const delivery of deliveries)
    if (state.keeps[delivery.index] !== snapshot.keeps[delivery.index]) putKeep(state, delivery, undefined)
  for (const act of acts) if (state.places[act.index] !== snapshot.places[act.index]) take(state, act)
  if (snapshot.moments.some((moment, i) => moment !== state.moments[i])) setMoments(state, snapshot.moments)
  for (const place of snapshot.places) if (place && !state.places[place.act.index]) put(state, place)
  for (const [i, kit] of snapshot.vessels.entries()) if (state.vessels[i]?.kit !== kit) spanVessel(state, i, kit)
  for (const delivery of deliveries)
    if (state.keeps[delivery.index] !== snapshot.keeps[delivery.index]) putKeep(state, delivery, snapshot.keeps[delivery.index])
}

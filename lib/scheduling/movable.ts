import type { Act, Model } from './model.ts'
import type { Tick } from './problem.ts'
import type { State } from './state.ts'
import { isMovedTo } from './tally.ts'

/** What the search may move: no facts, nothing that has no way, nothing frozen that stands as told. */
export const movable = (state: State): readonly Act[] => {
  const { all, frozen } = movableOf(state.model)
  if (frozen.every((act) => !isHeld(state, act))) return all
  return all.filter((act) => !isHeld(state, act))
}

export const isMovable = (state: State, act: Act): boolean => !act.fact && act.modes.length > 0 && !isHeld(state, act)

/** Moments no earlier than what is not going to leave its place allows. */
export const afterWhatStays = (state: State, moments: readonly Tick[], leaves: (act: Act) => boolean): Tick[] => {
  const later = [...moments]
  for (const { index, delivery } of state.model.acts) {
    const place = state.places[index]
    if (!place || !delivery || leaves(place.act)) continue
    const serving = delivery.serving.index
    later[serving] = Math.max(later[serving] as number, place.end - delivery.late)
  }
  return later
}

const isHeld = (state: State, act: Act): boolean => {
  const place = state.places[act.index]
  return act.told?.frozen === true && place !== undefined && !isMovedTo(act.told, place.start, place.mode, place.team)
}

const known = new WeakMap<Model, { readonly all: readonly Act[]; readonly frozen: readonly Act[] }>()
const movableOf = (model: Model) => {
  const found = known.get(model)
  if (found) return found
  const all = model.acts.filter((act) => !act.fact && act.modes.length > 0)
  const made = { all, frozen: all.filter((act) => act.told?.frozen) }
  known.set(model, made)
  return made
}

import { put, putKeep, type State, setMoments, spanVessel, take, type Undo } from './state.ts'

/** Begins to write down what `put`, `take`, `putKeep`, `spanVessel` and `setMoments` change; a position to go back to. */
export const begin = (state: State): number => {
  state.recording = true
  return state.journal.length
}

/** What was done is done: positions taken before are void. */
export const forget = (state: State): void => {
  state.journal.length = 0
}

/** Post: the state is as at that position, at a cost of no more than what was done since. */
export const rollback = (state: State, to: number): void => {
  const { journal } = state
  state.recording = false
  for (let i = journal.length - 1; i >= to; i--) undo(state, journal[i] as Undo)
  journal.length = to
  state.recording = true
}

const undo = (state: State, done: Undo): void => {
  if (done.kind === 'moments') setMoments(state, done.moments)
  else if (done.kind === 'keep') putKeep(state, done.delivery, done.keep)
  else if (done.kind === 'vessel') spanVessel(state, done.vessel, done.kit)
  else {
    const { place, kit } = done
    if (done.kind === 'put') take(state, place.act)
    else put(state, place)
    if (place.vesselKit >= 0) spanVessel(state, place.act.vessel, kit)
  }
}

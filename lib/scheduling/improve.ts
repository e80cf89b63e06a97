import { begin, forget, rollback } from './journal.ts'
import { movable } from './movable.ts'
import { chooseMove } from './moves.ts'
import { FEW, polish } from './polish.ts'
import { price } from './price.ts'
import type { Random } from './random.ts'
import type { Budget } from './schedule.ts'
import { restore, type Snapshot, snapshotOf } from './snapshot.ts'
import type { State } from './state.ts'
import { leaveOutUnsafe, worth } from './unsafe.ts'

/** Steps of the first round for each activity that can move, and how much longer each next round is. */
const FIRST_ROUND = 4
const GROWTH = 2
/** How much dearer a step may be at the beginning of a round, and at its end, to be gone on from. */
const WARM = 60
const HOT = 2000
const COLD = 0.05

/** The state alone made better; see `compete`. */
export const improve = (state: State, budget: Budget, random: Random): void => {
  compete([state], budget, random)
}

/**
 * Large neighbourhood search (Shaw 1998, "Using constraint programming and local search methods to solve vehicle routing
 * problems") in rounds of simulated annealing, each twice as long as the one before; of several beginnings the better half
 * goes on after every round. No round knows the budget, so that more steps go on where fewer would have ended: more is
 * never dearer. Post: the answer is the cheapest schedule seen.
 */
export const compete = (beginnings: readonly State[], budget: Budget, random: Random): State => {
  let spent = 0
  for (const state of beginnings) spent += state.steps
  let runs = beginnings.map((state) => ({ state, cost: worth(state) }))
  const done = () => spent >= budget.steps || budget.stop?.() === true || runs.some(({ cost }) => cost < 1e-9)
  for (let length = FIRST_ROUND * lengthOf(runs); !done(); length *= GROWTH) {
    for (const run of runs) {
      if (done()) break
      run.state.steps = spent
      run.cost = round(run.state, run.cost, length, budget, random)
      spent = run.state.steps
    }
    runs.sort((a, b) => a.cost - b.cost)
    runs = runs.slice(0, Math.ceil(runs.length / 2))
  }
  const [best] = runs.sort((a, b) => a.cost - b.cost)
  return best?.state as State
}

const lengthOf = (runs: readonly { readonly state: State }[]): number =>
  Math.max(30, ...runs.map(({ state }) => movable(state).length))

/**
 * One round of annealing and then of small moves of what is left once the unsafe is left out: it may be served earlier.
 * Post: never dearer; answers what it costs.
 */
const round = (state: State, cost: number, length: number, budget: Budget, random: Random): number => {
  const annealed = anneal(state, cost, length, budget, random)
  const before = snapshotOf(state)
  leaveOutUnsafe(state)
  const ends = Math.min(budget.steps, state.steps + length * (movable(state).length <= FEW ? 0.4 : 0.15))
  polish(state, { ...budget, steps: ends }, random)
  forget(state)
  const now = worth(state)
  if (now <= annealed) return now
  restore(state, before)
  forget(state)
  return annealed
}

const anneal = (state: State, least0: number, length: number, budget: Budget, random: Random): number => {
  const from = state.steps
  let best: Snapshot = snapshotOf(state)
  let least = least0
  let cost = price(state)
  forget(state)
  for (let turn = 0; state.steps < Math.min(budget.steps, from + length); turn++) {
    if (least < 1e-9 || (budget.stop && turn % 16 === 0 && budget.stop())) break
    const before = state.steps
    const position = begin(state)
    chooseMove(state, random)(state, random)
    if (state.steps === before) state.steps++
    const now = price(state)
    const luck = random.unit()
    const warmth = (WARM + Math.min(HOT, 0.1 * least)) * (1 - (state.steps - from) / length) ** 2 + COLD
    if (now > cost + warmth * luck ** 3) {
      rollback(state, position)
      continue
    }
    cost = now
    if (cost < least - 1e-9) {
      const finished = worth(state)
      if (finished < least - 1e-9) {
        best = snapshotOf(state)
        least = finished
      }
    }
    forget(state)
  }
  restore(state, best)
  forget(state)
  return least
}

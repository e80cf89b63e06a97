import { backward } from './construct.ts'
import { resettle } from './facts.ts'
import { insert } from './insert.ts'
import type { Act } from './model.ts'
import {
  inItsWay,
  movable,
  type Neighbourhood,
  oneActivity,
  oneChain,
  oneCook,
  oneDelivery,
  oneKit,
  oneServing,
  oneWindow,
  somethingHurt,
} from './neighbourhoods.ts'
import { FEW, polish } from './polish.ts'
import { price, servingsPrice } from './price.ts'
import type { Random } from './random.ts'
import type { Budget } from './schedule.ts'
import { shiftServings } from './shift.ts'
import { restore, type Snapshot, snapshotOf } from './snapshot.ts'
import { putKeep, type State, take } from './state.ts'

const TURNS: readonly (readonly [Neighbourhood, number])[] = [
  [oneActivity, 3],
  [oneWindow, 4],
  [oneChain, 3],
  [oneKit, 2],
  [oneCook, 2],
  [oneDelivery, 2],
  [oneServing, 1],
]
const TURNS_SUM = TURNS.reduce((sum, [, share]) => sum + share, 0)
/** Now and then chance chooses who touches what, and when. */
const JITTER = 30
/** How much dearer a step may be at the beginning, and at the end, to be gone on from. */
const WARM = 60
const HOT = 2000
const COLD = 0.05
/** The share of the steps kept for the last touches: with few activities they reach every order of two. */
const polishShare = (state: State): number => (movable(state).length <= FEW ? 0.3 : 0.12)

/**
 * Large neighbourhood search (Shaw 1998, "Using constraint programming and local search methods to solve vehicle routing
 * problems"): take a few related activities out, put them back where each is cheapest, go on from there if it is not much
 * dearer; less and less so. Post: the state is the cheapest schedule seen.
 */
export const improve = (state: State, budget: Budget, random: Random): void => {
  const share = Math.max(0, budget.steps - state.steps) * polishShare(state)
  search(state, { ...budget, steps: budget.steps - share }, random)
  polish(state, budget, random)
}

/** The search alone, without the last touches. */
export const search = (state: State, budget: Budget, random: Random): void => {
  let current = snapshotOf(state)
  let cost = price(state)
  let best: Snapshot = current
  let least = cost
  const begin = state.steps
  let sinceBest = 0
  for (let round = 0; state.steps < budget.steps; round++) {
    if (budget.stop && round % 16 === 0 && budget.stop()) break
    const progress = (state.steps - begin) / Math.max(1, budget.steps - begin)
    const before = state.steps
    const luckyMove = random.unit()
    const often = servingsPrice(state) > 0 ? 0.3 : 0.12
    if (luckyMove < often) shiftServings(state, random)
    else if (luckyMove < often + 0.2) mend(state, random)
    else rebuild(state, choose(random)(state, random), random)
    if (state.steps === before) state.steps++
    const now = price(state)
    const warmth = (WARM + Math.min(HOT, 0.1 * least)) * (1 - progress) ** 2 + COLD
    const luck = random.unit()
    if (now <= cost + warmth * luck * luck * luck) {
      current = snapshotOf(state)
      cost = now
    } else restore(state, current)
    if (cost < least - 1e-9) {
      best = current
      least = cost
      sinceBest = 0
    } else if (++sinceBest > 400) {
      restore(state, best)
      current = best
      cost = least
      sinceBest = 0
    }
  }
  restore(state, best)
}

const choose = (random: Random): Neighbourhood => {
  let turn = random.unit() * TURNS_SUM
  for (const [neighbourhood, share] of TURNS) {
    turn -= share
    if (turn < 0) return neighbourhood
  }
  return oneWindow
}

/** Lets something that breaks a wish or has no place go first where it likes, and what was in its way after it. */
const mend = (state: State, random: Random): void => {
  const hurt = somethingHurt(state, random)
  if (!hurt) rebuild(state, oneWindow(state, random), random)
  else rebuild(state, [hurt, ...inItsWay(state, hurt, random)], random, hurt)
}

/** Takes them out and puts them back one by one, mostly latest first; what had no place is tried as well. */
export const rebuild = (state: State, acts: readonly Act[], random: Random, first?: Act): void => {
  const missing = movable(state).filter((act) => !state.places[act.index])
  const out = [...new Set([...acts, ...missing])]
  const starts = new Map(out.map((act) => [act, state.places[act.index]?.start]))
  for (const act of out) {
    if (act.delivery) putKeep(state, act.delivery, undefined)
    take(state, act)
  }
  for (const act of state.model.underWay) if (random.unit() < 0.3) resettle(state, act, random)
  state.jitter = random.unit() < 0.2 ? JITTER : 0
  const blink = [0, 0.1, 0.1, 0.5][random.below(4)] ?? 0
  for (const act of ordered(state, out, missing, random, first)) {
    const start = starts.get(act)
    insert(state, act, random, { ...(start === undefined ? {} : { start }), blink })
  }
  state.jitter = 0
}

const ordered = (
  state: State,
  acts: readonly Act[],
  missing: readonly Act[],
  random: Random,
  first: Act | undefined,
): readonly Act[] => {
  const luck = random.unit()
  const order = backward(state, acts)
  if (luck < 0.15) order.reverse()
  else if (luck < 0.4) shuffle(order, random)
  if (first) return [first, ...order.filter((act) => act !== first)]
  if (missing.length === 0 || random.unit() < 0.3) return order
  return [...order.filter((act) => missing.includes(act)), ...order.filter((act) => !missing.includes(act))]
}

const shuffle = (acts: Act[], random: Random): void => {
  for (let i = acts.length - 1; i > 0; i--) {
    const j = random.below(i + 1)
    const a = acts[i]
    const b = acts[j]
    if (!a || !b) continue
    acts[i] = b
    acts[j] = a
  }
}

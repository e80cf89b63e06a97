import type { Act } from './model.ts'
import {
  inItsWay,
  type Neighbourhood,
  oneActivity,
  oneChain,
  oneCook,
  oneDelivery,
  oneKit,
  oneServing,
  oneWindow,
  rivalDishes,
  somethingHurt,
} from './neighbourhoods.ts'
import { servingsPrice } from './price.ts'
import { push } from './push.ts'
import type { Random } from './random.ts'
import { dishByDish, rebuild, startingWith } from './rebuild.ts'
import { shiftServings } from './shift.ts'
import type { State } from './state.ts'

export type Move = (state: State, random: Random) => void

const anew =
  (choose: Neighbourhood): Move =>
  (state, random) =>
    rebuild(state, choose(state, random), random)

/** Lets something that breaks a wish or has no place go first where it likes, and what was in its way after it. */
const mend: Move = (state, random) => {
  const hurt: Act | undefined = somethingHurt(state, random)
  if (!hurt) rebuild(state, oneWindow(state, random), random)
  else rebuild(state, [hurt, ...inItsWay(state, hurt, random)], random, startingWith(hurt))
}

/** Whole dishes that are in each other's way, one after the other. */
const rivals: Move = (state, random) => rebuild(state, rivalDishes(state, random), random, dishByDish)

/** How often each is made while wishes are broken, and once all are kept. */
const MOVES: readonly (readonly [Move, number, number])[] = [
  [anew(oneActivity), 3, 20],
  [anew(oneWindow), 4, 2],
  [anew(oneChain), 3, 10],
  [anew(oneKit), 2, 4],
  [anew(oneCook), 2, 3],
  [anew(oneDelivery), 2, 5],
  [anew(oneServing), 1, 1],
  [mend, 5, 1],
  [rivals, 5, 1],
  [push, 15, 15],
  [shiftServings, 3, 1],
]
const HURT = MOVES.reduce((sum, [, share]) => sum + share, 0)
const WELL = MOVES.reduce((sum, [, , share]) => sum + share, 0)

export const chooseMove = (state: State, random: Random): Move => {
  const hurts = state.tally.over > 0 || state.tally.left > 0 || servingsPrice(state) > 0
  let turn = random.unit() * (hurts ? HURT : WELL)
  for (const [move, hurt, well] of MOVES) {
    turn -= hurts ? hurt : well
    if (turn < 0) return move
  }
  return mend
}

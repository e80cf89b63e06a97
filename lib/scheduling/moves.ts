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

const rivals: Move = (state, random) => rebuild(state, rivalDishes(state, random), random, dishByDish)
/** How often each is made, of all. */
const MOVES: readonly (readonly [Move, number])[] = [
  [anew(oneActivity), 3],
  [anew(oneWindow), 4],
  [anew(oneChain), 3],
  [anew(oneKit), 2],
  [anew(oneCook), 2],
  [anew(oneDelivery), 2],
  [anew(oneServing), 1],
  [mend, 5],
  [rivals, 5],
  [push, 15],
  [shiftServings, 3],
]
const SUM = MOVES.reduce((sum, [, share]) => sum + share, 0)

export const chooseMove = (random: Random): Move => {
  let turn = random.unit() * SUM
  for (const [move, share] of MOVES) {
    turn -= share
    if (turn < 0) return move
  }
  return mend
}

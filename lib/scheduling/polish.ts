import { insert } from './insert.ts'
import { begin, forget, rollback } from './journal.ts'
import { refreshKeep } from './keeping.ts'
import type { Act } from './model.ts'
import { movable } from './movable.ts'
import { pickSome } from './neighbourhoods.ts'
import type { Random } from './random.ts'
import type { Budget } from './schedule.ts'
import { type Shift, shift } from './shift.ts'
import { type State, take } from './state.ts'
import { worth } from './unsafe.ts'

type Move = (state: State, random: Random) => void

/** Every small move in turn, again while one helps and steps are left. Post: never dearer when finished. */
export const polish = (state: State, budget: Budget, random: Random): void => {
  let cost = worth(state)
  for (let idle = 0; idle < IDLE; idle++) {
    for (const move of [...shifts(state), ...singles(state), ...pairs(state), ...deals(state)]) {
      if (state.steps >= budget.steps || budget.stop?.()) return
      const before = begin(state)
      state.steps++
      move(state, random)
      const now = worth(state)
      if (now < cost - 1e-9) {
        cost = now
        idle = -1
        forget(state)
      } else rollback(state, before)
    }
  }
}

/** Chance decides between equals, so a round that did not help may help the next time. */
const IDLE = 8

const MANNERS: readonly Shift['manner'][] = ['stay', 'along', 'anew']

const shifts = (state: State): Move[] =>
  state.model.servings
    .filter((serving) => !serving.served)
    .flatMap((serving) =>
      [-1, 1, -3, 3].flatMap((by) =>
        [false, true].flatMap((alone) =>
          MANNERS.map(
            (manner): Move =>
              (at, random) =>
                shift(at, { serving, by, alone, manner }, random),
          ),
        ),
      ),
    )

const singles = (state: State): Move[] => movable(state).map((act) => again([act]))

/** So few activities that each two of them can be tried in both orders. */
export const FEW = 10

const pairs = (state: State): Move[] => {
  const acts = movable(state)
  if (acts.length > FEW) return []
  return acts.flatMap((one) => acts.flatMap((other) => (one === other ? [] : [again([one, other])])))
}

/** All of them anew, in orders that chance gives. */
const deals = (state: State): Move[] => {
  const acts = movable(state)
  if (acts.length > FEW) return []
  const deal: Move = (at, random) => again(pickSome(acts, acts.length, random), random.unit() / 2)(at, random)
  return Array.from({ length: DEALS }, () => deal)
}
const DEALS = 24

const again =
  (acts: readonly Act[], blink = 0): Move =>
  (state, random) => {
    for (const act of acts) take(state, act)
    for (const { delivery } of acts) if (delivery) refreshKeep(state, delivery)
    for (const act of acts) insert(state, act, random, { blink, thorough: true })
  }

import { backward, scarceFirst } from './construct.ts'
import { resettle } from './facts.ts'
import type { Act } from './model.ts'
import { movable } from './movable.ts'
import type { Random } from './random.ts'
import { putKeep, type State, take } from './state.ts'
import { insertTrip } from './trip.ts'

/** Now and then chance chooses who touches what, and when. */
const JITTER = 30

type Order = (state: State, acts: readonly Act[], random: Random) => readonly Act[]

/** Takes them out and puts them back one by one, where each is cheapest; what had no place is tried as well. */
export const rebuild = (state: State, acts: readonly Act[], random: Random, order: Order = mostlyBackward): void => {
  const missing = movable(state).filter((act) => !state.places[act.index])
  const out = missing.length === 0 ? acts : [...new Set([...acts, ...missing])]
  const starts = new Map(out.map((act) => [act, state.places[act.index]?.start]))
  for (const act of out) {
    if (act.delivery) putKeep(state, act.delivery, undefined)
    take(state, act)
  }
  for (const act of state.model.underWay) if (random.unit() < 0.3) resettle(state, act, random)
  state.jitter = random.unit() < 0.2 ? JITTER : 0
  const blink = [0, 0.1, 0.1, 0.5][random.below(4)] ?? 0
  const ordered = order(state, out, random)
  const first = missing.length > 0 && random.unit() < 0.7 ? ordered.filter((act) => missing.includes(act)) : []
  for (const act of first.length > 0 ? [...first, ...ordered.filter((act) => !first.includes(act))] : ordered) {
    const start = starts.get(act)
    insertTrip(state, act, random, { ...(start === undefined ? {} : { start }), blink })
  }
  state.jitter = 0
}

/** Latest first, and now and then the other way about or as chance has it. */
export const mostlyBackward: Order = (state, acts, random) => {
  const order = backward(state, acts)
  const luck = random.unit()
  if (luck < 0.15) order.reverse()
  else if (luck < 0.4) shuffle(order, random)
  return order
}

/** The same, but this one before all others. */
export const startingWith =
  (first: Act): Order =>
  (state, acts, random) => [first, ...mostlyBackward(state, acts, random).filter((act) => act !== first)]

/** Dish by dish as chance has it, each backward or what is scarce first. */
export const dishByDish: Order = (state, acts, random) => {
  const byDish = new Map<unknown, Act[]>()
  for (const act of acts) byDish.set(act.delivery ?? act, [...(byDish.get(act.delivery ?? act) ?? []), act])
  const dishes = [...byDish.values()]
  shuffle(dishes, random)
  return dishes.flatMap((dish) => (random.unit() < 0.5 ? scarceFirst(state, dish) : backward(state, dish)))
}

export const shuffle = <T>(list: T[], random: Random): void => {
  for (let i = list.length - 1; i > 0; i--) {
    const j = random.below(i + 1)
    const moved = list[i] as T
    list[i] = list[j] as T
    list[j] = moved
  }
}

import type { Item, Lane } from './place.ts'
import type { Tick } from './problem.ts'

/** What an item is besides when it is; one shape for all, so that reading lanes stays fast. */
export const itemOf = (
  lane: Lane,
  who: number,
  from: Tick,
  to: Tick,
  kind: Item['kind'],
  spot: number,
  short: boolean,
  amount: number,
  low: number,
  high: number,
  door: number,
  touches: readonly Tick[],
): Item => ({ lane, who, from, to, kind, spot, short, amount, low, high, door, touches })

/** Pre: its lane is in order of beginning, ties by who. Post: it still is, and has the item. */
export const addItem = (item: Item): void => {
  const { lane } = item
  let i = lane.length
  lane.push(item)
  for (; i > 0; i--) {
    const before = lane[i - 1] as Item
    if (before.from < item.from || (before.from === item.from && before.who <= item.who)) break
    lane[i] = before
  }
  lane[i] = item
}

/** Post: the item is not in its lane, the others are in their order. */
export const dropItem = (item: Item): void => {
  const { lane } = item
  let i = 0
  while (i < lane.length && lane[i] !== item) i++
  if (i === lane.length) return
  for (; i + 1 < lane.length; i++) lane[i] = lane[i + 1] as Item
  lane.pop()
}

/** One wish and the ways to meet it: each a set of keys that all have to be taken. */
export interface Wish {
  readonly ways: readonly (readonly string[])[]
}

const costOf = (keys: Iterable<string>, price: (key: string) => number): number => {
  let sum = 0
  for (const key of keys) sum += price(key)
  return sum
}

/** Ways that another way of the same wish is a part of are never better. */
const leastWays = (wish: Wish): Wish => {
  const sets = wish.ways.map((way) => [...new Set(way)].toSorted())
  return {
    ways: sets.filter(
      (way, at) =>
        !sets.some((other, index) => {
          const isPart = other.length < way.length || (other.length === way.length && index < at)
          return index !== at && isPart && other.every((key) => way.includes(key))
        }),
    ),
  }
}

/** Wishes that share no key can be met apart. */
const apart = (wishes: readonly Wish[]): Wish[][] => {
  const groups: { readonly keys: Set<string>; readonly wishes: Wish[] }[] = []
  for (const wish of wishes) {
    const keys = new Set(wish.ways.flat())
    const joined = groups.filter((group) => [...keys].some((key) => group.keys.has(key)))
    for (const group of joined) groups.splice(groups.indexOf(group), 1)
    groups.push({
      keys: new Set([...keys, ...joined.flatMap((group) => [...group.keys])]),
      wishes: [...joined.flatMap((group) => group.wishes), wish],
    })
  }
  return groups.map((group) => group.wishes)
}

/** The cheapest union for one group: depth first, the wish with the fewest ways first, cut off where the best known is not beaten. */
const cheapest = (wishes: readonly Wish[], price: (key: string) => number): ReadonlySet<string> => {
  const order = wishes.toSorted((a, b) => a.ways.length - b.ways.length)
  let best: ReadonlySet<string> | null = null
  let bestCost = Number.POSITIVE_INFINITY
  const extra = (way: readonly string[], taken: ReadonlySet<string>) =>
    costOf(
      way.filter((key) => !taken.has(key)),
      price,
    )
  const go = (at: number, taken: ReadonlySet<string>, cost: number): void => {
    const rest = order.slice(at)
    // What any one of the others costs at least is still to come.
    const still = rest.reduce((most, wish) => Math.max(most, Math.min(...wish.ways.map((way) => extra(way, taken)))), 0)
    if (cost + still >= bestCost) return
    const [wish] = rest
    if (!wish) {
      best = taken
      bestCost = cost
      return
    }
    const ways = wish.ways.map((way) => ({ way, more: extra(way, taken) })).toSorted((a, b) => a.more - b.more)
    for (const { way, more } of ways) {
      go(at + 1, new Set([...taken, ...way]), cost + more)
      // A way that costs nothing more is taken: no other can be better.
      if (more === 0) return
    }
  }
  go(0, new Set(), 0)
  return best ?? new Set()
}

/**
 * The cheapest set of keys that meets every wish by one of its ways; exact. Wishes without ways are left out. Worst case exponential in the
 * number of different wishes that share keys; a dinner has a dozen.
 */
export const smallestSet = (wishes: readonly Wish[], price: (key: string) => number): ReadonlySet<string> => {
  const seen = new Set<string>()
  const each = wishes.map(leastWays).filter((wish) => {
    const key = JSON.stringify(wish.ways)
    return wish.ways.length > 0 && !seen.has(key) && Boolean(seen.add(key))
  })
  return new Set(apart(each).flatMap((group) => [...cheapest(group, price)]))
}

/** Seeded chance for tests: the same seed throws the same dice on every machine (mulberry32, T. Ettinger 2017, public domain). */
export interface Dice {
  /** A whole number from least to most, both included. */
  readonly int: (least: number, most: number) => number
  readonly chance: (probability: number) => boolean
  readonly pick: <T>(items: readonly T[]) => T
  /** Up to `count` different ones, in their order. */
  readonly some: <T>(items: readonly T[], count: number) => T[]
}

export const dice = (seed: number): Dice => {
  let state = (seed * 2_654_435_761) >>> 0
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0
    let mixed = Math.imul(state ^ (state >>> 15), state | 1)
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296
  }
  const int = (least: number, most: number): number => least + Math.floor(next() * (most - least + 1))
  const pick = <T>(items: readonly T[]): T => {
    const item = items[int(0, items.length - 1)]
    if (item === undefined) throw new RangeError('nothing to pick from')
    return item
  }
  const some = <T>(items: readonly T[], count: number): T[] => {
    const left = items.map((item, at) => ({ item, at }))
    const chosen: typeof left = []
    while (chosen.length < count && left.length > 0) chosen.push(...left.splice(int(0, left.length - 1), 1))
    return chosen.sort((a, b) => a.at - b.at).map(({ item }) => item)
  }
  return { int, chance: (probability) => next() < probability, pick, some }
}

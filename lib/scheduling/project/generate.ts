import type { Direction } from './direction.ts'
import type { Packed } from './packed.ts'

/** Room for one schedule at a time: what is left of the stores in each tick, and the list. */
export interface Desk {
  readonly packed: Packed
  readonly ticks: number
  /** Word w of tick t is at w × ticks + t. */
  readonly left: Int32Array
  readonly list: Int32Array
  readonly keys: Int32Array
  readonly counts: Int32Array
  /** Ticks that are not clean. */
  used: number
}

export const desk = (packed: Packed, count: number, longest: number): Desk => ({
  packed,
  ticks: longest,
  left: new Int32Array(packed.words * longest),
  list: new Int32Array(count),
  keys: new Int32Array(count),
  counts: new Int32Array(4 * longest + 64),
  used: longest,
})

/**
 * Serial schedule generation (Kolisch 1996): each activity as early as it fits, in the order of `keys` (≥ 0, below
 * 4 × longest + 60), though never before those that it waits for. Writes the starts and gives when the last is over.
 */
export const generate = (desk: Desk, way: Direction, keys: Int32Array, starts: Int32Array): number => {
  const { list, left, ticks } = desk
  const { words, full, takes } = desk.packed
  const { lengths, from, at, before, lag, count } = way
  byKeys(desk, way, keys)
  for (let w = 0; w < words; w++) left.fill(full[w] as number, w * ticks, w * ticks + desk.used)
  let span = 0
  for (let k = 0; k < count; k++) {
    const i = list[k] as number
    const length = lengths[i] as number
    let start = from[i] as number
    for (let p = at[i] as number, end = at[i + 1] as number; p < end; p++) {
      const after = (starts[before[p] as number] as number) + (lag[p] as number)
      if (after > start) start = after
    }
    start = firstFit(desk, i, start, length)
    starts[i] = start
    const end = start + length
    if (end > span) span = end
    for (let w = 0; w < words; w++) {
      const take = takes[i * words + w] as number
      if (take === 0) continue
      for (let t = w * ticks + start, stop = w * ticks + end; t < stop; t++) left[t] = (left[t] as number) - take
    }
  }
  desk.used = span
  return span
}

/** The first tick ≥ start from which every store has room for the whole length. */
const firstFit = (desk: Desk, i: number, start: number, length: number): number => {
  const { words, takes } = desk.packed
  let t = start
  for (let agreed = 0, w = 0; agreed < words; w = w + 1 === words ? 0 : w + 1) {
    const take = takes[i * words + w] as number
    const next = take === 0 ? t : roomAt(desk, w, take, t, length)
    agreed = next === t ? agreed + 1 : 1
    t = next
  }
  return t
}

/** Looks back from the end of the stretch, so that a full tick moves the start behind it at once. */
const roomAt = ({ left, packed, ticks }: Desk, w: number, take: number, start: number, length: number): number => {
  const guard = packed.guard[w] as number
  const base = w * ticks
  let first = base + start
  for (let seen = first; ; ) {
    let t = first + length - 1
    while (t >= seen && (((left[t] as number) - take) & guard) === guard) t--
    if (t < seen) return first - base
    seen = first + length
    first = t + 1
  }
}

/** Sorts by keys, each raised to those that it waits for; equal ones keep the order of the direction. */
const byKeys = ({ list, keys: raised, counts }: Desk, { order, at, before, count }: Direction, keys: Int32Array): void => {
  let most = 0
  for (let k = 0; k < count; k++) {
    const i = order[k] as number
    let key = keys[i] as number
    for (let p = at[i] as number, end = at[i + 1] as number; p < end; p++) {
      const other = raised[before[p] as number] as number
      if (other > key) key = other
    }
    raised[i] = key
    if (key > most) most = key
  }
  counts.fill(0, 0, most + 2)
  for (let i = 0; i < count; i++) {
    const key = (raised[i] as number) + 1
    counts[key] = (counts[key] as number) + 1
  }
  for (let key = 1; key <= most; key++) counts[key] = (counts[key] as number) + (counts[key - 1] as number)
  for (let k = 0; k < count; k++) {
    const i = order[k] as number
    const key = raised[i] as number
    const place = counts[key] as number
    counts[key] = place + 1
    list[place] = i
  }
}

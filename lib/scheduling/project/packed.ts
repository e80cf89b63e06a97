import type { ProjectStore } from './project.ts'

/**
 * Stores packed side by side into words, so that one subtraction asks them all: each has its bits and one guard bit above
 * them, which a subtraction of more than is there clears.
 */
export interface Packed {
  readonly words: number
  /** Every guard bit of a word. */
  readonly guard: Int32Array
  /** A word with nothing taken, guard bits set. */
  readonly full: Int32Array
  /** What activity i takes of word w is at i × words + w. */
  readonly takes: Int32Array
}

/** Amounts and capacities up to this can be packed. */
export const MOST_PACKED = 2 ** 28

const WORD = 30

/** Stores that can never be short are left out. Every need is ≤ its capacity, which is ≤ MOST_PACKED. */
export const pack = (stores: readonly ProjectStore[], count: number): Packed => {
  const short = stores.filter(({ capacity, needs }) => needs.reduce((sum, need) => sum + need, 0) > capacity)
  const places: { word: number; shift: number; width: number }[] = []
  let word = 0
  let shift = 0
  for (const { capacity } of short) {
    const width = 33 - Math.clz32(capacity)
    if (shift + width > WORD) {
      word += 1
      shift = 0
    }
    places.push({ word, shift, width })
    shift += width
  }
  const words = short.length > 0 ? word + 1 : 0
  const guard = new Int32Array(words)
  const full = new Int32Array(words)
  const takes = new Int32Array(words * count)
  short.forEach(({ capacity, needs }, s) => {
    const { word, shift, width } = places[s] as (typeof places)[number]
    guard[word] = (guard[word] as number) | (1 << (shift + width - 1))
    full[word] = (full[word] as number) | (1 << (shift + width - 1)) | (capacity << shift)
    for (let i = 0; i < count; i++) {
      const place = i * words + word
      takes[place] = (takes[place] as number) + ((needs[i] as number) << shift)
    }
  })
  return { words, guard, full, takes }
}

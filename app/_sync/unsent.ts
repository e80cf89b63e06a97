import type { Shelf } from './shelf.ts'

/** Whether this device holds edits that the server has not acknowledged, those of other tabs and earlier pages included. */
export interface Unsent {
  any(): boolean
  /** An edit was made here. */
  add(): void
  /** All that this page's document holds is acknowledged. */
  clear(): void
}

/**
 * Each page has its own mark, raised with each edit. Marks found at the start are of edits that the device's copy brings
 * along: they fall with the first acknowledgement, unless their own page has gone on editing meanwhile.
 * Open it before the copy is read.
 */
export const openUnsent = (shelf: Shelf, prefix: string, page: string): Unsent => {
  const own = `${prefix}${page}`
  const found = new Map(shelf.keys(prefix).map((key) => [key, shelf.get(key)]))
  let edits = 0
  let marked = false
  return {
    any: () => marked || found.size > 0,
    add() {
      edits += 1
      marked = true
      shelf.set(own, String(edits))
    },
    clear() {
      if (marked) shelf.remove(own)
      marked = false
      for (const [key, value] of found) if (shelf.get(key) === value) shelf.remove(key)
      found.clear()
    },
  }
}

import { entryOf, explain, levelOf, NO_REASON, type Trail } from './trail.ts'

/** Room for learning; `needs` has for each side the value that the reasons so far ask of it. */
export interface Notes {
  readonly needs: Int32Array
  /** The sides that were ever asked of, each once. */
  readonly asked: number[]
  readonly listed: Uint8Array
  readonly buffer: Int32Array
  /** The learned clause: side, value, …; the first is implied once the trail is back at `level`. */
  readonly learned: Int32Array
  size: number
  level: number
  /** Over how many levels it spans. */
  levels: number
}

const NOTHING = -(2 ** 30)

export const newNotes = (variables: number): Notes => ({
  needs: new Int32Array(2 * variables).fill(NOTHING),
  asked: [],
  listed: new Uint8Array(2 * variables),
  buffer: new Int32Array(8 * variables + 64),
  learned: new Int32Array(4 * variables + 64),
  size: 0,
  level: 0,
  levels: 0,
})

/**
 * Learns from the refused entry at the trail's end: resolves back to the first literal that alone speaks for its level (first
 * unique implication point: Marques-Silva & Sakallah 1999, IEEE Trans. Computers 48:506-521). `met` hears of every variable.
 * False when the conflict holds at level 0.
 */
export const analyse = (trail: Trail, notes: Notes, met: (variable: number) => void): boolean => {
  const { needs, asked, listed, buffer, learned } = notes
  const refused = trail.size
  const side = trail.side[refused] as number
  const value = trail.value[refused] as number
  for (const one of asked) {
    needs[one] = NOTHING
    listed[one] = 0
  }
  asked.length = 0
  ask(trail, notes, explain(trail, refused, value, buffer))
  buffer[0] = side ^ 1
  buffer[1] = 1 - value
  ask(trail, notes, 2)
  let deepest = -1
  for (const one of asked) deepest = Math.max(deepest, entryOf(trail, one, needs[one] as number))
  if (deepest < (trail.levels[1] ?? trail.size)) return false
  let level = levelOf(trail)
  while ((trail.levels[level] as number) > deepest) level--
  const begin = trail.levels[level] as number
  let here = 0
  for (const one of asked) if (entryOf(trail, one, needs[one] as number) >= begin) here++
  for (let entry = deepest; ; entry--) {
    const one = trail.side[entry] as number
    const need = needs[one] as number
    if (need === NOTHING || need <= (trail.old[entry] as number)) continue
    met(one >> 1)
    if (here === 1) {
      learned[0] = one ^ 1
      learned[1] = 1 - need
      needs[one] = NOTHING
      break
    }
    needs[one] = NOTHING
    here--
    const size = explain(trail, entry, need, buffer)
    for (let k = 0; k < size; k += 2) {
      const because = buffer[k] as number
      const least = buffer[k + 1] as number
      const before = needs[because] as number
      if (before >= least) continue
      const from = entryOf(trail, because, least)
      if (from < (trail.levels[1] as number)) continue
      list(notes, because)
      if (from >= begin && (before === NOTHING || entryOf(trail, because, before) < begin)) here++
      needs[because] = least
    }
  }
  keep(trail, notes, met)
  return true
}

const ask = (trail: Trail, notes: Notes, size: number): void => {
  const { needs, buffer } = notes
  const forGood = trail.levels[1] ?? trail.size
  for (let k = 0; k < size; k += 2) {
    const side = buffer[k] as number
    const value = buffer[k + 1] as number
    if ((needs[side] as number) >= value || entryOf(trail, side, value) < forGood) continue
    list(notes, side)
    needs[side] = value
  }
}

const list = ({ asked, listed }: Notes, side: number): void => {
  if (listed[side]) return
  listed[side] = 1
  asked.push(side)
}

/** Writes what is asked into the clause, without what the rest of it implies; the deepest of it second. */
const keep = (trail: Trail, notes: Notes, met: (variable: number) => void): void => {
  const { needs, asked, learned } = notes
  notes.size = 2
  let deepest = -1
  const levels = new Set<number>()
  for (const side of asked) {
    const value = needs[side] as number
    if (value === NOTHING) continue
    met(side >> 1)
    const entry = entryOf(trail, side, value)
    if (implied(trail, notes, entry, value)) continue
    const at = notes.size
    learned[at] = side ^ 1
    learned[at + 1] = 1 - value
    notes.size += 2
    levels.add(levelAt(trail, entry))
    if (entry <= deepest) continue
    deepest = entry
    learned[at] = learned[2] as number
    learned[at + 1] = learned[3] as number
    learned[2] = side ^ 1
    learned[3] = 1 - value
  }
  notes.level = deepest < 0 ? 0 : levelAt(trail, deepest)
  notes.levels = levels.size + 1
}

const implied = (trail: Trail, { needs, buffer }: Notes, entry: number, value: number): boolean => {
  if (trail.reason[entry] === NO_REASON) return false
  const size = explain(trail, entry, value, buffer)
  const forGood = trail.levels[1] as number
  for (let k = 0; k < size; k += 2) {
    const side = buffer[k] as number
    const least = buffer[k + 1] as number
    if (entryOf(trail, side, least) < forGood) continue
    const need = needs[side] as number
    if (need < least || entryOf(trail, side, need) >= entry) return false
  }
  return true
}

/** The level of an entry. */
const levelAt = (trail: Trail, entry: number): number => {
  let low = 0
  let high = levelOf(trail)
  while (low < high) {
    const middle = (low + high + 1) >> 1
    if ((trail.levels[middle] as number) <= entry) low = middle
    else high = middle - 1
  }
  return low
}

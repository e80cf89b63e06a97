import type { Tick } from '#lib/scheduling/problem.ts'

/** A moment of a schedule that may come later than planned: a step begins, is over, is touched; a serving reaches the table. */
export type EventId = number

/** `to` comes no earlier than `from` + `lag`; with `draw`, the lag is the drawn length of that number. */
export interface Arc {
  readonly from: EventId
  readonly to: EventId
  readonly lag: number
  readonly draw?: number
}

/** A moment and so many ticks after it. */
export interface Edge {
  readonly event: EventId
  readonly lag: number
}

/** Something that holds a cook or kit from `begins` to the last of `ends`, planned for [from, to). */
export interface Hold {
  /** Of the activity, as numbered by the problem; −1 of a dish that waits for the table. */
  readonly who: number
  readonly from: Tick
  readonly to: Tick
  /** None when nothing can hold it back: what happened, and dishes that wait. */
  readonly begins: EventId | undefined
  readonly ends: readonly Edge[]
}

/** In order of time. */
export const inTime = (a: Hold, b: Hold): number => a.from - b.from || a.to - b.to || a.who - b.who

export const arcsBetween = (before: Hold, after: Hold, gap: number): Arc[] => {
  const to = after.begins
  return to === undefined ? [] : before.ends.map(({ event, lag }) => ({ from: event, to, lag: lag + gap }))
}

/**
 * Who comes after whom where they must not meet. Pre: in order of time. What stands between two by way of a third is not
 * said again. Post: arcs between planned times only, so that the plan itself keeps them.
 */
export const chain = <T extends Hold>(holds: readonly T[], mustNotMeet: (a: T, b: T) => boolean): Arc[] => {
  const before = holds.map(() => new Set<number>())
  return holds.flatMap((after, j) => {
    const arcs: Arc[] = []
    const own = before[j] as Set<number>
    for (let i = j - 1; i >= 0; i--) {
      const first = holds[i] as T
      if (first.to > after.from || first.who === after.who || !mustNotMeet(first, after)) continue
      const known = [...own].some((k) => holds[k]?.begins !== undefined && before[k]?.has(i))
      own.add(i)
      if (!known) arcs.push(...arcsBetween(first, after, 0))
    }
    return arcs
  })
}

/** `to` waits until no more than `free` of these amounts are still held. */
export interface Gate {
  readonly to: EventId
  readonly free: number
  readonly held: readonly { readonly from: EventId; readonly amount: number }[]
}

/** A hold of so much. */
export interface Share extends Hold {
  readonly amount: number
}

/** What ended longer ago than that is not still under way: 4 h at 30 s. */
const LONG_AGO = 480

/**
 * Who must wait for room where several hold a part of a capacity: what was planned to be over by then must be so, but for
 * what there is room beside. Pre: in order of time. `last` gives one event for the end of a hold.
 */
export const gates = (holds: readonly Share[], capacity: number, last: (hold: Hold) => EventId): Gate[] =>
  holds.flatMap((hold, i): Gate[] => {
    const others = holds.filter((other, k) => k !== i && (other.who !== hold.who || hold.who < 0))
    const beside = others.filter(({ from, to }) => from <= hold.from && to > hold.from)
    const before = others.filter(({ from, to }) => from <= hold.from && to <= hold.from && to > hold.from - LONG_AGO)
    const free = capacity - hold.amount - sumOf(beside)
    if (hold.begins === undefined || sumOf(before) <= Math.max(0, free)) return []
    return [{ to: hold.begins, free: Math.max(0, free), held: before.map((one) => ({ from: last(one), amount: one.amount })) }]
  })

const sumOf = (shares: readonly Share[]): number => shares.reduce((sum, { amount }) => sum + amount, 0)

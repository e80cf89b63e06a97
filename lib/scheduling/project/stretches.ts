import type { Net } from './net.ts'
import type { TimeTable } from './time-table.ts'

/** Writes a table's stretches of constant sure use and gives their number; the last one is empty. */
export const sweep = (
  { trail: { bound }, project: { lengths } }: Net,
  { byBegin, byEnd, needs, from, use }: TimeTable,
): number => {
  sortByBegin(byBegin, bound)
  sortByEnd(byEnd, bound, lengths)
  let stretches = 0
  let used = 0
  let e = 0
  for (let b = 0; ; ) {
    while (b < byBegin.length && !sure(bound, lengths, byBegin[b] as number)) b++
    while (e < byEnd.length && !sure(bound, lengths, byEnd[e] as number)) e++
    if (e === byEnd.length) break
    const ender = byEnd[e] as number
    const end = (bound[2 * ender] as number) + (lengths[ender] as number)
    const beginner = byBegin[b] as number
    const begin = b < byBegin.length ? -(bound[2 * beginner + 1] as number) : end
    const now = Math.min(begin, end)
    if (begin < end) {
      used += needs[beginner] as number
      b++
    } else {
      used -= needs[ender] as number
      e++
    }
    if (stretches > 0 && from[stretches - 1] === now) use[stretches - 1] = used
    else {
      from[stretches] = now
      use[stretches] = used
      stretches++
    }
  }
  return stretches
}

const sure = (bound: Int32Array, lengths: Int32Array, i: number): boolean =>
  -(bound[2 * i + 1] as number) < (bound[2 * i] as number) + (lengths[i] as number)

/** By insertion: little has moved since the last time. */
const sortByBegin = (list: Int32Array, bound: Int32Array): void => {
  for (let k = 1; k < list.length; k++) {
    const i = list[k] as number
    const begin = -(bound[2 * i + 1] as number)
    let place = k
    for (; place > 0 && -(bound[2 * (list[place - 1] as number) + 1] as number) > begin; place--)
      list[place] = list[place - 1] as number
    list[place] = i
  }
}

const sortByEnd = (list: Int32Array, bound: Int32Array, lengths: Int32Array): void => {
  for (let k = 1; k < list.length; k++) {
    const i = list[k] as number
    const end = (bound[2 * i] as number) + (lengths[i] as number)
    let place = k
    for (; place > 0; place--) {
      const other = list[place - 1] as number
      if ((bound[2 * other] as number) + (lengths[other] as number) <= end) break
      list[place] = other
    }
    list[place] = i
  }
}

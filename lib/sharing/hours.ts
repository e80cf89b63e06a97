import type { Evening } from '#lib/domain/evening.ts'
import type { Cook } from '#lib/domain/kitchen.ts'
import { besideBusy } from '#lib/domain/presence.ts'
import { type EveningClock, epochMsOf } from '#lib/domain/time.ts'

interface Stay {
  readonly kitchen: string
  readonly from: number
  readonly to: number
}

/** In order of time; stays in one kitchen that touch are one. Without those in which the cook is busy. */
const staysOf = (clock: EveningClock, cook: Cook): readonly Stay[] => {
  const stays: Stay[] = []
  const all = cook.presence.map(({ kitchen, from, to }) => ({ kitchen, from: epochMsOf(clock, from), to: epochMsOf(clock, to) }))
  for (const stay of all.sort((a, b) => a.from - b.from || a.to - b.to)) {
    const last = stays.at(-1)
    if (last && last.kitchen === stay.kitchen && stay.from <= last.to)
      stays[stays.length - 1] = { ...last, to: Math.max(last.to, stay.to) }
    else stays.push(stay)
  }
  const busy = (cook.busy ?? []).map(({ from, to }) => ({ from: epochMsOf(clock, from), to: epochMsOf(clock, to) }))
  return besideBusy(stays, busy)
}

/** Where everybody is. Milliseconds since 1970. */
export interface Hours {
  /** Whether the cook is in that kitchen from one moment to the other. */
  readonly isIn: (cook: string, kitchen: string, from: number, to: number) => boolean
  /** Whether the cook is on the way from that kitchen to the host's then: gone from the one and not yet in the other. */
  readonly isOnTheWay: (cook: string, kitchen: string, from: number, to: number) => boolean
}

/** The hours of an evening's cooks as its running order counts them. */
export const hoursOf = (evening: Evening): Hours => {
  const stays = new Map(evening.cooks.map((cook) => [cook.id, staysOf(evening, cook)]))
  return {
    isIn: (cook, kitchen, from, to) =>
      (stays.get(cook) ?? []).some((stay) => stay.kitchen === kitchen && stay.from <= from && to <= stay.to),
    isOnTheWay: (cook, kitchen, from, to) =>
      (stays.get(cook) ?? []).some((stay, at, all) => {
        const next = all[at + 1]
        return stay.kitchen === kitchen && stay.to <= from && next?.kitchen === evening.host && to <= next.from
      }),
  }
}

import type { Evening } from '#lib/domain/evening.ts'
import type { Cook } from '#lib/domain/kitchen.ts'
import type { Cook as ProblemCook } from '#lib/scheduling/problem.ts'
import type { TickOf } from './clock.ts'
import { byText } from './ids.ts'

type Stay = ProblemCook['presence'][number]

/** In order of time and apart: stays in one kitchen that touch are one; of two kitchens at once the earlier holds. */
const apart = (stays: readonly Stay[]): Stay[] => {
  const kept: Stay[] = []
  for (const stay of [...stays].sort((a, b) => a.from - b.from || a.to - b.to || byText(a.place, b.place))) {
    const last = kept.at(-1)
    if (last && stay.place === last.place && stay.from <= last.to)
      kept[kept.length - 1] = { ...last, to: Math.max(last.to, stay.to) }
    else {
      const from = last ? Math.max(stay.from, last.to) : stay.from
      if (from < stay.to) kept.push({ ...stay, from })
    }
  }
  return kept
}

const presenceOf = (cook: Cook, tickOf: TickOf): Stay[] =>
  apart(
    cook.presence.map((stay) => ({
      place: stay.kitchen,
      from: tickOf(stay.from, 'up'),
      to: tickOf(stay.to, 'down'),
    })),
  )

/** The cooks by id, their hours in ticks, rounded inward. */
export const cooksToProblem = (evening: Evening, tickOf: TickOf): ProblemCook[] =>
  evening.cooks
    .map((cook) => ({
      id: cook.id,
      host: cook.host,
      eats: cook.eats,
      pace: cook.pace,
      presence: presenceOf(cook, tickOf),
    }))
    .sort((a, b) => byText(a.id, b.id))

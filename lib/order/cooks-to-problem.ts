import { ticksUp } from '#lib/domain/duration.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { Cook } from '#lib/domain/kitchen.ts'
import { nearestClaims } from '#lib/domain/nearest-claim.ts'
import { besideBusy } from '#lib/domain/presence.ts'
import type { Cook as ProblemCook } from '#lib/scheduling/problem.ts'
import type { TickOf } from './clock.ts'
import { type Absence, factTick, type NightFacts } from './facts.ts'
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

/** Nobody is there before the way, at its longest, can be over, whatever hours were written. */
const arrived = (stays: readonly Stay[], wayBetween: (a: string, b: string) => number): Stay[] => {
  const kept: Stay[] = []
  for (const stay of stays) {
    const last = kept.at(-1)
    const from = last ? Math.max(stay.from, last.to + wayBetween(last.place, stay.place)) : stay.from
    if (from < stay.to) kept.push({ ...stay, from })
  }
  return kept
}

/** Ticks between the host's kitchen and another on a bad day: as the kitchen says, or what this cook may carry from there. */
const waysOf = (evening: Evening, cook: Cook) => {
  const heldBy = nearestClaims(evening)
  const dishes = new Map(evening.dishes.map((dish) => [dish.id, dish]))
  const ways = new Map(
    evening.kitchens.map(({ id, toTable, toTableMost }) => [id, Math.max(ticksUp(toTable), ticksUp(toTableMost ?? toTable))]),
  )
  for (const step of evening.steps) {
    const dish = dishes.get(step.dish ?? '')
    const claim = heldBy(step)
    const isTheirs = !claim || claim.cook === cook.id || (claim.also ?? []).includes(cook.id)
    if (step.role !== 'carry' || dish?.state !== 'on' || !isTheirs) continue
    for (const { takes } of step.ways)
      ways.set(dish.kitchen, Math.max(ways.get(dish.kitchen) ?? 0, Math.ceil(ticksUp(takes.most) * cook.pace - 1e-9)))
  }
  return (a: string, b: string): number => (a === evening.host ? ways.get(b) : b === evening.host ? ways.get(a) : undefined) ?? 0
}

const presenceOf = (evening: Evening, cook: Cook, tickOf: TickOf): Stay[] => {
  const stays = apart(
    cook.presence.map((stay) => ({
      place: stay.kitchen,
      from: tickOf(stay.from, 'up'),
      to: tickOf(stay.to, 'down'),
    })),
  )
  return besideBusy(
    stays.some(({ place }) => place !== stays[0]?.place) ? arrived(stays, waysOf(evening, cook)) : stays,
    (cook.busy ?? []).map(({ from, to }) => ({ from: tickOf(from, 'down'), to: tickOf(to, 'up') })),
  )
}

/** What is left of the hours of a cook who has gone, and may be back. */
const without = (stays: readonly Stay[], evening: Evening, absence: Absence | undefined): Stay[] => {
  if (!absence) return [...stays]
  const gone = factTick(evening, absence.gone, 'began')
  const back = absence.back === undefined ? Number.POSITIVE_INFINITY : factTick(evening, absence.back, 'ended')
  return stays
    .flatMap((stay) => [
      { ...stay, to: Math.min(stay.to, gone) },
      { ...stay, from: Math.max(stay.from, back) },
    ])
    .filter(({ from, to }) => from < to)
}

/** The cooks by id, their hours in ticks, rounded inward, less those in which they are busy and those in which they were told to be gone. */
export const cooksToProblem = (evening: Evening, facts: NightFacts, tickOf: TickOf): ProblemCook[] =>
  evening.cooks
    .map((cook) => ({
      id: cook.id,
      host: cook.host,
      eats: cook.eats,
      pace: cook.pace,
      presence: without(presenceOf(evening, cook, tickOf), evening, facts.absences.get(cook.id)),
    }))
    .sort((a, b) => byText(a.id, b.id))

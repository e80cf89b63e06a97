import { mealsOf, type Placed, placedOf, tableWindow } from '#lib/scheduling/placed.ts'
import { PLATING_BURST, type Problem } from '#lib/scheduling/problem.ts'
import type { Schedule } from '#lib/scheduling/schedule.ts'
import { busy, length, meet, type Stretch, union } from './stretches.ts'

/** C5: somebody is at the table, few minutes are missed there, least while people eat, fairly, and the serving's lead plates. */
export const table = (problem: Problem, schedule: Schedule): number => {
  const { weights } = problem
  const placed = placedOf(problem, schedule)
  const window = tableWindow(problem, schedule)
  const led = weights.lead * withoutLead(problem, placed)
  if (!window || window.from >= window.to) return led
  const up = (cook: string) => union(busy(placed, cook, { eye: true, atTable: false }), window)
  const gone = problem.cooks.filter((cook) => cook.eats).map((cook) => up(cook.id))
  const missed = gone.map(length)
  const sum = missed.reduce((all, one) => all + one, 0)
  const meals = union(mealsOf(problem, schedule), window)
  const meal = gone.reduce((all, one) => all + length(meet(one, meals)), 0)
  const hosts = problem.cooks.filter((cook) => cook.host).map((cook) => up(cook.id))
  const shared = weights.unfair * Math.max(0, ...missed) + weights.allAway * awayTicks(hosts, placed)
  return weights.missed * sum + weights.meal * meal + shared + led
}

const awayTicks = (hosts: readonly (readonly Stretch[])[], placed: readonly Placed[]): number => {
  const [first, ...others] = hosts
  if (!first) return 0
  const away = others.reduce<readonly Stretch[]>(meet, first)
  const plating = placed.filter(({ activity }) => activity.plating).map(({ placement }) => placement)
  return length(
    away.filter(({ from, to }) => to - from > PLATING_BURST || !plating.some((burst) => burst.start < to && burst.end > from)),
  )
}

const withoutLead = (problem: Problem, placed: readonly Placed[]): number => {
  const serving = new Map(problem.deliveries.map((delivery) => [delivery.id, delivery.serving]))
  const lead = new Map(problem.servings.map((one) => [one.id, one.lead]))
  return placed.filter(({ activity, placement }) => {
    const wanted = lead.get(serving.get(activity.delivery ?? '') ?? '')
    return activity.plating && wanted !== undefined && !placement.cooks.includes(wanted)
  }).length
}

import type { Evening } from '#lib/domain/evening.ts'
import { nearestClaims } from '#lib/domain/nearest-claim.ts'
import type { Claim } from '#lib/domain/people.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'

/** Whether a running order would stay as it is with these claims: it has everybody whom a changed claim asks for at its step already. */
export const orderKeeps = (evening: Evening, order: RunningOrder, claims: readonly Claim[]): boolean => {
  const [was, is] = [nearestClaims(evening), nearestClaims({ ...evening, claims: [...claims] })]
  const teamOf = (claim: Claim | null): readonly string[] => (claim ? [claim.cook, ...(claim.also ?? [])] : [])
  const changed = new Map(
    evening.steps.flatMap((step) => {
      const team = teamOf(is(step))
      return JSON.stringify(team) === JSON.stringify(teamOf(was(step))) ? [] : [[step.id, team] as const]
    }),
  )
  const placed = new Set(order.cues.map(({ step }) => step))
  const on = new Set(evening.dishes.filter(({ state }) => state === 'on').map(({ id }) => id))
  const hasNoPlace = evening.steps.some(({ id, dish }) => changed.has(id) && !placed.has(id) && (dish === null || on.has(dish)))
  return (
    !hasNoPlace &&
    order.cues.every(({ step, cooks }) => (changed.get(step) ?? []).slice(0, cooks.length).every((cook) => cooks.includes(cook)))
  )
}

/** How many ever stand at one step of a course, a dish or a step. */
export const mostHands = ({ steps, dishes }: Pick<Evening, 'steps' | 'dishes'>, target: string): number => {
  const isIn = new Set(dishes.filter(({ id, course }) => id === target || course === target).map(({ id }) => id))
  const own = steps.filter(({ id, dish }) => id === target || (dish !== null && isIn.has(dish)))
  return Math.max(1, ...own.flatMap(({ ways }) => ways.map(({ cooks }) => cooks)))
}

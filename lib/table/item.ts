import { secondsOf } from '#lib/domain/duration.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { Ingredient } from '#lib/domain/ingredient.ts'
import type { Step } from '#lib/domain/menu.ts'

/** How far an ingredient is cooked where it is eaten: through, to a core temperature that kills; heated, nobody said how far; or not at all. */
export type Cooked = 'through' | 'heated' | 'not' | 'not-said'

/** An ingredient on a plate. */
export interface Item {
  readonly ingredient: Ingredient
  readonly cooked: Cooked
  /** Minutes of heat in the step where it goes in; null when that is not hot. */
  readonly heatMinutes: number | null
}

/** The core that is safe for those at risk without a holding time: FoodSafety.gov, people at risk, 165 °F. */
const THROUGH_C = 74

const isHot = (step: Step): boolean =>
  step.ways.every((way) => way.uses.some((use) => use.kind === 'ring' || (use.kind === 'oven' && use.highC >= 100)))

const minutesHot = (step: Step | undefined): number | null =>
  step && isHot(step) ? Math.min(...step.ways.map((way) => secondsOf(way.takes.least))) / 60 : null

/** The step and what comes after it in its dish, by waits; by place where nothing waits. */
const stepsFrom = (steps: readonly Step[], from: Step): readonly Step[] => {
  const found = new Set([from.id])
  for (let grew = true; grew; ) {
    grew = false
    for (const step of steps)
      if (!found.has(step.id) && step.after.some((after) => found.has(after.step))) {
        found.add(step.id)
        grew = true
      }
  }
  return steps.filter((step) => found.has(step.id))
}

/** An ingredient as it is cooked in these steps, those of its dish. */
export const itemOf = (ingredient: Ingredient, steps: readonly Step[]): Item => {
  const own = steps.find(({ id }) => id === ingredient.step)
  if (!own)
    return { ingredient, cooked: steps.some(isHot) ? 'not-said' : steps.length > 0 ? 'not' : 'not-said', heatMinutes: null }
  const later = stepsFrom(steps, own)
  const through = later.some((step) => (step.until?.coreC ?? 0) >= THROUGH_C)
  return { ingredient, cooked: through ? 'through' : later.some(isHot) ? 'heated' : 'not', heatMinutes: minutesHot(own) }
}

/** The steps of a dish. */
export const stepsOfDish = (evening: Pick<Evening, 'steps'>, dish: string): readonly Step[] =>
  evening.steps.filter((step) => step.dish === dish)

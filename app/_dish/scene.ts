import { type Names, namesOf } from '#app/_words/names.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { Kitchen } from '#lib/domain/kitchen.ts'
import type { Dish, Step } from '#lib/domain/menu.ts'

/** A step and what its sentences have to know around it. */
export interface Scene {
  readonly evening: Evening
  readonly names: Names
  readonly step: Step
  /** What the step is called in labels. */
  readonly name: string
  readonly dish: Dish | undefined
  /** Where it is done: the dish's kitchen while it is made, else the hosts'. */
  readonly kitchen: Kitchen | undefined
  /** The address of the screen with the kitchens. */
  readonly kitchens: string
  readonly newId: () => string
}

interface Around {
  readonly evening: Evening
  readonly kitchens: string
  readonly newId: () => string
}

export const sceneOf = (step: Step, around: Around): Scene => {
  const { evening } = around
  const dish = evening.dishes.find((candidate) => candidate.id === step.dish)
  const home = step.role === 'make' || step.role === 'carry' ? (dish?.kitchen ?? evening.host) : evening.host
  return {
    ...around,
    names: namesOf(evening),
    step,
    name: step.does || 'This step',
    dish,
    kitchen: evening.kitchens.find((candidate) => candidate.id === home),
  }
}

/** Other steps to choose from, under the names of their dishes, those of the own dish first. */
export const stepOptions = (
  { evening, names, step }: Scene,
  wanted: (other: Step) => boolean,
): readonly (readonly [id: string, words: string, group: string])[] => {
  const others = evening.steps.filter((other) => other.id !== step.id && wanted(other))
  const own = others.filter((other) => other.dish === step.dish)
  const group = (other: Step) => (other.dish === null ? 'The house' : names.dishName(other.dish))
  return [...own, ...others.filter((other) => other.dish !== step.dish)].map((other) => [
    other.id,
    `“${names.stepName(other.id)}”`,
    group(other),
  ])
}

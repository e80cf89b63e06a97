import type { Evening } from '#lib/domain/evening.ts'
import type { Kit, Kitchen } from '#lib/domain/kitchen.ts'
import type { Course, Dish, Step } from '#lib/domain/menu.ts'
import { kitName } from './kit.ts'
import { shorten } from './shorten.ts'

/** Everything of an evening by its id, and what to call it. Ids that lead nowhere have plain stand-ins. */
export interface Names {
  readonly step: (id: string) => Step | undefined
  readonly dish: (id: string | null) => Dish | undefined
  readonly course: (id: string) => Course | undefined
  readonly kit: (id: string) => { readonly kit: Kit; readonly kitchen: Kitchen } | undefined
  /** The step in at most about 40 characters. */
  readonly stepName: (id: string) => string
  readonly dishName: (id: string) => string
  readonly courseName: (id: string) => string
  readonly cookName: (id: string) => string
  readonly kitchenName: (id: string) => string
  readonly kitName: (id: string) => string
}

const byId = <T extends { readonly id: string }>(items: readonly T[]): ReadonlyMap<string, T> =>
  new Map(items.map((item) => [item.id, item]))

export const namesOf = (evening: Evening): Names => {
  const [steps, dishes, courses, cooks, kitchens] = [
    byId(evening.steps),
    byId(evening.dishes),
    byId(evening.courses),
    byId(evening.cooks),
    byId(evening.kitchens),
  ]
  const kit = new Map(
    evening.kitchens.flatMap((kitchen) => kitchen.kit.map((item) => [item.id, { kit: item, kitchen }] as const)),
  )
  return {
    step: (id) => steps.get(id),
    dish: (id) => (id === null ? undefined : dishes.get(id)),
    course: (id) => courses.get(id),
    kit: (id) => kit.get(id),
    stepName: (id) => {
      const does = steps.get(id)?.does
      return does ? shorten(does, 40) : 'a step that is gone'
    },
    dishName: (id) => dishes.get(id)?.name || 'a dish without a name',
    courseName: (id) => courses.get(id)?.name || 'a course without a name',
    cookName: (id) => cooks.get(id)?.name || 'somebody',
    kitchenName: (id) => kitchens.get(id)?.name || 'a kitchen',
    kitName: (id) => {
      const found = kit.get(id)
      return found ? kitName(found.kit) : 'kit that is gone'
    },
  }
}

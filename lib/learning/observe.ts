import { minutesOf } from '#lib/domain/duration.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { Way } from '#lib/domain/menu.ts'
import { keyOf, kindOf, kitchenKey, type Observation } from './observation.ts'

/** What a step took as it was told, for one batch: the part of a night's account that is learnt from. */
export interface Took {
  readonly step: string
  readonly way: number
  readonly cooks: readonly string[]
  readonly kitchen: string
  readonly actualMinutes: number
}

/** Outside these shares of the written minutes somebody forgot to tell: nothing is learnt from it. */
export const BELIEVED = [1 / 3, 3] as const

const heatOf = (way: Way): number | null => {
  const oven = way.uses.find((use) => use.kind === 'oven')
  return oven?.kind === 'oven' ? (oven.lowC + oven.highC) / 2 : null
}

/**
 * What a night says of its steps, with the id of each. Steps that may last longer by choice, and what nobody would believe, say nothing;
 * hands-on minutes are brought back to a pace of one, as the plan writes them. `whose`: the key of a cook of the evening.
 */
export const observe = (
  evening: Evening,
  all: readonly Took[],
  whose: (cook: string) => string | null,
): readonly (Observation & { readonly step: string })[] =>
  all.flatMap(({ step: id, way: index, cooks, kitchen: at, actualMinutes }) => {
    const step = evening.steps.find((each) => each.id === id)
    const dish = evening.dishes.find((each) => each.id === step?.dish)
    const kitchen = evening.kitchens.find((each) => each.id === at)
    const way = step?.ways[index]
    if (!step || !dish || !kitchen || !way || way.upTo !== undefined) return []
    const written = minutesOf(way.takes.likely)
    const paces = evening.cooks.filter((cook) => cooks.includes(cook.id)).map(({ pace }) => pace)
    const took = actualMinutes / (way.care === 'hands-on' && paces.length > 0 ? Math.max(...paces) : 1)
    if (written <= 0 || took < written * BELIEVED[0] || took > written * BELIEVED[1]) return []
    const [only, ...others] = cooks
    return [
      {
        step: id,
        evening: evening.id,
        date: evening.date,
        dish: keyOf(dish.name),
        does: keyOf(step.does),
        ...kindOf(step, way),
        cook: only !== undefined && others.length === 0 ? whose(only) : null,
        kitchen: kitchenKey(kitchen),
        written,
        took,
        heatC: heatOf(way),
        byDoneness: step.until !== undefined,
      },
    ]
  })

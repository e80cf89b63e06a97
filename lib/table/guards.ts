import type { Evening } from '#lib/domain/evening.ts'
import type { Guard } from '#lib/domain/menu.ts'
import { comingOf, coverage, type Eater } from './coverage.ts'
import { itemsOf } from './dish-verdict.ts'
import { GUARDS } from './guards-of-dish.ts'
import { stepsOfDish } from './item.ts'
import { judgeItem } from './judge-item.ts'
import { awayOf, sameNeed } from './need.ts'
import { isSomething } from './verdict.ts'

/** A dish that somebody with a severe allergy will eat. */
export interface Guarded {
  readonly dish: string
  readonly need: string
  /** How many have this allergy and eat it. */
  readonly portions: number
  /** Guards that the plan does not have yet. */
  readonly missing: readonly Guard['does'][]
}

/** Guards of a dish for a need that its steps do not have. */
const missingGuards = (evening: Pick<Evening, 'steps'>, dish: string, need: string): readonly Guard['does'][] => {
  const there = stepsOfDish(evening, dish).flatMap(({ guard }) =>
    guard && sameNeed(guard.for) === sameNeed(need) ? [guard.does] : [],
  )
  return GUARDS.filter((does) => !there.includes(does))
}

/** What severe allergies ask of the plan: for each need the dish of every course that these guests will get, if they get one. */
export const guardsOf = (evening: Evening, eaters: readonly Eater[]): readonly Guarded[] => {
  const severe = new Map(
    comingOf(eaters).map((eater) => [
      eater.id,
      [...new Set((eater.needs ?? []).filter(({ grade }) => grade === 'severe').map(({ need }) => sameNeed(need)))],
    ]),
  )
  const found = new Map<string, Guarded>()
  for (const { guests } of coverage(evening, eaters))
    for (const { guest, best } of guests)
      for (const need of severe.get(guest) ?? []) {
        if (best === null || !isSomething(best.verdict)) continue
        const key = `${best.dish} ${need}`
        const portions = (found.get(key)?.portions ?? 0) + 1
        found.set(key, { dish: best.dish, need, portions, missing: missingGuards(evening, best.dish, need) })
      }
  return [...found.values()]
}

/**
 * Last-minute steps of the course's other dishes in the same kitchen into which the allergen goes, or may go: they come after the guarded
 * plate. What is made earlier is kept apart by the clean start.
 */
export const stepsBehind = (evening: Evening, dish: string, need: string): readonly string[] => {
  const own = evening.dishes.find(({ id }) => id === dish)
  const away = awayOf(need, evening.rules)
  const others = new Map(
    evening.dishes
      .filter(
        (other) => other.id !== dish && other.course === own?.course && other.kitchen === own.kitchen && other.state === 'on',
      )
      .map((other) => [other.id, itemsOf(evening, other).sure] as const),
  )
  const withIt = new Set(
    [...others].flatMap(([other, items]) =>
      items.some((item) => {
        const judged = judgeItem(item, { need, grade: 'severe' }, away, evening.rules)
        return judged.wrong.length + judged.open.length > 0
      })
        ? [other]
        : [],
    ),
  )
  return evening.steps
    .filter((step) => step.dish !== null && withIt.has(step.dish) && (step.role === 'finish' || step.role === 'plate'))
    .map(({ id }) => id)
}

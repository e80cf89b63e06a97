import type { Evening } from '#lib/domain/evening.ts'
import type { Dish } from '#lib/domain/menu.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { msOfInstant } from '#lib/domain/time.ts'
import { type Limit, type SafetyRules, safetyRules } from './rules.ts'
import { type Out, type Standing, type Walked, walk } from './walk.ts'

/** Where it is hotter than 32 °C the shorter limit counts. */
export interface SafetyOptions {
  readonly isHot?: boolean
}

/** One dish over the order, under the evening's rules. */
export interface Scene {
  readonly evening: Evening
  readonly order: RunningOrder
  readonly dish: Dish
  readonly walked: readonly Walked[]
  readonly rules: SafetyRules
  readonly out: Limit
  readonly toTable: number | null
}

/** What is said of one order is asked in a row, and walking through it is most of the work. */
const last = new WeakMap<
  RunningOrder,
  { readonly evening: Evening; readonly isHot: boolean; readonly scenes: readonly Scene[] }
>()

export const scenesOf = (evening: Evening, order: RunningOrder, { isHot = false }: SafetyOptions): readonly Scene[] => {
  const known = last.get(order)
  if (known?.evening === evening && known.isHot === isHot) return known.scenes
  const scenes = walkedScenes(evening, order, isHot)
  last.set(order, { evening, isHot, scenes })
  return scenes
}

const walkedScenes = (evening: Evening, order: RunningOrder, isHot: boolean): readonly Scene[] => {
  const rules = safetyRules(evening.rules)
  return evening.dishes
    .filter(({ state }) => state === 'on')
    .map((dish): Scene => {
      const course = order.courses.find((each) => each.course === dish.course)
      return {
        evening,
        order,
        dish,
        walked: walk(evening, dish, order, rules.reheatC.value),
        rules,
        out: isHot ? rules.outHot : rules.out,
        toTable: course ? msOfInstant(course.toTable) : null,
      }
    })
}

/** Until when cooked food is to be in the fridge. */
export const coldLimit = ({ rules, out }: Scene, { sorts }: Standing): Limit => {
  const limit = sorts.includes('rice') ? rules.riceIntoFridge : rules.intoFridge
  return limit.value < out.value ? limit : out
}

/** Nothing is known of what is in it. */
export const isUnsure = ({ evening, dish }: Scene): boolean =>
  !evening.ingredients.some((ingredient) => ingredient.dish === dish.id)

/** Since when the finished dish is out as it reaches the table: kit that keeps it hot or cold holds it until then. */
export const atTable = ({ walked, order, dish, toTable }: Scene): Out | null => {
  const last = walked.filter(({ isLast }) => isLast).flatMap(({ after }) => (after.out === null ? [] : [after.out]))
  const [first] = last.toSorted((a, b) => a.since - b.since)
  if (!first || toTable === null) return null
  const kept = order.keeping.find((keeping) => keeping.dish === dish.id && keeping.kit.length > 0)
  const isHeld = kept && (dish.keeps.how === 'hot' || dish.keeps.how === 'cold' || dish.keeps.how === 'frozen')
  return isHeld ? { ...first, since: Math.max(first.since, Math.min(toTable, msOfInstant(kept.to))) } : first
}

import { stateWords } from '#app/_words/care.ts'
import { clockText, countOf, dayName, dayOf } from '#app/_words/clock.ts'
import { dishKitText } from '#app/_words/dish-kit.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { Dish } from '#lib/domain/menu.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { dishKit } from '#lib/table/dish-kit.ts'

/** What the menu says of a dish beside its name. */
export interface DishAbout {
  /** "from 17:20", "begun Thursday", "no method yet". */
  readonly when: string
  /** "oven 200 to 210°, one shelf · a medium ring"; empty when it wants nothing. */
  readonly kit: string
  /** Only when there is something to say: that it is not on the menu, what it stands in for. */
  readonly state: string
  readonly steps: string
}

/** `begins`: when the order begins work on it, if it is planned. */
export const dishAbout = (evening: Evening, dish: Dish, order: RunningOrder | null, begins: number | null): DishAbout => {
  const steps = evening.steps.filter((step) => step.dish === dish.id).length
  return {
    when: whenText(evening, begins, steps),
    kit: dishKitText(dishKit(evening, dish.id, order)),
    state: stateText(evening, dish),
    steps: steps === 0 ? 'write its method' : countOf(steps, 'step'),
  }
}

const whenText = ({ date, zone }: Evening, begins: number | null, steps: number): string => {
  if (steps === 0) return 'no method yet'
  if (begins === null) return countOf(steps, 'step')
  const day = dayOf({ date, zone }, begins)
  return day < 0 ? `begun ${dayName(date, day)}` : `from ${clockText(begins, zone)}`
}

const stateText = ({ dishes }: Evening, dish: Dish): string => {
  const standsFor = dishes.filter((other) => other.standIn === dish.id).map((other) => other.name)
  const standIn = dishes.find((other) => other.id === dish.standIn)
  const of = dishes.find((other) => other.id === dish.variant?.of)
  return [
    dish.state === 'on' ? '' : stateWords[dish.state],
    ...standsFor.map((name) => `stands in for ${name}`),
    standIn ? `or ${standIn.name} in its place` : '',
    of && dish.variant ? `a variant of ${of.name} for ${dish.variant.portions}` : '',
  ]
    .filter(Boolean)
    .join(', ')
}

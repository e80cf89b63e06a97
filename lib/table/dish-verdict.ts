import type { Evening } from '#lib/domain/evening.ts'
import type { Ingredient } from '#lib/domain/ingredient.ts'
import type { Dish } from '#lib/domain/menu.ts'
import { GUARDS } from './guards-of-dish.ts'
import { type Item, itemOf, stepsOfDish } from './item.ts'
import { judgePlate, type Plate } from './judge-plate.ts'
import { madeOf } from './made-of.ts'
import { sameNeed } from './need.ts'
import type { Need, Verdict } from './verdict.ts'

/** What is surely in a dish, and what of the dish that it is a variant of may be: that is in no step. */
export interface InDish {
  readonly sure: readonly Item[]
  readonly loose: readonly Item[]
}

const ingredientsOf = (evening: Evening, dish: string): readonly Ingredient[] =>
  evening.ingredients.filter((ingredient) => ingredient.dish === dish)

/** A variant has its own ingredients and those that go into its dish up to the fork. */
export const itemsOf = (evening: Evening, dish: Dish): InDish => {
  const own = ingredientsOf(evening, dish.id).map((one) => itemOf(one, stepsOfDish(evening, dish.id)))
  if (!dish.variant) return { sure: own, loose: [] }
  const { of, fork } = dish.variant
  const steps = stepsOfDish(evening, of)
  const last = steps.findIndex(({ id }) => id === fork)
  const base = ingredientsOf(evening, of)
  const isShared = ({ step }: Ingredient) => step !== undefined && steps.findIndex(({ id }) => id === step) <= last
  // Steps of both: what is shared goes on being cooked in the variant.
  const along = [...steps.slice(0, last + 1), ...stepsOfDish(evening, dish.id)]
  return {
    sure: [...own, ...base.filter(isShared).map((one) => itemOf(one, along))],
    loose: base.filter(({ step }) => step === undefined).map((one) => itemOf(one, along)),
  }
}

/** The severe needs for which the plan has every guard of this dish. */
const guardedFor = (evening: Evening, dish: string): readonly string[] => {
  const guards = stepsOfDish(evening, dish).flatMap(({ guard }) => (guard ? [guard] : []))
  const words = [...new Set(guards.map((guard) => sameNeed(guard.for)))]
  return words.filter((word) =>
    GUARDS.every((does) => guards.some((guard) => sameNeed(guard.for) === word && guard.does === does)),
  )
}

const plateOfDish = (evening: Evening, dish: Dish, items: readonly Item[]): Plate => {
  const holds = dish.confirmed?.of === madeOf(evening, dish)
  return {
    items,
    rules: evening.rules,
    confirmed: holds ? (dish.confirmed?.for ?? []) : [],
    changedSince: holds ? [] : (dish.confirmed?.for ?? []),
    otherKitchen: dish.kitchen === evening.host ? null : dish.kitchen,
    guarded: guardedFor(evening, dish.id),
  }
}

/** Whether a dish of the evening is right for somebody with these needs; null: nobody has asked them. */
export const dishVerdict = (evening: Evening, dish: Dish, needs: readonly Need[] | null): Verdict => {
  const { sure, loose } = itemsOf(evening, dish)
  const without = judgePlate(plateOfDish(evening, dish, sure), needs)
  if (loose.length === 0) return without
  const withAll = judgePlate(plateOfDish(evening, dish, [...sure, ...loose]), needs)
  return without.kind === 'does-not' || withAll.kind === without.kind
    ? without
    : { kind: 'not-confirmed', because: withAll.because }
}

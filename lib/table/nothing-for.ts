import type { Evening } from '#lib/domain/evening.ts'
import type { Ingredient } from '#lib/domain/ingredient.ts'
import type { Dish } from '#lib/domain/menu.ts'
import type { KnownNeed } from '#lib/domain/people.ts'
import { type Suits, suits } from './suits.ts'
import type { Warning } from './warning.ts'

/** Whether a dish of the evening suits a need, a variant with what it shares with the dish that it is of. */
export const dishSuits = (evening: Evening, dish: Dish, need: string): Suits => {
  const own = ingredientsOf(evening, dish.id)
  if (!dish.variant) return suits(own, need)
  const { of, fork } = dish.variant
  const steps = evening.steps.filter((step) => step.dish === of).map(({ id }) => id)
  const last = steps.indexOf(fork)
  const isShared = ({ step }: Ingredient) => step !== undefined && steps.indexOf(step) <= last
  const base = ingredientsOf(evening, of)
  const sure = suits([...own, ...base.filter(isShared)], need)
  // What of the other dish is in no step may be in this one too.
  const loose = base.filter(({ step }) => step === undefined)
  return sure === 'does-not' || suits([...own, ...base.filter(isShared), ...loose], need) === sure ? sure : 'not-confirmed'
}

const ingredientsOf = (evening: Evening, dish: string): readonly Ingredient[] =>
  evening.ingredients.filter((ingredient) => ingredient.dish === dish)

const GRAVEST: readonly KnownNeed['grade'][] = ['severe', 'allergy', 'avoids', 'dislikes']

/**
 * The courses that have no dish known to be right for a need somebody has told. A dislike leaves something to eat and is not one of them.
 * Needs that are surely not met stand apart from those that are only not confirmed; the gravest first.
 */
export const nothingFor = (evening: Evening, needs: readonly KnownNeed[]): Warning[] =>
  evening.courses.flatMap((course) => {
    const dishes = evening.dishes.filter((dish) => dish.course === course.id && dish.state === 'on')
    if (dishes.length === 0) return []
    const told = needs
      .filter(({ grade }) => grade !== 'dislikes')
      .toSorted((a, b) => GRAVEST.indexOf(a.grade) - GRAVEST.indexOf(b.grade))
    const found = told.map((need) => ({
      need,
      all: dishes.map((dish) => ({ dish, suits: dishSuits(evening, dish, need.need) })),
    }))
    const missing = found.filter(({ all }) => !all.some((one) => one.suits === 'fits' || one.suits === 'with-change'))
    const open = ({ all }: (typeof found)[number]) =>
      all.filter((one) => one.suits === 'not-confirmed').map(({ dish }) => dish.id)
    const warning = (those: typeof found): Warning[] =>
      those.length === 0
        ? []
        : [
            {
              kind: 'nothing-for',
              course: course.id,
              needs: those.map(({ need }) => need),
              open: [...new Set(those.flatMap(open))],
            },
          ]
    return [
      ...warning(missing.filter((one) => open(one).length === 0)),
      ...warning(missing.filter((one) => open(one).length > 0)),
    ]
  })

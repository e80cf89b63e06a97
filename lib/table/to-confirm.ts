import type { Evening } from '#lib/domain/evening.ts'
import { dishVerdict } from './dish-verdict.ts'
import { isAllergyGrade } from './need.ts'
import type { Need } from './verdict.ts'

/**
 * Dishes of other homes whose cook has still to say, for an allergy that somebody at the table has, what is in them, that labels were read
 * and that they were kept apart. Not those that are not right for it anyhow.
 */
export const toConfirm = (evening: Evening, needs: readonly Need[]): ReadonlySet<string> => {
  const allergies = needs.filter(({ grade }) => isAllergyGrade(grade))
  return new Set(
    evening.dishes
      .filter(
        (dish) =>
          dish.state === 'on' &&
          dish.kitchen !== evening.host &&
          allergies.some((need) => dishVerdict(evening, dish, [need]).kind === 'not-confirmed'),
      )
      .map(({ id }) => id),
  )
}

import type { Evening } from '#lib/domain/evening.ts'
import { madeOf } from './made-of.ts'

/**
 * Dishes of other homes whose cook has still to say what is in them, that labels were read and that they were kept apart; again when they
 * are made of something else since. Whoever may need it: that an answer is wanted tells nothing of a guest.
 */
export const toConfirm = (evening: Evening): ReadonlySet<string> =>
  new Set(
    evening.dishes
      .filter((dish) => dish.state === 'on' && dish.kitchen !== evening.host && dish.confirmed?.of !== madeOf(evening, dish))
      .map(({ id }) => id),
  )

import type { Evening } from '#lib/domain/evening.ts'
import { coversOf, portionsOf } from '#lib/domain/portions.ts'
import type { CourseCoverage } from './coverage.ts'

/** A dish made for some that more guests have to live by. */
export interface TooFew {
  readonly dish: string
  readonly portions: number
  /** How many come, or may come, for whom another dish of the course that is made for more is not right, and this one is or may be. */
  readonly wanted: number
}

/**
 * Dishes made for fewer than the covers, as a second main for those who eat no meat is: too few when more guests cannot have a dish of the
 * course that is made for more. Nobody is counted who cannot have this one either.
 */
export const tooFew = (evening: Evening, covered: readonly CourseCoverage[]): readonly TooFew[] =>
  covered.flatMap(({ guests }) => {
    const made = new Map(
      (guests[0]?.dishes ?? []).flatMap(({ dish: id }) => {
        const dish = evening.dishes.find((each) => each.id === id)
        return dish && !dish.variant ? [[id, portionsOf(evening, dish)] as const] : []
      }),
    )
    return [...made].flatMap(([dish, portions]): TooFew[] => {
      const course = evening.dishes.find(({ id }) => id === dish)?.course ?? ''
      if (portions >= coversOf(evening, course)) return []
      const needIt = guests.filter(({ dishes }) => {
        const cannot = (id: string) => dishes.some((each) => each.dish === id && each.verdict.kind === 'does-not')
        return !cannot(dish) && [...made].some(([other, more]) => more > portions && cannot(other))
      })
      return needIt.length > portions ? [{ dish, portions, wanted: needIt.length }] : []
    })
  })

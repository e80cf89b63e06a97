import type { Evening } from '#lib/domain/evening.ts'
import type { Guest } from '#lib/domain/people.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { msOfInstant } from '#lib/domain/time.ts'
import { ethanolMl } from './alcohol.ts'
import { type MayPour, mayPour, pourFor } from './pour.ts'

/** What a guest is poured with one course, and how much alcohol that makes so far. */
export interface Poured {
  readonly course: string
  readonly drink: string | null
  readonly ethanolMl: number
  readonly soFarMl: number
  /** Milliseconds since 1970: when the course is to reach the table; null when that is not planned. */
  readonly at: number | null
}

/** What a guest will have had by the end, if everything poured once is drunk. */
export interface Had {
  readonly guest: string
  readonly may: MayPour
  readonly poured: readonly Poured[]
  readonly ethanolMl: number
  /** Millilitres of ethanol an hour, from the first glass with alcohol until the last plates are off; null when that is not planned. */
  readonly perHourMl: number | null
}

const HOUR_MS = 3_600_000

/** For each guest who has not said no, in their order: what they are poured course by course. For hosts' eyes: it has guests' ids. */
export const hadBy = (evening: Evening, guests: readonly Guest[], order: RunningOrder | null): readonly Had[] => {
  const planned = new Map(order?.courses.map((course) => [course.course, course]))
  const offs = (order?.courses ?? []).map(({ platesOff }) => msOfInstant(platesOff))
  const courses = evening.courses.map((course) => ({
    course: course.id,
    drinks: evening.drinks.filter((drink) => drink.course === course.id),
    at: timeOf(planned.get(course.id)?.toTable),
  }))
  return guests
    .filter(({ reply }) => reply !== 'no')
    .map((guest): Had => {
      let soFarMl = 0
      const poured = courses.map(({ course, drinks, at }): Poured => {
        const drink = pourFor(drinks, guest)
        const ethanol = drink ? ethanolMl(drink.mlEach, drink.abv) : 0
        soFarMl += ethanol
        return { course, drink: drink?.id ?? null, ethanolMl: ethanol, soFarMl, at }
      })
      const first = poured.find((each) => each.ethanolMl > 0)?.at ?? null
      const hours = first === null || offs.length === 0 ? null : (Math.max(...offs) - first) / HOUR_MS
      return {
        guest: guest.id,
        may: mayPour(guest),
        poured,
        ethanolMl: soFarMl,
        // Less than an hour is counted as one: a single glass has no pace.
        perHourMl: hours === null ? null : soFarMl / Math.max(1, hours),
      }
    })
}

const timeOf = (instant: string | undefined): number | null => (instant === undefined ? null : msOfInstant(instant))

import type { Evening } from '#lib/domain/evening.ts'
import { nearestClaims } from '#lib/domain/nearest-claim.ts'

/** What a course comes to: who has it, or its dishes and their steps, and what of it nobody has. */
export interface CourseStand {
  readonly course: string
  readonly held: string | null
  readonly dishes: readonly {
    readonly dish: string
    /** By its own claim. */
    readonly held: string | null
    /** Steps that somebody has for themselves alone. */
    readonly steps: readonly { readonly step: string; readonly cook: string }[]
    /** How many of its steps nobody has. */
    readonly open: number
  }[]
}

/** How the work stands by the claims, in the order of the plan's own lists. */
export interface Stand {
  readonly courses: readonly CourseStand[]
  readonly chores: readonly { readonly step: string; readonly held: string | null }[]
  /** Steps that nobody has, and how many there are in all. */
  readonly open: number
  readonly steps: number
}

/** What everybody has taken on, and what nobody has; dishes that are on only. */
export const standOf = (evening: Evening): Stand => {
  const held = nearestClaims(evening)
  const claimOf = new Map(evening.claims.map(({ target, cook }) => [target, cook]))
  const on = evening.dishes.filter(({ state }) => state === 'on')
  const steps = evening.steps.filter(({ dish }) => dish === null || on.some(({ id }) => id === dish))
  return {
    courses: evening.courses.map((course) => ({
      course: course.id,
      held: claimOf.get(course.id) ?? null,
      dishes: on
        .filter((dish) => dish.course === course.id)
        .map((dish) => {
          const own = steps.filter((step) => step.dish === dish.id)
          return {
            dish: dish.id,
            held: claimOf.get(dish.id) ?? null,
            steps: own.flatMap((step) => {
              const cook = claimOf.get(step.id)
              return cook === undefined ? [] : [{ step: step.id, cook }]
            }),
            open: own.filter((step) => held(step) === null).length,
          }
        }),
    })),
    chores: steps.flatMap((step) => (step.dish === null ? [{ step: step.id, held: claimOf.get(step.id) ?? null }] : [])),
    open: steps.filter((step) => held(step) === null).length,
    steps: steps.length,
  }
}

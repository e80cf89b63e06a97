import { Id } from '#lib/domain/atoms.ts'
import { fail, ok, type Result } from '#lib/domain/result.ts'
import type { Whole } from '#lib/plan/settle-dish.ts'
import { seatOf } from '#server/auth/seat.ts'
import { live } from '#server/live.ts'
import { canReadEvening } from './may.ts'
import type { EveningRefusal } from './refusal.ts'

/** A dish that could be copied, as a line of a list. */
export interface DishLine {
  readonly id: string
  readonly name: string
  readonly course: string
}

/** The dishes of an evening at which one has a seat, in the order of its menu. */
export const listDishes = async (userId: string, eveningId: string): Promise<Result<readonly DishLine[], EveningRefusal>> => {
  const evening = await readable(userId, eveningId)
  if (!evening) return fail({ kind: 'not-found' })
  return ok(
    evening.courses.flatMap((course) =>
      evening.dishes
        .filter((dish) => dish.course === course.id)
        .map((dish) => ({ id: dish.id, name: dish.name, course: course.name })),
    ),
  )
}

/** One such dish with its steps and ingredients; nothing else of its evening. */
export const readDish = async (userId: string, eveningId: string, dishId: string): Promise<Result<Whole, EveningRefusal>> => {
  const evening = await readable(userId, eveningId)
  const dish = evening?.dishes.find(({ id }) => id === dishId)
  if (!evening || !dish) return fail({ kind: 'not-found' })
  return ok({
    dish,
    steps: evening.steps.filter((step) => step.dish === dish.id),
    ingredients: evening.ingredients.filter((ingredient) => ingredient.dish === dish.id),
    away: dish.kitchen !== evening.host,
  })
}

/** The evening, or null for who has no seat at it: to them it is as if there were none. */
const readable = async (userId: string, eveningId: string) => {
  if (!Id.safeParse(eveningId).success || !canReadEvening(await seatOf(userId, eveningId))) return null
  return live().rooms.read(eveningId)
}

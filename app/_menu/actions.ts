'use server'

import { eveningRefusalText } from '#app/_evenings/refusal.ts'
import type { Result } from '#lib/domain/result.ts'
import type { Whole } from '#lib/plan/settle-dish.ts'
import { requireUser } from '#server/auth/who.ts'
import { type DishLine, listDishes, readDish } from '#server/evenings/copy.ts'
import { listEvenings } from '#server/evenings/list.ts'

/** What was asked for, or why there is none, in words. */
type Answer<T> = { readonly found: T; readonly message: null } | { readonly found: null; readonly message: string }

const answered = <T>(result: Result<T, Parameters<typeof eveningRefusalText>[0]>): Answer<T> =>
  result.ok ? { found: result.value, message: null } : { found: null, message: eveningRefusalText(result.error) }

export interface EveningChoice {
  readonly id: string
  readonly name: string
  readonly date: string
}

/** The evenings of which one may copy dishes. */
export const eveningsToCopyAction = async (): Promise<readonly EveningChoice[]> => {
  const user = await requireUser()
  return (await listEvenings(user.id)).filter(({ dishes }) => dishes > 0).map(({ id, name, date }) => ({ id, name, date }))
}

export const dishesToCopyAction = async (eveningId: string): Promise<Answer<readonly DishLine[]>> => {
  const user = await requireUser()
  return answered(await listDishes(user.id, eveningId))
}

export const dishToCopyAction = async (eveningId: string, dishId: string): Promise<Answer<Whole>> => {
  const user = await requireUser()
  return answered(await readDish(user.id, eveningId, dishId))
}

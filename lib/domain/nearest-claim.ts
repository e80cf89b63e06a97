import type { Evening } from './evening.ts'
import type { Dish, Step } from './menu.ts'
import type { Claim } from './people.ts'

/** Who has a step: its own claim, or else its dish's, or else its course's; null when nobody has. */
export const nearestClaims = ({ claims, dishes }: Pick<Evening, 'claims' | 'dishes'>): ((step: Step) => Claim | null) => {
  const byTarget = new Map<string, Claim>(claims.map((claim) => [claim.target, claim]))
  const dishById = new Map<string, Dish>(dishes.map((dish) => [dish.id, dish]))
  return (step) => {
    const dish = step.dish === null ? undefined : dishById.get(step.dish)
    return byTarget.get(step.id) ?? (dish === undefined ? null : (byTarget.get(dish.id) ?? byTarget.get(dish.course) ?? null))
  }
}

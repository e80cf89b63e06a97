import type { Evening } from '#lib/domain/evening.ts'
import { countOf, listText } from './clock.ts'
import { namesOf } from './names.ts'

const FEW = 3

/** What a cook has taken on: "the soup and two steps". Empty when nothing. */
export const claimedText = (evening: Evening, cook: string): string => {
  const names = namesOf(evening)
  const targets = evening.claims.filter((claim) => claim.cook === cook).map((claim) => claim.target)
  const named = targets.flatMap((id) => (names.course(id) ? [names.courseName(id)] : names.dish(id) ? [names.dishName(id)] : []))
  const steps = targets.filter((id) => names.step(id)).length
  const shown = named.length > FEW ? [...named.slice(0, FEW), countOf(named.length - FEW, 'other dish', 'other dishes')] : named
  return listText([...shown, ...(steps > 0 ? [countOf(steps, 'step')] : [])])
}

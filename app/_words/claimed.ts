import type { Evening } from '#lib/domain/evening.ts'
import type { Claim } from '#lib/domain/people.ts'
import { countOf, listText } from './clock.ts'
import { type Names, namesOf } from './names.ts'

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

/** "You have this", "Noor and Piet have this". */
export const heldText = ({ cook, also = [] }: Claim, mine: string | null, names: Names): string => {
  const team = [cook, ...also]
  const others = team.filter((one) => one !== mine).map(names.cookName)
  if (others.length < team.length) return others.length === 0 ? 'You have this' : `${listText(['You', ...others])} have this`
  return `${listText(others)} ${others.length === 1 ? 'has' : 'have'} this`
}

/** What a claim would make worse: "It costs: Main to table 6 min later, Piet is up 4 min more." */
export const priceText = (worse: readonly string[]): string => `It costs: ${worse.join(', ')}.`

import { breaches } from '#lib/scheduling/breaches.ts'
import { cost } from '#lib/scheduling/cost.ts'
import type { Problem } from '#lib/scheduling/problem.ts'
import { GOALS, type Schedule } from '#lib/scheduling/schedule.ts'
import { verify } from '#lib/scheduling/verify/verify.ts'

/** What the verifier holds against a schedule or against the engine's own account of it; null when nothing. */
export const complaint = (problem: Problem, schedule: Schedule): string | null => {
  const verdict = verify(problem, schedule)
  if (verdict.violations.length > 0) return JSON.stringify(verdict.violations)
  const own = cost(problem, schedule)
  const apart = [
    ...GOALS.map((goal) => [goal, own.goals[goal], verdict.cost.goals[goal]] as const),
    ['total', own.total, verdict.cost.total] as const,
  ]
    .filter(([, engine, verifier]) => Math.abs(engine - verifier) > 1e-6)
    .map(([goal, engine, verifier]) => `${goal} ${engine} is ${verifier}`)
  if (apart.length > 0) return apart.join(', ')
  const [theirs, ours] = [breaches(problem, schedule), verdict.breaches].map((list) =>
    list.map((one) => JSON.stringify(sorted(one))).sort(),
  )
  return JSON.stringify(theirs) === JSON.stringify(ours) ? null : `breaches ${JSON.stringify(theirs)} are ${JSON.stringify(ours)}`
}

const sorted = (thing: object): object => Object.fromEntries(Object.entries(thing).sort(([a], [b]) => (a < b ? -1 : 1)))

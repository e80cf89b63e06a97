import { expect } from 'vitest'
import type { Problem } from '#lib/scheduling/problem.ts'
import type { Schedule } from '#lib/scheduling/schedule.ts'
import { verify } from '#lib/scheduling/verify/verify.ts'

/** What a broken schedule is expected to be told: "H4 early pie,fruit". */
export const told = (problem: Problem, schedule: Schedule): string[] =>
  verify(problem, schedule).violations.map(({ rule, why, activities, servings, deliveries }) =>
    [rule, why.what, [...activities, ...servings, ...deliveries].join(',')].filter(Boolean).join(' '),
  )

/** The good schedule is accepted, and each broken one is refused for exactly the reasons given. */
export const expectRule = (problem: Problem, good: Schedule, broken: readonly (readonly [Schedule, ...string[]])[]): void => {
  expect(told(problem, good)).toEqual([])
  for (const [schedule, ...reasons] of broken) expect(told(problem, schedule)).toEqual(reasons)
}

import { breaches } from '#lib/scheduling/breaches.ts'
import type { Problem } from '#lib/scheduling/problem.ts'
import type { Schedule } from '#lib/scheduling/schedule.ts'

/** C4: nothing waits past what it stands: between its steps, before the table or on the road. */
export const keeping = (problem: Problem, schedule: Schedule): number =>
  breaches(problem, schedule).reduce(
    (sum, { kind, by }) => (kind === 'lag' || kind === 'keeps' || kind === 'carry' ? sum + problem.weights.past * by : sum),
    0,
  )

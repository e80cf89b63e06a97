import { expect, test } from 'vitest'
import type { Activity, Mode, Problem } from '#lib/scheduling/problem.ts'
import { isProject, projectOf } from '#lib/scheduling/project/of-problem.ts'
import { spanOf } from '#lib/scheduling/project/project.ts'
import { solveProject } from '#lib/scheduling/project/solve-project.ts'
import { solve } from '#lib/scheduling/solve.ts'
import { verify } from '#lib/scheduling/verify/verify.ts'
import { projectProblem } from '#tests/support/project-problem.ts'
import { randomProject } from '#tests/support/random-project.ts'

const some = projectProblem(randomProject(3, 12, false))

test('J1 solve plans a project as one: what it costs is the proven length, and the referee accepts it', () => {
  let planned = 0
  for (let seed = 1; seed <= 40; seed++) {
    const problem = projectProblem(randomProject(seed, 12, seed % 2 === 0))
    expect(isProject(problem)).toBe(true)
    const project = projectOf(problem)
    const { starts, proof } = solveProject(project, { steps: 3_000, seed })
    const schedule = solve(problem, { steps: 3_000, seed })
    const { violations, cost } = verify(problem, schedule)
    expect(violations, `seed ${seed}`).toEqual([])
    if (!starts) {
      expect(proof, `seed ${seed}`).toBe('infeasible')
      expect(schedule.left.length, `seed ${seed}`).toBeGreaterThan(0)
      continue
    }
    planned += 1
    expect([proof, cost.total], `seed ${seed}`).toEqual(['optimal', spanOf(project, starts)])
  }
  expect(planned).toBeGreaterThan(20)
})

test('J1 a problem that begins later, with steps that may run together only so often, is the same project moved', () => {
  const problem = projectProblem({ ...randomProject(5, 8, false), stores: [] })
  const later = 100
  const moved: Problem = {
    ...problem,
    horizon: { from: later, to: problem.horizon.to + later },
    activities: problem.activities.map((one) => ({ ...one, from: (one.from ?? 0) + later, to: (one.to ?? 0) + later })),
    servings: problem.servings.map((one) => ({ ...one, role: { kind: 'first', sitDown: later } })),
    together: [{ activities: problem.activities.map(({ id }) => id), most: 1 }],
  }
  const schedule = solve(moved, { steps: 2_000, seed: 1 })
  const { violations, cost } = verify(moved, schedule)
  expect(violations).toEqual([])
  const { starts } = solveProject(projectOf(moved), { steps: 2_000, seed: 1 })
  expect(cost.total).toBe(starts && spanOf(projectOf(moved), starts))
  expect(cost.total).toBeGreaterThanOrEqual(problem.activities.reduce((sum, { modes }) => sum + (modes[0]?.likely ?? 0), 0))
})

const firstOnly = (problem: Problem, change: (activity: Activity) => Activity): Problem => ({
  ...problem,
  activities: problem.activities.map((activity, i) => (i === 0 ? change(activity) : activity)),
})
const firstMode = (problem: Problem, parts: Partial<Mode>): Problem =>
  firstOnly(problem, (activity) => ({ ...activity, modes: activity.modes.map((mode) => ({ ...mode, ...parts })) }))

test.each<[string, (problem: Problem) => Problem]>([
  ['somebody attends', (problem) => firstMode(problem, { care: 'eye', cooks: 1 })],
  ['there is a touch', (problem) => firstMode(problem, { touches: [{ when: 'in', takes: 1, lateBy: 0 }] })],
  ['a length may vary', (problem) => firstMode(problem, { upTo: 1_000 })],
  ['a length is not whole', (problem) => firstMode(problem, { likely: 1.5 })],
  ['a ring is used', (problem) => firstMode(problem, { uses: [{ kind: 'ring', size: 1 }] })],
  ['no kit is of that class', (problem) => firstMode(problem, { uses: [{ kind: 'store', of: 'sink', amount: 1 }] })],
  ['there are two ways', (problem) => firstOnly(problem, (one) => ({ ...one, modes: [...one.modes, ...one.modes] }))],
  ['something has happened', (problem) => firstOnly(problem, (one) => ({ ...one, fact: { kind: 'done', start: 0, end: 1 } }))],
  ['a chore is of no dish', (problem) => firstOnly(problem, ({ delivery, ...one }) => one)],
  ['it is the night', (problem) => ({ ...problem, now: 0 })],
  [
    'a lag may be broken',
    (problem) => ({ ...problem, lags: problem.lags.map((one) => ({ ...one, most: 99, bound: 'quality' })) }),
  ],
  ['waiting costs', (problem) => ({ ...problem, weights: { ...problem.weights, early: 1 } })],
  ['leaving out is cheap', (problem) => ({ ...problem, weights: { ...problem.weights, left: 1 } })],
  ['there are two courses', (problem) => ({ ...problem, servings: [...problem.servings, ...problem.servings] })],
  [
    'the dish keeps in kit',
    (problem) => ({
      ...problem,
      deliveries: problem.deliveries.map((one) => ({
        ...one,
        keeps: { ...one.keeps, uses: [{ kind: 'store' as const, of: 'store 0', amount: 1 }] },
      })),
    }),
  ],
])('J1 it is no project when %s', (_, change) => {
  expect(isProject(some)).toBe(true)
  expect(isProject(change(some))).toBe(false)
})

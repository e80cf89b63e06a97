import { expect, test } from 'vitest'
import { spanOf } from '#lib/scheduling/project/project.ts'
import { solveProject } from '#lib/scheduling/project/solve-project.ts'
import { keepsProject, shortestByForce } from '#tests/support/brute-project.ts'
import { randomProject } from '#tests/support/random-project.ts'

const STEPS = 20_000

test('J2 random small projects with maximum lags and windows: as short as brute force, and infeasible when it finds nothing', () => {
  const seen = { optimal: 0, infeasible: 0 }
  for (let seed = 1; seed <= 300; seed++) {
    const project = randomProject(seed, 5, true)
    const { starts, proof, bound } = solveProject(project, { steps: STEPS, seed })
    const shortest = shortestByForce(project)
    expect(proof, `seed ${seed}`).toBe(shortest === undefined ? 'infeasible' : 'optimal')
    seen[shortest === undefined ? 'infeasible' : 'optimal'] += 1
    if (!starts) continue
    expect(keepsProject(project, starts), `seed ${seed}`).toBe(true)
    expect([spanOf(project, starts), bound], `seed ${seed}`).toEqual([shortest, shortest])
  }
  expect(seen.optimal).toBeGreaterThan(50)
  expect(seen.infeasible).toBeGreaterThan(50)
})

test('J2 random small projects without maximum lags are as short as brute force', () => {
  for (let seed = 1001; seed <= 1060; seed++) {
    const project = randomProject(seed, 5, false)
    const { starts, proof } = solveProject(project, { steps: STEPS, seed })
    expect(proof, `seed ${seed}`).toBe('optimal')
    expect(starts && keepsProject(project, starts), `seed ${seed}`).toBe(true)
    expect(starts && spanOf(project, starts), `seed ${seed}`).toBe(shortestByForce(project))
  }
})

test('J3 the same project, seed and steps give the same; more steps are never longer; a stop is heeded', () => {
  for (let seed = 1; seed <= 12; seed++) {
    const project = randomProject(seed, 40, seed % 2 === 0)
    const lengths = [1, 60, 200, 1_000, 5_000].map((steps) => {
      const one = solveProject(project, { steps, seed })
      expect(solveProject(project, { steps, seed })).toEqual(one)
      expect(one.steps).toBeLessThanOrEqual(steps + 80)
      if (one.starts) expect(keepsProject(project, one.starts), `seed ${seed}`).toBe(true)
      return one.starts ? spanOf(project, one.starts) : Number.POSITIVE_INFINITY
    })
    expect(lengths, `seed ${seed}`).toEqual(lengths.toSorted((a, b) => b - a))
    expect(solveProject(project, { steps: 1e9, seed, stop: () => true }).steps).toBeLessThan(200)
  }
})

import { expect, test } from 'vitest'
import type { Problem } from '#lib/scheduling/problem.ts'
import { solve } from '#lib/scheduling/solve.ts'
import { verify } from '#lib/scheduling/verify/verify.ts'
import { canProve, isBest, prove } from '#server/planner/prover/prove.ts'
import { isInstalled, openSolver } from '#server/planner/prover/solver.ts'
import { systemClock } from '#server/sync/clock.ts'
import { bruteForce, TOO_BIG } from '#tests/support/brute-force.ts'
import { withConstraint } from '#tests/support/more-constraints.ts'
import { randomProblem } from '#tests/support/random-problem.ts'
import { holdsOnAll, seeds } from './seeds.ts'

const EXACT = 1e-6
const NODES = 2_000

test('S11 one constraint more never makes the best schedule of a small problem cheaper, and often makes it dearer', () => {
  let compared = 0
  let dearer = 0
  holdsOnAll(seeds(5001, 40), (seed) => {
    const of = randomProblem(seed)
    const harder = withConstraint(of, seed)
    if (!harder) return null
    const [before, after] = [bruteForce(of, NODES), bruteForce(harder.problem, NODES)]
    if (before === TOO_BIG || after === TOO_BIG) return null
    compared += 1
    const rise = after.cost.total - before.cost.total
    if (rise > EXACT) dearer += 1
    if (rise < -EXACT) return `${harder.what} makes it cheaper by ${-rise}`
    const found = verify(harder.problem, solve(harder.problem, { steps: 300, seed })).cost.total
    return found < before.cost.total - EXACT ? `${harder.what}: the quick tier is below the best without it` : null
  })
  if (process.env.SEED !== undefined) return
  expect(compared).toBeGreaterThan(15)
  expect(dearer).toBeGreaterThan(compared / 5)
})

/** Loading the solver takes half a minute of a busy machine. */
const PATIENCE_MS = 600_000

test.runIf(isInstalled())(
  'S11 nor does it lower what the prover proves, which is what brute force finds',
  async () => {
    const solver = openSolver(systemClock)
    const signal = new AbortController().signal
    const proven = async (problem: Problem): Promise<number | null> => {
      const known = solve(problem, { steps: 2_000, seed: 1 })
      if (known.left.length > 0 || !canProve(problem)) return null
      const proof = await prove(problem, known, (model, work) => solver.solve(model, { work, seconds: 120, signal }))
      return isBest(proof) ? proof.cost : null
    }
    let compared = 0
    const broken: string[] = []
    for (const seed of seeds(6001, 24)) {
      const of = randomProblem(seed)
      const harder = withConstraint(of, seed)
      const before = await proven(of)
      if (before === null) continue
      compared += 1
      const exact = bruteForce(of, 60_000)
      if (exact !== TOO_BIG && Math.abs(exact.cost.total - before) > EXACT)
        broken.push(`seed ${seed}: proven ${before}, brute force ${exact.cost.total}`)
      const after = harder && (await proven(harder.problem))
      if (harder && after !== null && after < before - EXACT) broken.push(`seed ${seed}: ${harder.what}: ${after} < ${before}`)
    }
    await solver.close()
    expect(broken).toEqual([])
    if (process.env.SEED === undefined) expect(compared).toBeGreaterThan(5)
  },
  PATIENCE_MS,
)

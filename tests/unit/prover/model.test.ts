import { expect, test } from 'vitest'
import { toProblem } from '#lib/order/to-problem.ts'
import type { Problem } from '#lib/scheduling/problem.ts'
import { solve } from '#lib/scheduling/solve.ts'
import { verify } from '#lib/scheduling/verify/verify.ts'
import { canProve } from '#server/planner/prover/prove.ts'
import { readAnswer } from '#server/planner/prover/read-answer.ts'
import { writeModel } from '#server/planner/prover/write-model.ts'
import { holdsOnAll, seeds } from '#tests/laws/seeds.ts'
import { checkModel } from '#tests/support/check-model.ts'
import { randomEvening, SIZES } from '#tests/support/random-evening.ts'
import { randomProblem } from '#tests/support/random-problem.ts'

/** What is wrong with the models of a problem, tried with a schedule that is known to be right; null when nothing. */
const complaint = (problem: Problem, tried: { count: number }): string | null => {
  const known = solve(problem, { steps: 60, seed: 1 })
  if (!canProve(problem) || known.left.length > 0) return null
  tried.count += 1
  const cost = verify(problem, known).cost.total
  for (const open of [false, true]) {
    const { proto, written } = writeModel(problem, { known, most: cost, open })
    if (!proto.solutionHint) return 'not every variable has a value'
    const checked = checkModel(proto, proto.solutionHint.values)
    if (checked.broken.length > 0) return `${open ? 'open' : 'whole'}: ${checked.broken.slice(0, 3).join(', ')}`
    if (checked.cost > cost * 100 + 1e-6) return `${open ? 'open' : 'whole'}: ${checked.cost / 100} is more than ${cost}`
    if (open) continue
    const back = readAnswer(problem, written, proto.solutionHint.values)
    if (!back) return 'the rings are not told apart'
    const verdict = verify(problem, back)
    if (verdict.violations.length > 0) return JSON.stringify(verdict.violations)
    if (verdict.cost.total > cost + 1e-6) return `read back it costs ${verdict.cost.total} instead of ${cost}`
  }
  return null
}

test('N1 the model allows what the rules allow, at no higher price: random problems', () => {
  const tried = { count: 0 }
  holdsOnAll(seeds(1, 150), (seed) => complaint(randomProblem(seed), tried))
  if (process.env.SEED === undefined) expect(tried.count).toBeGreaterThan(50)
})

test('N1 the model allows what the rules allow, at no higher price: random evenings', () => {
  const tried = { count: 0 }
  const sizes = [SIZES.small, SIZES.small, SIZES.small, SIZES.middle]
  holdsOnAll(seeds(1, 8), (seed) => complaint(toProblem(randomEvening(seed, sizes[seed % 4])).problem, tried))
  if (process.env.SEED === undefined) expect(tried.count).toBeGreaterThan(4)
})

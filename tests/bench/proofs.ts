import { toProblem } from '#lib/order/to-problem.ts'
import { solve } from '#lib/scheduling/solve.ts'
import { verify } from '#lib/scheduling/verify/verify.ts'
import { isBest, prove } from '#server/planner/prover/prove.ts'
import { isInstalled, openSolver } from '#server/planner/prover/solver.ts'
import { systemClock } from '#server/sync/clock.ts'
import { BENCH_SIZES, type BenchSize, benchEvening } from '#tests/support/bench-evening.ts'
import { measured } from './cpu.ts'
import { type Report, table } from './table.ts'

/** One evening of each size, of neither set. */
const SEED = 1001
const QUICK_STEPS = 10_000
const QUESTION_S = 120

/** The proof tier in the same run, when it is there. */
export const proofs = async (report: Report): Promise<void> => {
  if (!isInstalled()) return report('Proof tier: not installed (npm run prover)\n')
  const solver = openSolver(systemClock)
  const signal = new AbortController().signal
  const rows: string[][] = []
  for (const size of Object.keys(BENCH_SIZES) as BenchSize[]) {
    const { problem } = toProblem(benchEvening(SEED, size))
    const { made: known, ms } = measured(() => solve(problem, { steps: QUICK_STEPS, seed: 1 }))
    let seconds = 0
    const proof = await prove(problem, known, async (model, work) => {
      const answer = await solver.solve(model, { work, seconds: QUESTION_S, signal })
      seconds += answer?.seconds ?? 0
      return answer
    })
    rows.push([
      size,
      verify(problem, known).cost.total.toFixed(2),
      ms.toFixed(0),
      proof.cost.toFixed(2),
      proof.bound.toFixed(2),
      isBest(proof) ? 'best' : `${((proof.cost / proof.bound - 1) * 100).toFixed(2)} %`,
      seconds.toFixed(1),
    ])
  }
  await solver.close()
  report('Proof tier: what it makes of what the quick tier found')
  table(report, ['size', 'quick', 'CPU ms', 'proof tier', 'bound', 'open', 'solver s'], rows)
}

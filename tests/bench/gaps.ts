import type { Problem } from '#lib/scheduling/problem.ts'
import type { Schedule } from '#lib/scheduling/schedule.ts'
import { solve } from '#lib/scheduling/solve.ts'
import { verify } from '#lib/scheduling/verify/verify.ts'
import { BENCH_SIZES } from '#tests/support/bench-evening.ts'
import { loadOptima, type OptimaSet } from '#tests/support/optima.ts'
import { cpuMs, median } from './cpu.ts'
import { type Report, table } from './table.ts'

const BUDGETS_MS = [50, 100, 500, 1000]
/** More than can be tried in the longest budget. */
const ENDLESS = 100_000_000

/** What the search has after so much processor time. */
const solveFor = (problem: Problem, ms: number): Schedule => {
  const until = cpuMs() + ms
  return solve(problem, { steps: ENDLESS, seed: 1, stop: () => cpuMs() >= until })
}

/** How much dearer the quick tier is than the proven optimum. */
export const gaps = (report: Report, set: OptimaSet): void => {
  const all = loadOptima(set)
  const rows = Object.keys(BENCH_SIZES).flatMap((size) => {
    const own = all.filter(({ optimum }) => optimum.size === size)
    if (own.length === 0) return []
    return BUDGETS_MS.map((ms) => {
      const made = own.map(({ optimum, problem }) => {
        const began = cpuMs()
        const schedule = solveFor(problem, ms)
        const { cost, violations } = verify(problem, schedule)
        return {
          took: cpuMs() - began,
          gap: (cost.total / optimum.cost - 1) * 100,
          isWhole: schedule.left.length === 0 && violations.length === 0,
          isOptimal: cost.total - optimum.cost < 0.01,
        }
      })
      const whole = made.filter(({ isWhole }) => isWhole)
      return [
        size,
        String(own.length),
        String(ms),
        median(made.map(({ took }) => took)).toFixed(0),
        `${median(whole.map(({ gap }) => gap)).toFixed(2)} %`,
        `${Math.max(...whole.map(({ gap }) => gap)).toFixed(2)} %`,
        String(made.filter(({ isOptimal }) => isOptimal).length),
        `${whole.length} of ${own.length}`,
      ]
    })
  })
  report(`Quick tier against the proof tier, ${set} evenings: gap to the proven optimum`)
  table(report, ['size', 'proven', 'CPU ms', 'took', 'median gap', 'worst gap', 'optimal', 'whole plans'], rows)
}

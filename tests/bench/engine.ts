import { toProblem } from '#lib/order/to-problem.ts'
import { chances } from '#lib/scheduling/chance/chances.ts'
import { DEFAULT_BUDGET_STEPS, solve } from '#lib/scheduling/solve.ts'
import { verify } from '#lib/scheduling/verify/verify.ts'
import { demoEvening } from '#prisma/demo/demo-evening.ts'
import { benchEvening } from '#tests/support/bench-evening.ts'
import { loadEvening } from '#tests/support/load-evening.ts'
import { SETS } from '#tests/support/optima.ts'
import { cpuMs, measured } from './cpu.ts'
import { gaps } from './gaps.ts'
import { nights } from './nights.ts'
import { proofs } from './proofs.ts'
import { type Report, table } from './table.ts'

/** Solves before anything is measured: the compiler of the machine has then seen the engine. */
const WARM_UP_STEPS = 20_000
const SAMPLES = 20_000

/** How good the engine is and how long it takes, in processor time: tables, no verdict. */
export const run = async (report: Report): Promise<void> => {
  for (const seed of [1, 2]) solve(toProblem(benchEvening(seed, 'middle')).problem, { steps: WARM_UP_STEPS, seed: 1 })
  for (const set of SETS) gaps(report, set)
  await proofs(report)
  nights(report)
  simulations(report)
  evenings(report)
}

const simulations = (report: Report): void => {
  const rows = (['small', 'middle', 'large'] as const).map((size) => {
    const { problem } = toProblem(benchEvening(1, size))
    const schedule = solve(problem, { steps: 3_000, seed: 1 })
    chances(problem, schedule, { samples: 1_000, seed: 1 })
    const { ms } = measured(() => chances(problem, schedule, { samples: SAMPLES, seed: 1 }))
    return [size, String(problem.activities.length), Math.round((SAMPLES / ms) * 1000).toLocaleString('en')]
  })
  report('Chances: simulated nights a second')
  table(report, ['evening', 'steps', 'samples/s'], rows)
}

const evenings = (report: Report): void => {
  const named = [
    ['the demo', demoEvening('2026-11-14')],
    ['evening A', loadEvening('a-lamb')],
    ['evening C', loadEvening('c-pork')],
  ] as const
  const rows = named.flatMap(([name, evening]) => {
    const { problem } = toProblem(evening)
    return [1_000, DEFAULT_BUDGET_STEPS, DEFAULT_BUDGET_STEPS * 4].map((steps) => {
      const began = cpuMs()
      const { cost, breaches, violations } = verify(problem, solve(problem, { steps, seed: 1 }))
      const ms = cpuMs() - began
      return [
        name,
        String(problem.activities.length),
        String(steps),
        ms.toFixed(0),
        cost.total.toFixed(2),
        String(breaches.length),
        String(violations.length),
      ]
    })
  })
  report('Whole evenings: cost and broken wishes by budget in steps')
  table(report, ['evening', 'steps', 'budget', 'CPU ms', 'cost', 'broken wishes', 'broken rules'], rows)
}

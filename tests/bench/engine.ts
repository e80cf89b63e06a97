import { readFileSync } from 'node:fs'
import type { Evening } from '#lib/domain/evening.ts'
import { parseEvening } from '#lib/domain/parse.ts'
import { toProblem } from '#lib/order/to-problem.ts'
import { solve } from '#lib/scheduling/solve.ts'
import { verify } from '#lib/scheduling/verify/verify.ts'
import { demoEvening } from '#prisma/demo/demo-evening.ts'
import { randomEvening, SIZES, type Size } from '#tests/support/random-evening.ts'

type Report = (line: string) => void

/** Insertions tried, from almost nothing to ample. */
const BUDGETS = [200, 2_000, 8_000]
/** Times that the plan of a single evening is made; the middle time counts. */
const ROUNDS = 3
/** Random evenings of each size; the middle cost counts. */
const SEEDS = [101, 102, 103, 104, 105]

const eveningA = (): Evening => {
  const file = new URL('../support/evenings/a-lamb.json', import.meta.url)
  const read = parseEvening(JSON.parse(readFileSync(file, 'utf8')))
  if (!read.ok) throw new Error('evening A is not an evening')
  return read.value
}

interface Kitchen {
  readonly name: string
  readonly evenings: readonly Evening[]
}

const random = (name: string, size: Size): Kitchen => ({
  name: `random ${name} (${size.steps} steps, ${size.courses} courses, ${size.cooks} cooks) × ${SEEDS.length}`,
  evenings: SEEDS.map((seed) => randomEvening(seed, size)),
})

const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN

/** How long a plan takes and what it costs, at several budgets: a table of medians. */
export const run = (report: Report): void => {
  const kitchens: Kitchen[] = [
    { name: 'demo evening', evenings: [demoEvening('2026-11-14')] },
    { name: 'evening A', evenings: [eveningA()] },
    ...Object.entries(SIZES).map(([name, size]) => random(name, size)),
  ]
  report('Engine: medians of plan time and cost (left out, broken wishes and broken rules are sums)')
  report(row('evening', 'activities', 'steps', 'ms', 'cost', 'left', 'wishes', 'rules'))
  for (const { name, evenings } of kitchens)
    for (const steps of BUDGETS) {
      const plans = evenings.map((evening) => measure(evening, steps, evenings.length > 1 ? 1 : ROUNDS))
      const middle = (of: (plan: Plan) => number) => median(plans.map(of))
      const sum = (of: (plan: Plan) => number) => plans.reduce((total, plan) => total + of(plan), 0)
      report(
        row(
          name,
          String(middle(({ activities }) => activities)),
          String(steps),
          middle(({ ms }) => ms).toFixed(0),
          middle(({ cost }) => cost).toFixed(0),
          String(sum(({ left }) => left)),
          String(sum(({ wishes }) => wishes)),
          String(sum(({ rules }) => rules)),
        ),
      )
    }
}

interface Plan {
  readonly activities: number
  readonly ms: number
  readonly cost: number
  readonly left: number
  readonly wishes: number
  readonly rules: number
}

const measure = (evening: Evening, steps: number, rounds: number): Plan => {
  const { problem } = toProblem(evening)
  const times: number[] = []
  let schedule = solve(problem, { steps: 1, seed: 1 })
  for (let round = 0; round < rounds; round += 1) {
    const before = performance.now()
    schedule = solve(problem, { steps, seed: 1 })
    times.push(performance.now() - before)
  }
  const { violations, cost, breaches } = verify(problem, schedule)
  return {
    activities: problem.activities.length,
    ms: median(times),
    cost: cost.total,
    left: schedule.left.length,
    wishes: breaches.length,
    rules: violations.length,
  }
}

const WIDTHS = [58, 11, 7, 7, 11, 6, 8, 7]
const row = (...cells: readonly string[]): string =>
  cells.map((cell, at) => (at === 0 ? cell.padEnd(WIDTHS[at] ?? 0) : cell.padStart(WIDTHS[at] ?? 0))).join('')

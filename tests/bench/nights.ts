import { planEvening } from '#lib/order/engine.ts'
import { toHint } from '#lib/order/hint.ts'
import { toProblem } from '#lib/order/to-problem.ts'
import type { Problem } from '#lib/scheduling/problem.ts'
import { repair } from '#lib/scheduling/repair.ts'
import type { Schedule } from '#lib/scheduling/schedule.ts'
import { solve } from '#lib/scheduling/solve.ts'
import { type BenchSize, benchEvening } from '#tests/support/bench-evening.ts'
import { randomNight } from '#tests/support/random-night.ts'
import { measured, median } from './cpu.ts'
import { type Report, table } from './table.ts'

const SEEDS = [2001, 2002, 2003, 2004, 2005]
const STEPS = { order: 2_000, better: 2_000 }

/** Planned steps that begin at another time than was told. */
const moved = (problem: Problem, schedule: Schedule): number =>
  (problem.previous ?? []).filter(
    (told) =>
      !problem.activities.find(({ id }) => id === told.activity)?.fact &&
      schedule.placements.find(({ activity }) => activity === told.activity)?.start !== told.start,
  ).length

/** Planning again on a night that went a little wrong: the repair alone, and with a search from it. */
export const nights = (report: Report): void => {
  const rows = (['small', 'middle', 'large'] as const).map((size: BenchSize) => {
    const made = SEEDS.map((seed) => {
      const evening = benchEvening(seed, size)
      const order = planEvening(evening, { budget: { steps: STEPS.order, seed: 1 }, quick: true })
      const night = randomNight(evening, order, seed)
      const { problem, index } = toProblem(night.evening, { now: night.now, previous: order })
      const last = toHint(problem, index, order)
      repair(problem, last)
      const repaired = measured(() => repair(problem, last))
      const better = measured(() => solve(problem, { steps: STEPS.better, seed: 1 }, repaired.made))
      return {
        repair: repaired.ms,
        repairMoved: moved(problem, repaired.made),
        better: better.ms,
        betterMoved: moved(problem, better.made),
        open: problem.activities.filter(({ fact }) => !fact).length,
      }
    })
    const middle = (of: (one: (typeof made)[number]) => number) => median(made.map(of))
    return [
      size,
      String(middle(({ open }) => open)),
      middle((one) => one.repair).toFixed(1),
      String(middle((one) => one.repairMoved)),
      middle((one) => one.better).toFixed(1),
      String(middle((one) => one.betterMoved)),
    ]
  })
  report(`On the night, after slips (medians of ${SEEDS.length}): the repair, and a search of ${STEPS.better} steps from it`)
  table(report, ['size', 'open steps', 'repair ms', 'moved', 'search ms', 'moved'], rows)
}

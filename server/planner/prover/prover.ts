import type { RunningOrder } from '#lib/domain/running-order.ts'
import { orderOf } from '#lib/order/engine.ts'
import { toHint } from '#lib/order/hint.ts'
import { wishName } from '#lib/order/replan.ts'
import { toProblem } from '#lib/order/to-problem.ts'
import { solve } from '#lib/scheduling/solve.ts'
import type { Prover } from '#server/planner/proving-runner.ts'
import { type Clock, systemClock } from '#server/sync/clock.ts'
import { proveFight } from './fight.ts'
import { type Ask, canProve, isBest, prove } from './prove.ts'
import { isInstalled, openSolver } from './solver.ts'

/** The quick tier's steps from the order that is shown, so that the solver begins with a whole schedule. */
const FROM_ORDER = 2_000
/** Seconds of one question to the solver, three of which make a proof, and many short ones a fight. */
const QUESTION_S = 20
/** A cheaper order is not better when a course's chance is worse by more than chance itself may be. */
const CHANCE = 0.02
const GOOD_CHANCE = 0.95

/** What proves running orders in this process's child; null when the solver is not installed. */
export const openProver = (clock: Clock = systemClock): Prover | null => {
  if (!isInstalled()) return null
  const solver = openSolver(clock)
  return {
    async prove({ evening, order, signal, ...options }) {
      const { problem, index } = toProblem(evening, options)
      if (!canProve(problem)) return null
      const known = solve(problem, { steps: FROM_ORDER, seed: order.of.seed }, toHint(problem, index, order))
      const ask: Ask = (model, work) => solver.solve(model, { work, seconds: QUESTION_S, signal })
      const proof = await prove(problem, known, ask)
      if (signal.aborted || proof.bound <= 0) return null
      const { steps, seed } = { steps: order.of.budget, seed: order.of.seed }
      const found = orderOf(evening, { ...options, budget: { steps, seed } }, proof.schedule)
      const chosen = isBetter(found, order) ? { ...found, of: order.of } : order
      if (isBest({ cost: chosen.total, bound: proof.bound })) return { ...chosen, proof: { kind: 'best' } }
      const fight = await proveFight(problem, toHint(problem, index, chosen), ask)
      return {
        ...chosen,
        proof: fight
          ? { kind: 'fight', wishes: fight.map((wish) => wishName(index, wish)) }
          : { kind: 'bound', total: proof.bound },
      }
    },
    close: () => solver.close(),
  }
}

/** Cheaper, and no course less sure of its time. */
const isBetter = (found: RunningOrder, shown: RunningOrder): boolean =>
  found.total < shown.total - 1e-6 &&
  found.courses.every(({ onTime }, index) => {
    const before = shown.courses[index]?.onTime
    return onTime === null || before === null || before === undefined || onTime >= Math.min(before, GOOD_CHANCE) - CHANCE
  })

import { expect, test } from 'vitest'
import { planEvening } from '#lib/order/engine.ts'
import { openProver } from '#server/planner/prover/prover.ts'
import { isInstalled } from '#server/planner/prover/solver.ts'
import { benchEvening } from '#tests/support/bench-evening.ts'

/** Loading the solver takes half a minute of a busy machine. */
const PATIENCE_MS = 240_000

test.runIf(!isInstalled())('N3 without the solver there is no prover', () => {
  expect(openProver()).toBeNull()
})

test.runIf(isInstalled())(
  'N2 with the solver an order is best, or how little one may cost is said, and a stopped proof says nothing',
  async () => {
    const prover = openProver()
    const evening = benchEvening(6, 'small')
    const order = planEvening(evening, { budget: { steps: 2_000, seed: 1 }, quick: true })
    const stopped = new AbortController()
    const gone = prover?.prove({ evening, order, signal: stopped.signal })
    stopped.abort()
    expect(await gone).toBeNull()
    const proven = await prover?.prove({ evening, order, signal: new AbortController().signal })
    await prover?.close()
    if (proven?.proof.kind === 'bound') expect(proven.proof.total).toBeLessThanOrEqual(proven.total)
    else expect(proven === null || proven?.proof.kind === 'best').toBe(true)
    expect(proven?.total ?? order.total).toBeLessThanOrEqual(order.total + 1e-6)
  },
  PATIENCE_MS,
)

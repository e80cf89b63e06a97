import { expect, test } from 'vitest'
import { demandsOf, relaxed, wishKey } from '#lib/scheduling/fight-relax.ts'
import { solve } from '#lib/scheduling/solve.ts'
import { proveFight } from '#server/planner/prover/fight.ts'
import { canProve } from '#server/planner/prover/prove.ts'
import { isInstalled, openSolver } from '#server/planner/prover/solver.ts'
import { systemClock } from '#server/sync/clock.ts'
import { fixedSeeds } from '#tests/laws/seeds.ts'
import { bruteForce, TOO_BIG } from '#tests/support/brute-force.ts'
import { randomProblem } from '#tests/support/random-problem.ts'

/** Loading the solver takes half a minute of a busy machine. */
const PATIENCE_MS = 600_000
const NODES = 20_000

test.runIf(isInstalled())(
  'N5 brute force keeps all wishes where no fight is proved, never those of a proved one, and all but any one of them',
  async () => {
    const solver = openSolver(systemClock)
    const signal = new AbortController().signal
    let fights = 0
    let none = 0
    const wrong: string[] = []
    for (const seed of fixedSeeds(1, 60)) {
      const { previous: _, ...of } = randomProblem(seed)
      const known = solve(of, { steps: 500, seed })
      if (!canProve(of) || known.left.length > 0) continue
      const given = demandsOf(of, new Set()).filter(({ kind }) => kind !== 'wish')
      const wishes = demandsOf(of, new Set()).flatMap((demand) => (demand.kind === 'wish' ? [demand.wish] : []))
      const isKept = (some: typeof wishes): boolean | null => {
        const best = bruteForce(
          relaxed(of, [...given, ...some.map((wish) => ({ kind: 'wish' as const, wish }))], new Set()),
          NODES,
        )
        return best === TOO_BIG ? null : best.cost.total < 1e-6
      }
      const fight = await proveFight(of, known, (model, work) => solver.solve(model, { work, seconds: 60, signal }))
      if (!fight) {
        // The model is wider than the rules, so that a fight may go unproved; what brute force keeps is never called one.
        if (isKept(wishes)) none += 1
        continue
      }
      fights += 1
      if (isKept([...fight])) wrong.push(`seed ${seed}: kept: ${fight.map(wishKey)}`)
      for (const one of fight)
        if (isKept(fight.filter((other) => other !== one)) === false)
          wrong.push(`seed ${seed}: ${wishKey(one)} can be spared of ${fight.map(wishKey)}`)
    }
    await solver.close()
    expect(wrong).toEqual([])
    if (process.env.SEED !== undefined) return
    expect(fights).toBeGreaterThan(3)
    expect(none).toBeGreaterThan(3)
  },
  PATIENCE_MS,
)

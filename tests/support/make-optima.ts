import { constants } from 'node:os'
import { solve } from '#lib/scheduling/solve.ts'
import { verify } from '#lib/scheduling/verify/verify.ts'
import { isBest, type Patience, prove } from '#server/planner/prover/prove.ts'
import { isInstalled, openSolver } from '#server/planner/prover/solver.ts'
import { systemClock } from '#server/sync/clock.ts'
import { BENCH_SIZES, type BenchSize } from './bench-evening.ts'
import { digestOf, type Optima, type OptimaSet, type Optimum, problemOf, readOptima, SETS, writeOptima } from './optima.ts'

/**
 * npm run optima: proves evenings of the bench and stores each one that is proved, until there are `WANTED` in both sets.
 * It goes on from what is stored; delete tests/fixtures/optima-*.json to make all anew.
 *
 * The limits, the same for every size, were set before the first was made. Seeds in order from `FIRST`. Passed over: evenings
 * of which the quick tier (`QUICK`) leaves something out or breaks a wish, since a broken wish is priced so high that nothing
 * else would count; and evenings whose proof stays open after the prover's questions, the whole model's with the work of
 * `PATIENCE`, or that are given up after the second because more than `hopeless` of the bound is open. Every one that was
 * passed over is stored with the reason.
 */
const WANTED: Readonly<Record<BenchSize, number>> = { small: 12, middle: 12, large: 6 }
/** First seeds: no evening is in both sets. */
const FIRST: Readonly<Record<OptimaSet, number>> = { tuning: 1, 'hold-out': 501 }
const QUICK = { steps: 8_000, seed: 1 }
const PATIENCE: Patience = { hopeless: 0.004, whole: 1 }
/** Against a solver that hangs: no question ends by the wall clock. */
const QUESTION_S = 900
const HOW = `npm run prover && npm run optima (tests/support/make-optima.ts): ${JSON.stringify({ QUICK, PATIENCE })}`

if (!isInstalled()) {
  console.error('the solver is not installed: npm run prover')
  process.exit(2)
}
const solver = openSolver(systemClock, constants.priority.PRIORITY_NORMAL)
const signal = new AbortController().signal

const proveOne = async (size: BenchSize, seed: number): Promise<Optimum | 'wish' | 'open'> => {
  const problem = problemOf({ size, seed })
  const known = solve(problem, QUICK)
  if (known.left.length > 0 || verify(problem, known).breaches.length > 0) return 'wish'
  let seconds = 0
  const proof = await prove(
    problem,
    known,
    async (model, work) => {
      const answer = await solver.solve(model, { work, seconds: QUESTION_S, signal })
      seconds += answer?.seconds ?? 0
      return answer
    },
    PATIENCE,
  )
  if (!isBest(proof)) return 'open'
  return { size, seed, digest: digestOf(problem), cost: Math.round(proof.cost * 100) / 100, seconds: Math.round(seconds) }
}

const bySize = (a: { size: BenchSize; seed: number }, b: { size: BenchSize; seed: number }): number =>
  a.size.localeCompare(b.size) || a.seed - b.seed

const start = (set: OptimaSet): Optima => {
  const before = readOptima(set)
  if (before && before.how !== HOW) throw new Error(`the ${set} optima were made under other limits: delete them first`)
  return before ?? { how: HOW, solver: 'or-tools-wasm 0.9.1', date: '', evenings: [], passedOver: [] }
}

const sets = new Map(SETS.map((set) => [set, start(set)]))

/** Tries the next evening of the set and size; false when there are enough. */
const tryNext = async (set: OptimaSet, size: BenchSize): Promise<boolean> => {
  const optima = sets.get(set) ?? start(set)
  const tried = [...optima.evenings, ...optima.passedOver].filter((one) => one.size === size)
  if (optima.evenings.filter((one) => one.size === size).length >= WANTED[size]) return false
  const seed = Math.max(FIRST[set] - 1, ...tried.map((one) => one.seed)) + 1
  const came = await proveOne(size, seed)
  console.log(set, size, seed, typeof came === 'string' ? came : `${came.cost}, ${came.seconds} s`)
  const next: Optima = {
    ...optima,
    date: new Date().toISOString().slice(0, 10),
    ...(typeof came === 'string'
      ? { passedOver: [...optima.passedOver, { size, seed, why: came }].sort(bySize) }
      : { evenings: [...optima.evenings, came].sort(bySize) }),
  }
  sets.set(set, next)
  writeOptima(set, next)
  return true
}

for (let going = true; going; ) {
  going = false
  for (const size of Object.keys(BENCH_SIZES) as BenchSize[]) for (const set of SETS) if (await tryNext(set, size)) going = true
}
await solver.close()

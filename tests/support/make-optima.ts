import { solve } from '#lib/scheduling/solve.ts'
import { verify } from '#lib/scheduling/verify/verify.ts'
import { isBest, type Patience, prove } from '#server/planner/prover/prove.ts'
import { isInstalled, openSolver } from '#server/planner/prover/solver.ts'
import { systemClock } from '#server/sync/clock.ts'
import { BENCH_SIZES, type BenchSize } from './bench-evening.ts'
import { digestOf, type OptimaSet, type Optimum, problemOf, readOptima, SETS, writeOptima } from './optima.ts'

// npm run optima -- [tuning|hold-out] [count]: proves the evenings of the bench and stores what came of it, after each one.
// What is stored and still fits is kept; delete tests/fixtures/optima-*.json to make all again.

/** First seeds: no evening is in both sets. */
const FIRST: Readonly<Record<OptimaSet, number>> = { tuning: 1, 'hold-out': 501 }
/** Seeds looked through for evenings whose wishes can all hold: a broken one is priced so high that nothing else would count. */
const SEEDS = 80
const QUICK = { steps: 15_000, seed: 1 }
/** How long it is tried. Evenings that are too hard are passed over; big ones may be left with a small gap. */
const PATIENCE: Readonly<Record<BenchSize, Patience>> = {
  small: { hopeless: 0.004, whole: 1.2 },
  middle: { hopeless: 0.02, whole: 1.5 },
  large: { hopeless: 0.03, whole: 2 },
}
/** A gap above this is not worth storing. */
const WORTH = 0.02
const QUESTION_S = 600

const [asked, count = '12'] = process.argv.slice(2)
if (!isInstalled()) {
  console.error('the solver is not installed: npm run prover')
  process.exit(2)
}
const solver = openSolver(systemClock)
const signal = new AbortController().signal

const proveOne = async (size: BenchSize, seed: number): Promise<Optimum | null> => {
  const problem = problemOf({ size, seed })
  const known = solve(problem, QUICK)
  if (known.left.length > 0 || verify(problem, known).breaches.length > 0) return null
  let seconds = 0
  const { cost, bound } = await prove(
    problem,
    known,
    async (model, work) => {
      const answer = await solver.solve(model, { work, seconds: QUESTION_S, signal })
      seconds += answer?.seconds ?? 0
      return answer
    },
    PATIENCE[size],
  )
  console.log(size, seed, cost, bound, `${((cost / bound - 1) * 100).toFixed(2)} % open`)
  if (cost - bound > WORTH * cost) return null
  const round = (value: number): number => Math.round(value * 100) / 100
  return { size, seed, digest: digestOf(problem), cost: round(cost), bound: round(bound), seconds: Math.round(seconds) }
}

for (const set of SETS.filter((one) => asked === undefined || one === asked)) {
  const before = readOptima(set)?.evenings ?? []
  const kept = before.filter((one) => digestOf(problemOf(one)) === one.digest)
  const missing = (size: BenchSize): boolean => kept.filter((one) => one.size === size).length < Number(count)
  for (const size of Object.keys(BENCH_SIZES) as BenchSize[])
    for (let seed = FIRST[set]; seed < FIRST[set] + SEEDS && missing(size); seed++) {
      if (kept.some((one) => one.size === size && one.seed === seed)) continue
      const optimum = await proveOne(size, seed)
      if (!optimum) {
        console.log(set, size, seed, 'passed over')
        continue
      }
      kept.push(optimum)
      console.log(set, size, seed, optimum.cost, optimum.bound, isBest(optimum) ? 'proven' : 'bound', `${optimum.seconds} s`)
      writeOptima(set, {
        how: 'npm run prover && npm run optima: server/planner/prover, from the quick tier, until proven or the work is done; seeds in order, passed over: those with a wish that the quick tier breaks, and those too hard to prove (PATIENCE, WORTH)',
        solver: 'or-tools-wasm 0.9.1',
        date: new Date().toISOString().slice(0, 10),
        evenings: kept.sort((a, b) => a.size.localeCompare(b.size) || a.seed - b.seed),
      })
    }
}
await solver.close()

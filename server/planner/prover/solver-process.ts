import type { Answer, ModelProto } from './proto.ts'

/** What the process is asked, one at a time, and what it tells. */
export interface SolverAsked {
  readonly model: ModelProto
  /** The solver's own deterministic seconds: the same work on every machine. */
  readonly work: number
  /** Seconds by the wall clock after which it gives what it has. */
  readonly seconds: number
}
export type SolverTold = Answer | { readonly failed: string }

interface CpSat {
  loadModule(): Promise<unknown>
  createModel(model: ModelProto): Promise<Uint8Array>
  solve(
    model: Uint8Array,
    parameters: Readonly<Record<string, number | boolean>>,
  ): Promise<{
    response: {
      status?: Answer['status']
      solution?: readonly (number | string | bigint)[]
      objectiveValue?: number
      bestObjectiveBound?: number
      wallTime?: number
    } | null
  }>
}

/** The package is not there for the compiler: it is installed by `npm run prover` only. */
const PACKAGE = 'or-tools-wasm/cp-sat'

const load = async (): Promise<CpSat> => {
  const { CpSat } = (await import(PACKAGE)) as { CpSat: CpSat }
  await CpSat.loadModule()
  return CpSat
}

const solve = async (solver: CpSat, { model, work, seconds }: SolverAsked): Promise<SolverTold> => {
  const { response } = await solver.solve(await solver.createModel(model), {
    numSearchWorkers: 1,
    linearizationLevel: 2,
    maxDeterministicTime: work,
    maxTimeInSeconds: seconds,
    logToStdout: false,
  })
  return {
    status: response?.status ?? 'UNKNOWN',
    solution: (response?.solution ?? []).map(Number),
    cost: response?.objectiveValue ?? Number.POSITIVE_INFINITY,
    bound: response?.bestObjectiveBound ?? Number.NEGATIVE_INFINITY,
    seconds: response?.wallTime ?? 0,
  }
}

const ready = load()
ready.catch((why: unknown) => {
  console.error('the solver could not be loaded', why)
  process.exit(1)
})
process.on('message', (asked: SolverAsked) => {
  ready
    .then((solver) => solve(solver, asked))
    .catch((why: unknown): SolverTold => ({ failed: String(why) }))
    .then((told) => process.connected && process.send?.(told))
})
process.on('disconnect', () => process.exit())

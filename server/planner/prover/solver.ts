import { type ChildProcess, fork } from 'node:child_process'
import { existsSync, mkdirSync } from 'node:fs'
import { createRequire } from 'node:module'
import { constants, setPriority } from 'node:os'
import { fileURLToPath } from 'node:url'
import { buildSync } from 'esbuild'
import { root } from '#server/root.ts'
import type { Clock } from '#server/sync/clock.ts'
import type { Answer, ModelProto } from './proto.ts'
import type { SolverAsked, SolverTold } from './solver-process.ts'

/** The solver in a process of its own, which is ended to stop it: nothing gentler leaves it fit for more. */
export interface Solver {
  /** One at a time. Null when it was stopped; throws when the solver fails. */
  solve(
    model: ModelProto,
    limits: { readonly work: number; readonly seconds: number; readonly signal: AbortSignal },
  ): Promise<Answer | null>
  close(): Promise<void>
}

/** It holds some hundred megabytes. */
const IDLE_MS = 5 * 60_000

/** Whether `npm run prover` has been run. */
export const isInstalled = (): boolean => {
  try {
    return existsSync(createRequire(`${root}package.json`).resolve('or-tools-wasm/cp-sat'))
  } catch {
    return false
  }
}

/** The program of the process: beside the bundled server, or compiled from the source, since the solver hangs under tsx. */
const program = (): string => {
  const here = new URL(import.meta.url)
  if (!here.pathname.endsWith('.ts')) return fileURLToPath(new URL('./solver-process.js', here))
  const outfile = `${root}.cache/solver-process-${process.pid}.js`
  mkdirSync(`${root}.cache`, { recursive: true })
  buildSync({
    absWorkingDir: root,
    entryPoints: ['server/planner/prover/solver-process.ts'],
    outfile,
    bundle: true,
    platform: 'node',
    format: 'esm',
    target: 'node20',
    packages: 'external',
    logLevel: 'warning',
  })
  return outfile
}

/** Starts the process, so that it is warm when it is first asked. A person who waits for a first order goes before a proof. */
export const openSolver = (clock: Clock, priority: number = constants.priority.PRIORITY_BELOW_NORMAL): Solver => {
  const path = program()
  let child: ChildProcess | null = null
  let callOffIdle = (): void => undefined

  const start = (): ChildProcess => {
    const begun = fork(path, [], { execArgv: [], serialization: 'advanced' })
    if (begun.pid !== undefined) setPriority(begun.pid, priority)
    begun.on('exit', () => {
      if (child === begun) child = null
    })
    return begun
  }
  const end = () => {
    callOffIdle()
    child?.kill('SIGKILL')
    child = null
  }
  const rest = () => {
    callOffIdle()
    callOffIdle = clock.after(IDLE_MS, end)
  }
  child = start()
  rest()

  return {
    solve: (model, { work, seconds, signal }) =>
      new Promise((resolve, reject) => {
        if (signal.aborted) return resolve(null)
        callOffIdle()
        const asked = child ?? start()
        child = asked
        const stop = () => {
          done()
          end()
          resolve(null)
        }
        const hear = (told: SolverTold) => {
          done()
          rest()
          if ('failed' in told) reject(new Error(told.failed))
          else resolve(told)
        }
        const gone = (code: number | null) => {
          done()
          reject(new Error(`the solver ended with ${code ?? 'a signal'}`))
        }
        const done = () => {
          signal.removeEventListener('abort', stop)
          asked.off('message', hear)
          asked.off('exit', gone)
        }
        signal.addEventListener('abort', stop)
        asked.on('message', hear)
        asked.on('exit', gone)
        asked.send({ model, work, seconds } satisfies SolverAsked)
      }),
    close: () =>
      new Promise((resolve) => {
        const last = child
        if (!last) return resolve()
        last.on('exit', () => resolve())
        end()
      }),
  }
}

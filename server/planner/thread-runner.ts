import { availableParallelism } from 'node:os'
import type { Worker } from 'node:worker_threads'
import type { Clock } from '#server/sync/clock.ts'
import { startWorker } from '#server/worker-file.ts'
import { LIMIT_MS } from './budgets.ts'
import type { Asked, Told } from './plan-worker.ts'
import type { Report, Runner, Slice } from './runner.ts'

/** After it was told to stop, a thread has this long to answer before it is ended: on a busy machine a look between two moves is late. */
const GRACE_MS = 5_000

interface Run {
  readonly job: number
  readonly report: (report: Report) => void
  readonly flag: Int32Array
  cancelGuard: () => void
}

interface Thread {
  readonly worker: Worker
  run: Run | null
}

interface Parts {
  readonly workers?: number | undefined
  readonly clock: Clock
  readonly log: (what: string, why: unknown) => void
  readonly spawn?: () => Worker
}

/** Plans in worker threads; one that ends is replaced when it is next needed. The first one is started at once. */
export const threadRunner = ({ workers, clock, log, spawn = () => startWorker('planner/plan-worker.ts') }: Parts): Runner => {
  const room = workers ?? Math.min(4, Math.max(1, availableParallelism()))
  const threads = new Set<Thread>()
  let jobs = 0
  let closing = false

  const open = (): Thread => {
    const thread: Thread = { worker: spawn(), run: null }
    threads.add(thread)
    let why = 'the planning thread ended'
    thread.worker.on('message', (told: Told) => {
      if (thread.run?.job === told.job) finish(thread, told.report)
    })
    thread.worker.on('error', (error) => {
      why = error instanceof Error ? (error.stack ?? error.message) : String(error)
    })
    thread.worker.on('exit', () => {
      threads.delete(thread)
      if (thread.run) finish(thread, { kind: 'crashed', why })
      else if (!closing) log('an idle planning thread ended', why)
    })
    return thread
  }

  const finish = (thread: Thread, report: Report) => {
    const run = thread.run
    thread.run = null
    run?.cancelGuard()
    run?.report(report)
  }

  const stop = (thread: Thread, run: Run) => {
    if (thread.run !== run) return
    Atomics.store(run.flag, 0, 1)
    run.cancelGuard()
    run.cancelGuard = clock.after(GRACE_MS, () => {
      if (thread.run === run) void thread.worker.terminate()
    })
  }

  open()

  return {
    room,
    canProve: false,
    start(slice: Slice, report) {
      const thread = [...threads].find((one) => one.run === null) ?? open()
      jobs += 1
      const shared = new SharedArrayBuffer(4)
      const run: Run = { job: jobs, report, flag: new Int32Array(shared), cancelGuard: () => undefined }
      thread.run = run
      run.cancelGuard = clock.after(LIMIT_MS[slice.kind], () => stop(thread, run))
      const asked: Asked = { job: run.job, slice, stop: shared }
      thread.worker.postMessage(asked)
      return () => stop(thread, run)
    },
    async close() {
      closing = true
      await Promise.all([...threads].map((thread) => thread.worker.terminate()))
    },
  }
}

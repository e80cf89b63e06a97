import { readlinkSync } from 'node:fs'
import { constants, setPriority } from 'node:os'
import { parentPort } from 'node:worker_threads'
import { BUDGET_MS } from './budgets.ts'
import { planSlice } from './plan-slice.ts'
import type { Report, Slice } from './runner.ts'

/** What the thread is asked. `stop` holds one Int32: 1 ends the search with the best so far. */
export interface Asked {
  readonly job: number
  readonly slice: Slice
  readonly stop: SharedArrayBuffer
}

export interface Told {
  readonly job: number
  readonly report: Report
}

const work = ({ slice, stop }: Asked): Report => {
  const flag = new Int32Array(stop)
  const isStopped = () => Atomics.load(flag, 0) === 1
  const until = performance.now() + (slice.kind === 'proof' ? 0 : BUDGET_MS[slice.kind])
  try {
    const order = planSlice(slice, () => isStopped() || performance.now() > until)
    return { kind: 'order', order, whole: !isStopped() }
  } catch (why) {
    return { kind: 'refused', why: why instanceof Error ? (why.stack ?? why.message) : String(why) }
  }
}

/**
 * Whoever waits for an answer goes first: searching takes what the machine has left. On Linux a thread has a priority of its own
 * (setpriority(2), "C library/kernel differences"); elsewhere it stays as it is.
 */
const giveWay = (): void => {
  if (process.platform !== 'linux') return
  try {
    setPriority(Number(readlinkSync('/proc/thread-self').split('/').at(-1)), constants.priority.PRIORITY_LOW)
  } catch {
    // Where that is not allowed, the search is only as urgent as everything else.
  }
}

giveWay()
parentPort?.on('message', (asked: Asked) => {
  const told: Told = { job: asked.job, report: work(asked) }
  parentPort?.postMessage(told)
})

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

parentPort?.on('message', (asked: Asked) => {
  const told: Told = { job: asked.job, report: work(asked) }
  parentPort?.postMessage(told)
})

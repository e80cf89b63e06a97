import { parentPort } from 'node:worker_threads'
import type { Evening } from '#lib/domain/evening.ts'
import { planEvening } from '#lib/order/engine.ts'
import { BUDGET_MS, SEED, STEPS } from './budgets.ts'
import type { Report, Slice } from './runner.ts'

/** What the thread is asked. `stop` holds one Int32: 1 ends the search with the best so far. */
export interface Asked {
  readonly job: number
  readonly evening: Evening
  readonly kind: Slice['kind']
  readonly stop: SharedArrayBuffer
}

export interface Told {
  readonly job: number
  readonly report: Report
}

const work = ({ evening, kind, stop }: Asked): Report => {
  const flag = new Int32Array(stop)
  const isStopped = () => Atomics.load(flag, 0) === 1
  const until = performance.now() + BUDGET_MS[kind]
  try {
    const order = planEvening(evening, {
      budget: { steps: STEPS[kind], seed: SEED, stop: () => isStopped() || performance.now() > until },
    })
    return { kind: 'order', order, whole: !isStopped() }
  } catch (why) {
    return { kind: 'refused', why: why instanceof Error ? (why.stack ?? why.message) : String(why) }
  }
}

parentPort?.on('message', (asked: Asked) => {
  const told: Told = { job: asked.job, report: work(asked) }
  parentPort?.postMessage(told)
})

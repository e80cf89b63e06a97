import type { Evening } from '#lib/domain/evening.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import type { Clock } from '#server/sync/clock.ts'
import { LIMIT_MS } from './budgets.ts'
import type { Runner } from './runner.ts'

/** What can say that nothing is better, or find what is. One proof at a time. */
export interface Prover {
  /** A proven or a better order, which the verifier has accepted; null when it is neither, or when it was stopped. */
  prove(asked: {
    readonly evening: Evening
    readonly order: RunningOrder
    readonly now?: string
    readonly previous?: RunningOrder
    readonly signal: AbortSignal
  }): Promise<RunningOrder | null>
  close(): Promise<void>
}

/** As the runner it is given, and proofs are worked out by the prover. */
export const provingRunner = (runner: Runner, prover: Prover, clock: Clock): Runner => ({
  room: runner.room,
  canProve: true,
  start(slice, report) {
    const { kind, evening, order, start } = slice
    if (kind !== 'proof' || !order) return runner.start(slice, report)
    const { hint: _, ...told } = start
    const stopped = new AbortController()
    // One that takes too long has had its time; one that gives way has not.
    let isCut = false
    const cancelGuard = clock.after(LIMIT_MS.proof, () => stopped.abort())
    prover
      .prove({ evening, order, ...told, signal: stopped.signal })
      .then((proven) => report({ kind: 'order', order: proven ?? order, whole: proven !== null || !isCut }))
      .catch((why: unknown) => report({ kind: 'crashed', why: String(why) }))
      .finally(cancelGuard)
    return () => {
      isCut = true
      stopped.abort()
    }
  },
  async close() {
    await Promise.all([runner.close(), prover.close()])
  },
})

import type { OrderMessage } from '#lib/plan/wire.ts'
import type { Clock } from '#server/sync/clock.ts'

type Send = (eveningId: string, message: OrderMessage) => void

/** People get no new running order of an evening sooner than this after the last, in ms: more often the eye cannot follow. */
const PAUSE = 500

/**
 * Sends the first order at once and then one a pause, the newest of those that came meanwhile. What is no order goes at once,
 * and an order that still waits is then one of a plan that was left: it is dropped.
 */
export const pacedSend = (send: Send, clock: Pick<Clock, 'after'>): Send => {
  const resting = new Map<string, { waiting: OrderMessage | null }>()
  const go: Send = (eveningId, message) => {
    send(eveningId, message)
    if (message.kind !== 'order') return
    const rest: { waiting: OrderMessage | null } = { waiting: null }
    resting.set(eveningId, rest)
    clock.after(PAUSE, () => {
      resting.delete(eveningId)
      if (rest.waiting) go(eveningId, rest.waiting)
    })
  }
  return (eveningId, message) => {
    const rest = resting.get(eveningId)
    if (rest) rest.waiting = message.kind === 'order' ? message : null
    if (!rest || message.kind !== 'order') go(eveningId, message)
  }
}

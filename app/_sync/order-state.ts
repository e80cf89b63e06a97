import type { RunningOrder } from '#lib/domain/running-order.ts'
import type { OrderMessage } from '#lib/plan/wire.ts'
import type { Link, OrderState } from './plan.ts'

/** A running order and the hash of the problem that it belongs to. */
export interface Known {
  readonly hash: string
  readonly order: RunningOrder
  /** A better one is being looked for. */
  readonly more?: true | undefined
  /** Ways out of its clashes are being looked for. */
  readonly looking?: true | undefined
}

/** What this device knows of running orders. */
export interface Orders {
  /** The newest from the server, and the newest planned here. */
  readonly theirs: Known | null
  readonly ours: Known | null
  /** The server's last word. */
  readonly message: OrderMessage | null
}

export const NO_ORDERS: Orders = { theirs: null, ours: null, message: null }

export const heard = (orders: Orders, message: OrderMessage): Orders =>
  message.kind === 'order' ? { ...orders, theirs: message, ours: null, message } : { ...orders, message }

/** The server looks on for those who can hear it. */
const isHeard = (link: Link): boolean => link.kind !== 'offline' && link.kind !== 'closed'

const current = ({ order, more, looking }: Known, looksOn: boolean): OrderState => ({
  kind: 'current',
  order,
  ...(looksOn && more ? { more } : {}),
  ...(looksOn && looking ? { looking } : {}),
})

/** An order is current when its hash is that of the plan on this screen; without that hash, when all of the plan is known to the server. */
export const orderState = (orders: Orders, hash: string | null, link: Link): OrderState => {
  const { theirs, ours, message } = orders
  const last = ours?.order ?? theirs?.order ?? null
  if (hash !== null) {
    // What was planned here is forgotten with each word from the server: it is the newer one.
    const fit = [ours, theirs].find((known) => known?.hash === hash)
    if (fit) return current(fit, fit === ours || isHeard(link))
    if (message?.kind === 'failed' && message.hash === hash) return { kind: 'failed', order: last, why: message.why }
    return message || last ? { kind: 'planning', order: last } : { kind: 'none' }
  }
  if (!message) return last ? { kind: 'planning', order: last } : { kind: 'none' }
  const isKnownThere = link.kind === 'saved' || (link.kind === 'offline' && !link.unsent)
  if (!isKnownThere || message.kind === 'planning') return { kind: 'planning', order: last }
  return message.kind === 'order' ? current(message, isHeard(link)) : { kind: 'failed', order: last, why: message.why }
}

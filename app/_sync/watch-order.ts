import type { Evening } from '#lib/domain/evening.ts'
import type { OrderMessage } from '#lib/plan/wire.ts'
import type { LocalOrder } from './local-order.ts'
import { heard, NO_ORDERS, type Orders, orderState } from './order-state.ts'
import type { Link, OrderState } from './plan.ts'
import { sameProblem } from './same-problem.ts'

/** The running order of the plan on this page. */
export interface OrderWatch {
  /** The same object as before when nothing has changed. */
  readonly state: (link: Link) => OrderState
  /** The plan reads so now. */
  readonly look: (evening: Evening) => void
  readonly hear: (message: OrderMessage) => void
  /** An order that this device has kept from earlier. */
  readonly remember: (message: OrderMessage) => void
  /** Nobody else will plan this now. */
  readonly planHere: () => void
  /** The same, also when the order is that of the plan: time has passed over something that was not told. */
  readonly planAgain: () => void
}

const sameState = (before: OrderState, after: OrderState): OrderState =>
  before.kind === after.kind &&
  (before.kind === 'none' ? null : before.order) === (after.kind === 'none' ? null : after.order) &&
  (before.kind !== 'current' || after.kind !== 'current' || (before.more === after.more && before.looking === after.looking)) &&
  (before.kind !== 'failed' || after.kind !== 'failed' || before.why === after.why)
    ? before
    : after

/**
 * `changed` is called when `state` may say something else, and gives whether there is a connection; `keep` with each order that was
 * planned here.
 */
export const watchOrder = (
  local: LocalOrder,
  changed: () => Link,
  keep: (message: OrderMessage) => void = () => undefined,
): OrderWatch => {
  let orders: Orders = NO_ORDERS
  let evening: Evening | null = null
  let checked: { readonly evening: Evening | null; readonly hash: string | null } = { evening: null, hash: null }
  let state: OrderState = { kind: 'none' }

  /** While the hash of a new plan is being worked out nothing becomes current, and what was stays so only if nothing but words changed. */
  const stateNow = (link: Link): OrderState => {
    if (checked.evening === evening) return orderState(orders, checked.hash, link)
    const isSame = checked.evening !== null && evening !== null && sameProblem(checked.evening, evening)
    return isSame || state.kind === 'none' ? state : { kind: 'planning', order: state.order }
  }

  const planAgain = () => {
    const { hash } = checked
    if (checked.evening === null || hash === null) return
    const last = orders.ours?.order ?? orders.theirs?.order ?? null
    const { message } = orders
    local.plan(checked.evening, last, (known) => {
      // A word of the server's that came meanwhile is the newer one.
      if (known === null || checked.hash !== known.hash || orders.message !== message) return
      orders = { ...orders, ours: known }
      keep({ kind: 'order', hash: known.hash, order: known.order })
      changed()
    })
  }

  const planHere = () => {
    if (state.kind !== 'current') planAgain()
  }

  return {
    state(link) {
      state = sameState(state, stateNow(link))
      return state
    },
    look(found) {
      evening = found
      local.hash(found, (hash) => {
        if (evening !== found) return
        checked = { evening: found, hash }
        if (changed().kind === 'offline') planHere()
      })
    },
    hear(message) {
      orders = heard(orders, message)
      changed()
    },
    remember(message) {
      if (!orders.message) orders = { ...heard(orders, message), message: null }
    },
    planHere,
    planAgain,
  }
}

import { WebSocket as NodeSocket } from 'ws'
import type { LocalOrder } from '#app/_sync/local-order.ts'
import { openPlan } from '#app/_sync/open-plan.ts'
import type { Link, Plan } from '#app/_sync/plan.ts'
import type { Shelf } from '#app/_sync/shelf.ts'
import { realTimers, type Timers } from '#app/_sync/timers.ts'
import { problemHash } from '#lib/order/hash.ts'

/** As the worker works it out, without the worker. */
const localOrder: LocalOrder = {
  hash: (evening, answer) => answer(problemHash(evening)),
  plan: (_evening, _last, answer) => answer(null),
  tryOut: (_evening, _last, answer) => answer(null),
  close: () => undefined,
}

const soon = (run: () => void) => {
  let isOff = false
  queueMicrotask(() => {
    if (!isOff) run()
  })
  return () => {
    isOff = true
  }
}

/** A browser page with the evening open. */
export const aPage = (at: {
  readonly port: number
  readonly eveningId: string
  readonly user: string
  readonly shelf: Shelf
  readonly timers?: Timers
  readonly local?: LocalOrder
  readonly Socket?: typeof NodeSocket
  readonly dice?: () => number
}) => {
  const opened = openPlan({
    eveningId: at.eveningId,
    userId: at.user,
    address: `ws://127.0.0.1:${at.port}/${at.user}/sync`,
    Socket: (at.Socket ?? NodeSocket) as unknown as typeof WebSocket,
    timers: at.timers ?? realTimers,
    shelf: at.shelf,
    frame: soon,
    inGaps: (work, then) =>
      soon(() => {
        while (!work.next().done);
        then()
      }),
    local: at.local ?? localOrder,
    dice: at.dice ?? Math.random,
  })
  const links: string[] = []
  const note = () => {
    const { link } = opened.opened()
    const said =
      'unsent' in link
        ? `${link.kind} ${link.unsent ? 'unsent' : 'sent'}`
        : 'why' in link
          ? `${link.kind} ${link.why}`
          : link.kind
    if (links.at(-1) !== said) links.push(said)
  }
  note()
  opened.subscribe(note)
  /** Resolves as soon as it holds. */
  const until = (holds: (plan: Plan | null, link: Link) => boolean): Promise<void> =>
    new Promise((resolve) => {
      const look = () => {
        const { plan, link } = opened.opened()
        if (!holds(plan, link)) return
        stop()
        resolve()
      }
      const stop = opened.subscribe(look)
      look()
    })
  return {
    ...opened,
    links,
    until,
    saved: () => until((plan, link) => plan !== null && link.kind === 'saved'),
    link: () => opened.opened().link,
    plan(): Plan {
      const { plan } = opened.opened()
      if (!plan) throw new Error('the plan is not there')
      return plan
    },
    nameOf(dish: string): string {
      return opened.opened().plan?.evening.dishes.find(({ id }) => id === dish)?.name ?? ''
    },
  }
}

export type APage = ReturnType<typeof aPage>

import type { Evening } from '#lib/domain/evening.ts'
import type { Fired } from '#lib/plan/wire.ts'
import type { Planner } from '#server/live.ts'
import type { AlertStore } from '#server/night/alert-store.ts'
import { type OpenNights, startNights } from '#server/night/nights.ts'
import type { Kept } from '#server/planner/order-store.ts'
import { pacedSend } from '#server/planner/paced-send.ts'
import { planSlice } from '#server/planner/plan-slice.ts'
import { startPlanner } from '#server/planner/planner.ts'
import type { Runner } from '#server/planner/runner.ts'
import { EVENING, type LoopbackRoom, loopbackRoom, turn } from './loopback-room.ts'

/** How often a search is asked whether it should stop before it is told to. */
const LOOKS = 10

/** Plans in this thread, one slice a turn, with a search that is as long on every machine. */
const turnRunner = (): Runner & { readonly busy: () => boolean } => {
  let under = 0
  return {
    room: 1,
    canProve: false,
    busy: () => under > 0,
    start(slice, report) {
      let stopped = false
      let looks = 0
      under += 1
      setImmediate(() => {
        const order = planSlice(slice, () => {
          looks += 1
          return stopped || looks > LOOKS
        })
        under -= 1
        report({ kind: 'order', order, whole: !stopped })
      })
      return () => {
        stopped = true
      }
    },
    close: async () => undefined,
  }
}

/** A server on the night: real rooms, planner and nights on a clock, a log and tables that are in the test's hands. */
export interface NightServer extends LoopbackRoom {
  readonly nights: () => OpenNights
  /** Every alert that rang, over all lives of the server. */
  readonly rang: readonly Fired[]
  /** Every alarm for which sleeping devices were called, over all lives of the server. */
  readonly alarms: readonly string[]
  /** What is stored of alerts. */
  readonly stored: ReadonlyMap<string, Fired>
  /** From now on what is to be stored of alerts waits, and is lost when the process dies. */
  holdAlerts(hold: boolean): void
  /** The alerts that were held back so. */
  readonly held: readonly string[]
  /** Lets everything happen that needs no time, planning included. */
  quiet(): Promise<void>
}

export const nightServer = async (evening: Evening, at: number): Promise<NightServer> => {
  const orders = new Map<string, Kept>()
  const stored = new Map<string, Fired>()
  const rang: Fired[] = []
  const alarms: string[] = []
  const runner = turnRunner()
  const held: string[] = []
  let holding = false
  let lives = 0
  let now: { readonly planner: Planner; readonly nights: OpenNights } | null = null
  const parts = () => {
    if (!now) throw new Error('the server has not started')
    return now
  }
  const logged: string[] = []
  const log = (what: string, why: unknown) => logged.push(`${what}: ${String(why)}`)

  const room = await loopbackRoom(evening, {
    at,
    greet: (eveningId, plan) => parts().planner.current(eveningId, plan),
    fired: (eveningId) => parts().nights.fired(eveningId),
    opened(rooms, { clock, isOver }) {
      const planner = startPlanner({
        orders: {
          load: async (eveningId) => orders.get(eveningId) ?? null,
          save: async (eveningId, kept) => {
            if (!isOver()) orders.set(eveningId, kept)
          },
        },
        send: pacedSend((eveningId, message) => rooms.sendOrder(eveningId, message), clock),
        runner,
        clock,
        log,
      })
      rooms.onPlan((eveningId, plan) => planner.plan(eveningId, plan))
      rooms.onEmpty((eveningId) => planner.forget(eveningId))
      const store: AlertStore = {
        load: async () => [...stored.values()],
        async save(_eveningId, fired) {
          if (holding) {
            held.push(...fired.map(({ id }) => id))
            return new Promise(() => undefined)
          }
          for (const one of fired) {
            if (stored.has(one.id)) throw new Error(`${one.id} is stored already`)
            if (!isOver()) stored.set(one.id, one)
          }
        },
        forget: async () => undefined,
      }
      const nights = startNights({ rooms, planner, store, clock, log })
      nights.onFire((_eveningId, fired) => rang.push(fired))
      nights.onAlarm((_eveningId, { id }) => alarms.push(id))
      now = { planner, nights }
      if (lives > 0) void nights.look([EVENING])
      lives += 1
    },
  })

  return {
    ...room,
    get logged() {
      return [...room.logged, ...logged]
    },
    nights: () => parts().nights,
    rang,
    alarms,
    stored,
    held,
    holdAlerts(hold) {
      holding = hold
    },
    async quiet() {
      do {
        await room.settle()
        await turn()
      } while (runner.busy())
      await room.settle()
    },
  }
}

import type { Evening } from '#lib/domain/evening.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { ENGINE } from '#lib/order/engine.ts'
import { problemHash } from '#lib/order/hash.ts'
import type { OrderMessage } from '#lib/plan/wire.ts'
import { STEPS } from '#server/planner/budgets.ts'
import type { Kept, OrderStore } from '#server/planner/order-store.ts'
import { startPlanner } from '#server/planner/planner.ts'
import type { Report, Runner, Slice } from '#server/planner/runner.ts'
import type { Clock } from '#server/sync/clock.ts'
import { course, dish, dishWith, evening, ring, step } from '#tests/support/evening-builders.ts'

/** One step of so many minutes, and a note on its dish. */
export const toast = (id: string, minutes: number, notes = ''): Evening =>
  evening({ id }, course('m1', dish('d1', step('s1', minutes, ring('small')), dishWith({ notes }))))

/** A broken wish, with or without a way out. */
export const clash = (hasWay = false): RunningOrder['clashes'][number] => ({
  kind: 'wait',
  steps: [],
  dish: null,
  course: 'm1',
  kit: null,
  from: '2026-11-14T19:30:00+00:00',
  to: '2026-11-14T19:40:00+00:00',
  by: 'PT10M',
  ways: hasWay ? [{ kind: 'drop', dish: 'd1', missed: 'PT0S', said: 'one dish less' }] : [],
})

/** An answer such as the engine gives; what is in it is not looked at here, but for its cost, budget, clashes and proof. */
export const orderOf = (plan: Evening, kind: Slice['kind'], total = 100, more: Partial<RunningOrder> = {}): RunningOrder => ({
  format: 'tableward-order/1',
  evening: plan.id,
  of: { hash: problemHash(plan), engine: ENGINE, seed: 1, budget: kind === 'quick' ? STEPS.quick : STEPS.better },
  origin: '2026-11-07T00:00:00+00:00',
  zone: 'Europe/London',
  cues: [],
  keeping: [],
  courses: [],
  ovens: [],
  cooks: [],
  allHostsAway: 'PT0S',
  goals: [{ goal: 'fresh', cost: total }],
  total,
  clashes: [],
  proof: { kind: 'none' },
  ...more,
})

/** Time that passes when told to. */
export const handClock = (begins = 0) => {
  let time = begins
  let due: { readonly at: number; readonly run: () => void }[] = []
  const clock: Clock = {
    after(ms, run) {
      const timer = { at: time + ms, run }
      due.push(timer)
      return () => {
        due = due.filter((one) => one !== timer)
      }
    },
    every(ms, run) {
      let cancel: () => void = () => undefined
      const again = () => {
        cancel = clock.after(ms, again)
        run()
      }
      cancel = clock.after(ms, again)
      return () => cancel()
    },
    now: () => time,
  }
  const pass = (ms: number) => {
    const until = time + ms
    for (;;) {
      const next = due.filter((one) => one.at <= until).sort((a, b) => a.at - b.at)[0]
      if (!next) break
      time = next.at
      due = due.filter((one) => one !== next)
      next.run()
    }
    time = until
  }
  return { clock, pass }
}

interface Started {
  readonly slice: Slice
  readonly report: (report: Report) => void
  stopped: boolean
}

/** Slices wait here until the test answers them. */
export const handRunner = (room = 1, canProve = false) => {
  const started: Started[] = []
  const runner: Runner = {
    room,
    canProve,
    start(slice, report) {
      const one: Started = { slice, report, stopped: false }
      started.push(one)
      return () => {
        one.stopped = true
      }
    },
    close: async () => undefined,
  }
  return { runner, started }
}

const at = <T>(list: readonly T[], index: number): T => {
  const found = list.at(index)
  if (found === undefined) throw new Error(`there is no number ${index} of ${list.length}`)
  return found
}

interface Answer extends Partial<Pick<RunningOrder, 'clashes' | 'proof'>> {
  readonly index?: number
  readonly total?: number
  readonly whole?: boolean
}

/** A planner with everything in hand. `settled` lets what waits on a promise go on. */
export const planning = ({ room = 1, stored = new Map<string, Kept>(), canProve = false, at: begins = 0 } = {}) => {
  const { clock, pass } = handClock(begins)
  const { runner, started } = handRunner(room, canProve)
  const sent: { readonly eveningId: string; readonly message: OrderMessage }[] = []
  const logged: string[] = []
  const orders: OrderStore = {
    load: async (eveningId) => stored.get(eveningId) ?? null,
    save: async (eveningId, kept) => {
      stored.set(eveningId, kept)
    },
  }
  const planner = startPlanner({
    orders,
    send: (eveningId, message) => sent.push({ eveningId, message }),
    log: (what) => logged.push(what),
    runner,
    clock,
  })
  const settled = async () => {
    for (let turn = 0; turn < 10; turn += 1) await Promise.resolve()
  }
  return {
    planner,
    sent,
    stored,
    logged,
    started,
    settled,
    /** Tells the planner of an edit and lets the gathering end. */
    async edit(plan: Evening) {
      planner.plan(plan.id, plan)
      pass(80)
      await settled()
    },
    pass,
    /** Answers the slice under way with an order. */
    async answer({ index = -1, total = 100, whole = true, ...more }: Answer = {}) {
      const { slice, report } = at(started, index)
      report({ kind: 'order', order: orderOf(slice.evening, slice.kind, total, more), whole })
      await settled()
    },
    async report(report: Report, index = -1) {
      at(started, index).report(report)
      await settled()
    },
    /** What was sent, in short: "planning", "order" or "failed" with the minutes of the only step. */
    story: () => sent.map(({ eveningId, message }) => `${eveningId} ${message.kind}`),
  }
}

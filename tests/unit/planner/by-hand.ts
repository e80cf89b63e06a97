import { Evening } from '#lib/domain/evening.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { problemHash } from '#lib/order/hash.ts'
import type { OrderMessage } from '#lib/plan/wire.ts'
import { STEPS } from '#server/planner/budgets.ts'
import type { Kept, OrderStore } from '#server/planner/order-store.ts'
import { startPlanner } from '#server/planner/planner.ts'
import type { Report, Runner, Slice } from '#server/planner/runner.ts'
import type { Timers } from '#server/planner/timers.ts'

/** Toast for two: one cook, one ring, one step of so many minutes. */
export const toast = (id: string, minutes: number, notes = ''): Evening =>
  Evening.parse({
    format: 'tableward/1',
    id,
    name: 'Toast',
    date: '2026-11-14',
    zone: 'Europe/London',
    guestsFrom: { day: 0, time: '19:00' },
    sitDown: { day: 0, time: '19:30' },
    covers: 2,
    rules: 'uk',
    host: 'k1',
    kitchens: [{ id: 'k1', name: 'Home', toTable: 'PT0S', kit: [{ id: 'r1', kind: 'ring', size: 'medium', count: 1 }] }],
    cooks: [
      {
        id: 'c1',
        name: 'Noor',
        host: true,
        eats: true,
        presence: [{ kitchen: 'k1', from: { day: 0, time: '09:00' }, to: { day: 0, time: '23:00' } }],
      },
    ],
    courses: [
      {
        id: 'm1',
        order: 'a0',
        name: 'Toast',
        service: 'plated',
        eating: { least: 'PT10M', likely: 'PT15M', most: 'PT20M' },
        clearing: 'PT2M',
        pouring: 'PT0S',
        wait: { ideal: ['PT4M', 'PT12M'], most: 'PT15M' },
      },
    ],
    dishes: [
      {
        id: 'd1',
        course: 'm1',
        order: 'a0',
        name: 'Toast',
        kitchen: 'k1',
        yields: 2,
        state: 'on',
        toTable: { early: 'PT0S', late: 'PT0S' },
        keeps: { how: 'hot', most: 'PT5M', uses: [] },
        notes,
      },
    ],
    steps: [
      {
        id: 's1',
        dish: 'd1',
        order: 'a0',
        does: 'Toast the bread',
        role: 'make',
        where: 'kitchen',
        ways: [
          {
            care: 'hands-on',
            cooks: 1,
            takes: { least: `PT${minutes}M`, likely: `PT${minutes}M`, most: `PT${minutes}M` },
            touches: [],
            uses: [{ kind: 'ring', size: 'small' }],
          },
        ],
        after: [],
      },
    ],
    ingredients: [],
    drinks: [],
    guests: [],
    claims: [],
    night: [],
  })

/** An answer such as the engine gives; what is in it is not looked at here, but for its cost and budget. */
export const orderOf = (evening: Evening, kind: Slice['kind'], total = 100): RunningOrder => ({
  format: 'tableward-order/1',
  evening: evening.id,
  of: { hash: problemHash(evening), engine: 'by hand', seed: 1, budget: STEPS[kind] },
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
})

/** Time that passes when told to. */
export const handTimers = () => {
  let time = 0
  let due: { readonly at: number; readonly run: () => void }[] = []
  const timers: Timers = {
    after(ms, run) {
      const timer = { at: time + ms, run }
      due.push(timer)
      return () => {
        due = due.filter((one) => one !== timer)
      }
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
  return { timers, pass }
}

interface Started {
  readonly slice: Slice
  readonly report: (report: Report) => void
  stopped: boolean
}

/** Slices wait here until the test answers them. */
export const handRunner = (room = 1) => {
  const started: Started[] = []
  const runner: Runner = {
    room,
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

/** A planner with everything in hand. `settled` lets what waits on a promise go on. */
export const planning = ({ room = 1, stored = new Map<string, Kept>() } = {}) => {
  const { timers, pass } = handTimers()
  const { runner, started } = handRunner(room)
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
    timers,
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
    async edit(evening: Evening) {
      planner.plan(evening.id, evening)
      pass(80)
      await settled()
    },
    pass,
    /** Answers the slice under way with an order. */
    async answer({ index = -1, total = 100, whole = true } = {}) {
      const { slice, report } = at(started, index)
      report({ kind: 'order', order: orderOf(slice.evening, slice.kind, total), whole })
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

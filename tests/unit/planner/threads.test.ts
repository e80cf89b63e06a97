import { readFileSync } from 'node:fs'
import { Worker } from 'node:worker_threads'
import { afterEach, expect, test } from 'vitest'
import { parseEvening } from '#lib/domain/parse.ts'
import type { OrderMessage } from '#lib/plan/wire.ts'
import type { Planner } from '#server/live.ts'
import { startPlanner } from '#server/planner/planner.ts'
import type { Report, Runner } from '#server/planner/runner.ts'
import { threadRunner } from '#server/planner/thread-runner.ts'
import { systemClock } from '#server/sync/clock.ts'
import { handClock, toast } from './by-hand.ts'

const lamb = () => {
  const read = parseEvening(JSON.parse(readFileSync(new URL('../../support/evenings/a-lamb.json', import.meta.url), 'utf8')))
  if (!read.ok) throw new Error('evening A is not an evening')
  return read.value
}

let open: (Planner | Runner)[] = []
afterEach(async () => {
  await Promise.all(open.map((one) => one.close()))
  open = []
})

const quiet = () => undefined

/** A thread that does what the text says with each message, which it calls `asked`. */
const threadOf = (does: string) => () =>
  new Worker(`const { parentPort } = require('node:worker_threads'); parentPort.on('message', (asked) => { ${does} })`, {
    eval: true,
  })

const run = (runner: Runner, minutes = 5) => {
  const plan = toast('e1', minutes)
  let stop = quiet as () => void
  const reported = new Promise<Report>((resolve) => {
    stop = runner.start({ eveningId: 'e1', hash: String(minutes), evening: plan, kind: 'quick', start: {}, order: null }, resolve)
  })
  return { reported, stop: () => stop() }
}

test('P4 a real evening is planned in a thread: a first answer, then the whole one, and both are stored with their hash', async () => {
  const evening = lamb()
  const sent: OrderMessage[] = []
  const stored: string[] = []
  const planner = await new Promise<Planner>((resolve, reject) => {
    const started = startPlanner({
      orders: {
        load: async () => null,
        save: async (_id, { order }) => {
          stored.push(order.of.hash)
          if (stored.length === 2) resolve(started)
        },
      },
      send: (_id, message) => {
        sent.push(message)
        if (message.kind === 'failed') reject(new Error(message.why))
      },
      log: (what, why) => reject(new Error(what, { cause: why })),
      workers: 1,
    })
    open.push(started)
    started.plan(evening.id, evening)
  })
  const current = await planner.current(evening.id, evening)
  expect(sent.map(({ kind }) => kind).slice(0, 2)).toEqual(['planning', 'order'])
  expect(current.kind).toBe('order')
  expect(new Set([...stored, current.hash]).size).toBe(1)
  const totals = sent.flatMap((message) => (message.kind === 'order' ? [message.order.total] : []))
  expect(totals).toEqual(totals.toSorted((a, b) => b - a))
})

test('P5 a thread that dies is replaced', async () => {
  let born = 0
  const runner = threadRunner({
    workers: 1,
    clock: systemClock,
    log: quiet,
    spawn: () => {
      born += 1
      return threadOf(
        born === 1 ? 'process.exit(3)' : "parentPort.postMessage({ job: asked.job, report: { kind: 'refused', why: 'no' } })",
      )()
    },
  })
  open.push(runner)
  expect((await run(runner).reported).kind).toBe('crashed')
  expect((await run(runner).reported).kind).toBe('refused')
  expect(born).toBe(2)
})

test('P5 a thread that throws is replaced, and says why', async () => {
  const runner = threadRunner({ workers: 1, clock: systemClock, log: quiet, spawn: threadOf("throw new Error('burnt')") })
  open.push(runner)
  expect(await run(runner).reported).toMatchObject({ kind: 'crashed', why: expect.stringContaining('burnt') })
})

test('P4 stopping raises the flag that the thread looks at', async () => {
  const spin = `while (Atomics.load(new Int32Array(asked.stop), 0) === 0);
    parentPort.postMessage({ job: asked.job, report: { kind: 'order', order: asked.slice.evening.name, whole: false } })`
  const runner = threadRunner({ workers: 1, clock: systemClock, log: quiet, spawn: threadOf(spin) })
  open.push(runner)
  const { reported, stop } = run(runner)
  stop()
  expect(await reported).toEqual({ kind: 'order', order: 'An evening', whole: false })
})

test('P5 a thread that loses its way is told to stop, and ended when it does not hear', async () => {
  const { clock, pass } = handClock()
  const runner = threadRunner({ workers: 1, clock, log: quiet, spawn: threadOf('for (;;);') })
  open.push(runner)
  const { reported } = run(runner)
  pass(10_000)
  pass(5_000)
  expect((await reported).kind).toBe('crashed')
})

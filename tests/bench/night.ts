import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join as joinPath } from 'node:path'
import * as Y from 'yjs'
import type { Evening } from '#lib/domain/evening.ts'
import { printEvening } from '#lib/domain/parse.ts'
import { readOrder, readOutcome, readType, writeCommand } from '#lib/plan/frames.ts'
import { readPlan } from '#lib/plan/read.ts'
import { WIRE } from '#lib/plan/wire.ts'
import { loadPlan } from '#server/sync/load-plan.ts'
import { awayEvening, cooksOf, editAway } from '#tests/support/away.ts'
import { benchEvening } from '#tests/support/bench-evening.ts'
import { longNight } from '#tests/support/long-night.ts'
import { EVENING, loopbackRoom } from '#tests/support/loopback-room.ts'
import { tonightEvening } from '#tests/support/tonight-evening.ts'
import { withServer } from './child.ts'
import { cpuMs, measured, median, share } from './cpu.ts'
import { type Client, COOKS, documentOf, join, runLoad } from './sync-load.ts'
import type { Report } from './table.ts'

const ACTIONS = 5_000
const LOADS = 9
const RATE = { perSecond: 20, seconds: 5, patienceMs: 2_000 }
const ROUNDS = 3
const SLIPS = 12
const SLIP_PATIENCE_MS = 15_000
const DEVICES = 10
const EDITS = 200

const kib = (bytes: number): string => `${(bytes / 1024).toFixed(0)} KiB`

/** How large a plan is after its night, and how long it takes to be there again. Gives the evening as it then is. */
const afterTheNight = async (report: Report): Promise<Evening> => {
  const base = benchEvening(1, 'large')
  const { room, taken, refused } = await longNight(base, ACTIONS)
  const stored = await room.log.load(EVENING)
  if (!stored) throw new Error('there is no plan')
  const bytes = Y.encodeStateAsUpdate(loadPlan(stored))
  const loads = (work: () => unknown) => median(Array.from({ length: LOADS }, () => measured(work).ms)).toFixed(1)
  const asDevice = () => {
    const doc = new Y.Doc()
    Y.applyUpdate(doc, bytes)
    return readPlan(doc)
  }
  const evening = await room.rooms().read(EVENING)
  report(`after a night: ${base.steps.length} steps, ${ACTIONS} actions of 8 cooks in 6 h (${taken} taken, ${refused} refused)`)
  report(`  document ${kib(bytes.length)} (${evening.night.length} facts), before it ${kib(documentOf(base).length)}`)
  report(
    `  loaded from its snapshot and ${stored.sinceSnapshot.count} updates in ${loads(() => readPlan(loadPlan(stored)))} ms CPU`,
  )
  report(`  loaded on a device from one update in ${loads(asDevice)} ms CPU, median of ${LOADS}`)
  return evening
}

/** Ten devices come home at once. */
const comingHome = async (report: Report): Promise<void> => {
  const room = await loopbackRoom(awayEvening(EVENING, DEVICES))
  const devices = cooksOf(DEVICES).map((name, n) => room.device(`m-${name}`, n === 0 ? 'host' : 'cook', name))
  for (const device of devices) room.connect(device)
  await room.settle()
  for (const device of devices) room.cut(device)
  for (const [n, { client }] of devices.entries()) editAway(client.doc, n, 0, EDITS)
  room.clock.advance(30 * 60_000)
  const began = cpuMs()
  for (const device of devices) room.connect(device)
  await room.settle()
  const ms = cpuMs() - began
  const plans = new Set(devices.map(({ client }) => JSON.stringify(readPlan(client.doc))))
  report(
    `${DEVICES} devices x ${EDITS} edits, half an hour apart: together in ${ms.toFixed(0)} ms CPU, their own work included; ${plans.size} plan`,
  )
}

/** A word of the night as it goes over the wire. */
const tellFrame = (step: string, op: string, minutes: number): Uint8Array => {
  const at = Date.now()
  return writeCommand({ op, kind: 'tell', at, say: { kind: 'longer', step, minutes } }, at)
}

/** Edits and words of the night together, on the evening as the long night has left it. */
const underLoad = async (report: Report, evening: Evening): Promise<void> => {
  const plan = { ...tonightEvening(evening, Date.now(), 60), night: evening.night }
  await withEvening(plan, 'room', async (port, path) => {
    const steps = plan.steps.map(({ id }) => id)
    const delays: number[][] = []
    let told = 0
    for (let round = 0; round < ROUNDS; round += 1) {
      const clients = await Promise.all(Array.from({ length: COOKS }, (_, cook) => join(port, path(cook))))
      const load = await runLoad(clients, steps, RATE, (number) => {
        told += 1
        return tellFrame(steps[number % COOKS] ?? '', `op-load-${round}-${number}`, number % 2 === 0 ? 1 : -1)
      })
      delays.push([...load.delays])
      if (load.delays.length < load.expected) report(`  ${load.expected - load.delays.length} of ${load.expected} not delivered`)
      for (const { socket } of clients) socket.removeAllListeners().terminate()
    }
    const at = (part: number) => Math.min(...delays.map((one) => share(one, part))).toFixed(1)
    report(
      `${COOKS} sockets, ${RATE.perSecond} edits and as many words of the night a second (${told}), best of ${ROUNDS}: p50 ${at(0.5)} ms, p99 ${at(0.99)} ms`,
    )
  })
}

/** From a word that something needs longer to the running order with it. */
const afterASlip = async (report: Report): Promise<void> => {
  const plan = tonightEvening(benchEvening(3, 'middle'), Date.now(), 60)
  await withEvening(plan, 'planner', async (port, path) => {
    const [client, other] = await Promise.all([join(port, path(0)), join(port, path(1))])
    const times: number[] = []
    await orderAfter(other, () => client.socket.send(tellFrame(plan.steps[0]?.id ?? '', 'op-slip-first', 5)))
    for (let slip = 0; slip < SLIPS; slip += 1) {
      const step = plan.steps[(slip * 5) % plan.steps.length]?.id ?? ''
      const began = performance.now()
      await orderAfter(other, () => client.socket.send(tellFrame(step, `op-slip-${slip}`, 10)))
      times.push(performance.now() - began)
    }
    for (const { socket } of [client, other]) socket.removeAllListeners().terminate()
    report(
      `${plan.steps.length} steps, from a slip to the new order on another socket, ${SLIPS} slips: p50 ${median(times).toFixed(0)} ms, worst ${Math.max(...times).toFixed(0)} ms`,
    )
  })
}

const seen = new Set<string>()
/** Resolves with the first order of a plan that was not heard of before. */
const orderAfter = ({ socket }: Client, act: () => void): Promise<void> =>
  new Promise((resolve, reject) => {
    const late = setTimeout(() => reject(new Error(`no running order in ${SLIP_PATIENCE_MS} ms`)), SLIP_PATIENCE_MS)
    const hear = (data: Buffer) => {
      const frame = readType(new Uint8Array(data))
      const outcome = frame?.type === WIRE.outcome ? readOutcome(frame.body) : null
      if (outcome?.kind === 'refused') reject(new Error(`the slip was refused: ${outcome.why.kind}`))
      const message = frame?.type === WIRE.order ? readOrder(frame.body) : null
      if (message?.kind === 'failed') reject(new Error(`not planned: ${message.why}`))
      if (message?.kind !== 'order' || seen.has(message.hash)) return
      seen.add(message.hash)
      clearTimeout(late)
      socket.off('message', hear)
      resolve()
    }
    socket.on('message', hear)
    act()
  })

const withEvening = async (
  evening: Evening,
  kind: 'room' | 'planner',
  act: (port: number, path: (cook: number) => string) => Promise<void>,
): Promise<void> => {
  const folder = mkdtempSync(joinPath(tmpdir(), 'tableward-night-'))
  const file = joinPath(folder, 'evening.json')
  writeFileSync(file, printEvening(evening))
  try {
    await withServer('./sync-server.ts', [kind, file], ({ port }) => act(port, (cook) => `/cook-${cook}/sync/${evening.id}`))
  } finally {
    rmSync(folder, { recursive: true })
  }
}

/** The night's figures: how a plan grows, how fast it is shared, how soon a slip is answered, how devices come home. */
export const run = async (report: Report): Promise<void> => {
  const evening = await afterTheNight(report)
  await comingHome(report)
  await underLoad(report, evening)
  await afterASlip(report)
}

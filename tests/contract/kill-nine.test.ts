import { type ChildProcess, fork } from 'node:child_process'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import * as Y from 'yjs'
import { durationOf } from '#lib/domain/duration.ts'
import { nightKey } from '#lib/domain/people.ts'
import { renameDish, setFields } from '#lib/plan/commands/set.ts'
import { readPlan } from '#lib/plan/read.ts'
import type { Say } from '#lib/plan/say.ts'
import { writeEvening } from '#lib/plan/write-evening.ts'
import { openPlanTables } from '#server/sync/plan-tables.ts'
import { bundled } from '#tests/support/bundled.ts'
import { dice } from '#tests/support/dice.ts'
import { type PlanDatabase, planDatabase } from '#tests/support/plan-database.ts'
import { readEvening } from '#tests/support/read-evening.ts'
import { isSaved, type SocketClient, socketClient } from '#tests/support/socket-client.ts'
import { type SyncClient, syncClient } from '#tests/support/sync-client.ts'
import { tonightEvening } from '#tests/support/tonight-evening.ts'

// The long run: KILLS=300 npx vitest run -c tests/vitest.config.ts tests/contract/kill-nine
const KILLS = Number(process.env.KILLS ?? 20)
const lamb = tonightEvening(readEvening('a-lamb'), Date.now(), 60)

let database: PlanDatabase
beforeAll(() => {
  database = planDatabase()
  database.add('e', ['kim', 'noor', 'check'])
  const doc = new Y.Doc()
  writeEvening(doc, lamb, { epoch: 'epoch-1', minClient: 1 })
  const tables = openPlanTables(database.file)
  tables.create('e', Y.encodeStateAsUpdate(doc))
  tables.close()
})
afterAll(() => {
  for (const child of children) child.kill('SIGKILL')
  database.remove()
})

const children: ChildProcess[] = []
interface Process {
  readonly child: ChildProcess
  readonly port: number
  readonly died: Promise<void>
}
const start = async (): Promise<Process> => {
  const child = fork(await bundled('room-process'), [database.file], { stdio: ['ignore', 'inherit', 'inherit', 'ipc'] })
  children.push(child)
  const died = new Promise<void>((resolve) => child.once('exit', () => resolve()))
  const port = await new Promise<number>((resolve, reject) => {
    child.once('message', (message: { port: number }) => resolve(message.port))
    child.once('exit', () => reject(new Error('the process did not start')))
  })
  return { child, port, died }
}

const clockOf = (doc: Y.Doc, client: number) => Y.decodeStateVector(Y.encodeStateVector(doc)).get(client) ?? 0

/** Everything that a device was told is stored. */
interface Promised {
  readonly client: SyncClient
  readonly cook: string
}

describe('kill -9', () => {
  test(`R1 ${KILLS} times between a frame and its acknowledgement, also while the log is folded: no acknowledged edit, claim or word of the night is lost or counts twice, the database is whole`, {
    timeout: 60_000 + KILLS * 15_000,
  }, async () => {
    const chance = dice(20)
    const cooks = lamb.cooks.map((cook) => cook.id)
    const devices: Promised[] = ['kim', 'noor'].map((_, n) => ({
      client: syncClient(),
      cook: cooks[n] ?? '',
    }))
    const [slow, ...others] = lamb.steps.map(({ id }) => id)
    if (!slow) throw new Error('the evening has no step')
    let ops = 0
    const told = new Map<string, string>()
    const tell = (client: SyncClient, kind: 'longer' | 'done') => {
      ops += 1
      const [op, step] = [`op-told-${ops}`, kind === 'longer' ? slow : chance.pick(others)]
      const say: Say = kind === 'longer' ? { kind, step, minutes: 1 } : { kind, step }
      told.set(op, step)
      client.ask({ op, kind: 'tell', at: Date.now(), say })
    }
    const targets = [...lamb.steps, ...lamb.dishes, ...lamb.courses].map((one) => one.id)
    let folded = 0
    let acknowledged = 0
    let unacknowledged = 0

    for (let kill = 0; kill < KILLS; kill += 1) {
      const process = await start()
      const lines = devices.map(({ client, cook }, n) =>
        socketClient(`ws://127.0.0.1:${process.port}/sync/e?who=${['kim', 'noor'][n]}&cook=${cook}`, client),
      )
      await Promise.all(lines.map((line) => line.until(isSaved)))
      const before = database.count('PlanUpdate', 'e')
      // Enough to fold the log in some of the runs; then more, of which only some may be acknowledged.
      const long = kill % 4 === 3
      const enough = long ? 110 : chance.int(5, 40)
      for (let n = 0; n < enough; n += 1) {
        edit(devices[n % 2]?.client, n + kill * 1000, long)
        if (n % 40 === 39) await Promise.all(lines.map((line) => line.until(isSaved)))
      }
      // On a fast machine several edits are stored as one: the first long run goes on until it was folded.
      for (let n = 0; long && folded === 0 && n < 4000 && database.count('PlanUpdate', 'e') >= before; n += 1) {
        edit(devices[n % 2]?.client, n + kill * 1000, long)
        if (n % 40 === 39) await Promise.all(lines.map((line) => line.until(isSaved)))
      }
      for (const { client, cook } of devices) {
        ops += 1
        client.ask({ op: `op-kill-${ops}`, kind: 'claim', target: chance.pick(targets), cook })
        tell(client, 'longer')
        if (chance.chance(0.3)) tell(client, 'done')
      }
      const wanted = chance.chance(0.6) ? 0 : chance.int(1, 3)
      for (let n = 0; n < 10; n += 1) edit(devices[n % 2]?.client, n, long)
      await acksOf(lines, wanted)
      process.child.kill('SIGKILL')
      await Promise.all([process.died, ...lines.map((line) => line.ended)])

      if (database.count('PlanUpdate', 'e') < before) folded += 1
      expect(database.integrity()).toBe('ok')
      const stored = await onDisk()
      for (const { client } of devices) {
        acknowledged += client.acked
        unacknowledged += client.sent - client.acked
        const { ackedClock } = client
        expect(clockOf(stored.doc, ackedClock.client)).toBeGreaterThanOrEqual(ackedClock.clock)
        for (const [op, outcome] of client.outcomes) expect(stored.ops.get(op)).toEqual(outcome)
      }
      const { claims: held, night } = readPlan(stored.doc).evening
      for (const { client } of devices)
        for (const claim of readPlan(client.doc).evening.claims) expect(held).toContainEqual(claim)
      const facts = new Set(night.map(nightKey))
      for (const { client } of devices)
        for (const [op, { kind }] of client.outcomes)
          if (kind === 'done' && told.has(op)) expect(facts).toContain(`step:${told.get(op)}`)
    }

    const last = await start()
    const lines = devices.map(({ client, cook }, n) =>
      socketClient(`ws://127.0.0.1:${last.port}/sync/e?who=${['kim', 'noor'][n]}&cook=${cook}`, client),
    )
    await Promise.all(lines.map((line) => line.until(isSaved)))
    const check = socketClient(`ws://127.0.0.1:${last.port}/sync/e?who=check`)
    await check.until(isSaved)
    const hasAll = (client: SyncClient) =>
      devices.every((one) => clockOf(client.doc, one.client.doc.clientID) === clockOf(one.client.doc, one.client.doc.clientID))
    await Promise.all([check, ...lines].map((line) => line.until(hasAll)))
    await Promise.all(lines.map((line) => line.until(({ unanswered }) => unanswered === 0)))
    await check.until((client) => sameNight(client, lines))
    for (const { client } of devices) expect(readPlan(client.doc)).toEqual(readPlan(check.client.doc))
    const answered = devices.flatMap(({ client }) => [...client.outcomes.values()])
    const claimed = answered.filter(({ op, kind }) => kind === 'done' && !told.has(op)).length
    expect(answered.filter(({ op, kind }) => kind === 'done' && told.has(op))).toHaveLength(told.size)
    // Each device was told to say once in each run that it needs a minute more.
    const needed = readPlan(check.client.doc).evening.night.find((fact) => 'step' in fact && fact.step === slow)
    expect(needed).toMatchObject({ extra: durationOf(KILLS * devices.length * 60) })
    last.child.kill('SIGKILL')
    await last.died
    console.log(
      `R1: ${KILLS} kills, ${acknowledged} frames acknowledged, ${unacknowledged} not yet, ${claimed} claims and ${told.size} words told, ${folded} runs folded the log`,
    )
    expect(acknowledged).toBeGreaterThan(KILLS * 10)
    expect(unacknowledged).toBeGreaterThan(KILLS)
    expect(claimed).toBeGreaterThan(KILLS / 4)
    expect(folded).toBeGreaterThan(0)
  })
})

const sameNight = (client: SyncClient, lines: readonly SocketClient[]): boolean =>
  lines.every((line) => JSON.stringify(nightOf(line.client)) === JSON.stringify(nightOf(client)))
const nightOf = (client: SyncClient) => readPlan(client.doc).evening.night

/** Long ones fill the log: at 512 KiB it is folded. */
const edit = (client: SyncClient | undefined, n: number, long: boolean) => {
  if (!client) return
  const dish = lamb.dishes[n % lamb.dishes.length]?.id ?? ''
  if (!long && n % 3 === 0) renameDish(client.doc, dish, `Name ${n}`)
  else setFields(client.doc, 'dishes', dish, { yields: 1 + (n % 90), notes: long ? `${n % 10}`.repeat(6000) : `Note ${n}` })
}

/** Waits until so many of the frames on their way are acknowledged. */
const acksOf = async (lines: readonly SocketClient[], wanted: number): Promise<void> => {
  const [line] = lines
  if (!line) return
  const from = line.client.acked
  await line.until((client) => client.acked >= Math.min(client.sent, from + wanted))
}

/** What a new process would find. */
const onDisk = async () => {
  const tables = openPlanTables(database.file)
  const stored = tables.load('e')
  tables.close()
  const doc = new Y.Doc()
  for (const update of stored?.updates ?? []) Y.applyUpdate(doc, update)
  return { doc, ops: new Map(stored?.ops.map((op) => [op.op, JSON.parse(op.outcome)])) }
}

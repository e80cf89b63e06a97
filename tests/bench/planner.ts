import { availableParallelism, loadavg } from 'node:os'
import { problemHash } from '#lib/order/hash.ts'
import { setFields } from '#lib/plan/commands/set.ts'
import { readType } from '#lib/plan/frames.ts'
import { readPlan } from '#lib/plan/read.ts'
import { WIRE } from '#lib/plan/wire.ts'
import type { BenchSize } from '#tests/support/bench-evening.ts'
import { type Served, withServer } from './child.ts'
import { share } from './cpu.ts'
import { editOf, hostOf, type OpenEvening, openEvenings } from './planner-evenings.ts'
import { type Client, edit, join } from './sync-load.ts'
import { type Report, table } from './table.ts'

/** Every evening is edited once in so long, each at its own moment of it. */
const EVERY_MS = 10_000
/** The first is for opening them, the next for what is left to be done from it. */
const WARM_ROUNDS = 2
const ROUNDS = 4
/** How long the first orders of all evenings may take, and the last answers. */
const PATIENCE_MS = 120_000
const LAST_MS = 10_000

interface Desk extends OpenEvening {
  readonly client: Client
  /** By round: the frame of the edit, and the hash of the problem that it makes. */
  readonly edits: readonly { readonly bytes: Uint8Array; readonly hash: string }[]
}

const open = async ({ port }: Served, one: OpenEvening): Promise<Desk> => {
  const { id } = one.evening
  const client = await join(port, `/sync/${id}?who=${hostOf(one.evening)}&role=host`)
  const edits = Array.from({ length: WARM_ROUNDS + ROUNDS }, (_, round) => {
    const { step, ways } = editOf(one.evening, round)
    const bytes = edit(client, (doc) => setFields(doc, 'steps', step, { ways: [...ways] }))
    return { bytes, hash: problemHash(readPlan(client.doc).evening) }
  })
  return { ...one, client, edits }
}

/** The hash of a running order that has come; the order itself is not read, for that is no work of the server. */
const hashIn = (data: Buffer): string | null => {
  if (readType(new Uint8Array(data))?.type !== WIRE.order) return null
  return /"kind":"order","hash":"([^"]+)"/.exec(data.toString('latin1', 0, 160))?.[1] ?? null
}

/** Calls back with each running order that comes, by its hash, until it is called off. */
const listen = (desks: readonly Desk[], came: (hash: string) => void): (() => void) => {
  const ends = desks.map((desk) => {
    const hear = (data: Buffer) => {
      const hash = hashIn(data)
      if (hash !== null) came(hash)
    }
    desk.client.socket.on('message', hear)
    return () => desk.client.socket.off('message', hear)
  })
  return () => {
    for (const end of ends) end()
  }
}

/** The first edit of all at once, and an order for each of them: what evenings are opened with is no part of the load. */
const settled = (desks: readonly Desk[]): Promise<void> =>
  new Promise((resolve, reject) => {
    const missing = new Set(desks.map(({ edits }) => edits[0]?.hash))
    const late = setTimeout(() => reject(new Error(`${missing.size} evenings have no running order`)), PATIENCE_MS)
    const end = listen(desks, (hash) => {
      missing.delete(hash)
      if (missing.size > 0) return
      clearTimeout(late)
      end()
      resolve()
    })
    for (const { client, edits } of desks) if (edits[0]) client.socket.send(edits[0].bytes)
  })

interface Answered {
  readonly size: BenchSize
  /** From the moment at which the edit was due; null when no order of it came. */
  readonly ms: number | null
}

/** Sends each edit at its due time, whatever became of the ones before (open loop), and hears when its order comes. */
const load = async (desks: readonly Desk[]): Promise<readonly Answered[]> => {
  const begin = performance.now() + 100
  const due = (at: number, round: number) => begin + (round - 1) * EVERY_MS + (at * EVERY_MS) / desks.length
  const times = new Map<string, number>()
  const end = listen(desks, (hash) => {
    if (!times.has(hash)) times.set(hash, performance.now())
  })
  const all = Array.from({ length: WARM_ROUNDS + ROUNDS - 1 }, (_, k) => k + 1).flatMap((round) =>
    desks.map((desk, at) => ({ desk, round, at })),
  )
  for (const { desk, round, at } of all) {
    const wait = due(at, round) - performance.now()
    if (wait > 0) await new Promise((resolve) => setTimeout(resolve, wait))
    const bytes = desk.edits[round]?.bytes
    if (bytes) desk.client.socket.send(bytes)
  }
  await new Promise((resolve) => setTimeout(resolve, LAST_MS))
  end()
  return all
    .filter(({ round }) => round >= WARM_ROUNDS)
    .map(({ desk, round, at }) => {
      const time = times.get(desk.edits[round]?.hash ?? '')
      return { size: desk.size, ms: time === undefined ? null : time - due(at, round) }
    })
}

const row = (name: string, answered: readonly Answered[]): string[] => {
  const times = answered.flatMap(({ ms }) => (ms === null ? [] : [ms]))
  const ms = (part: number) => share(times, part).toFixed(0)
  return [name, String(answered.length), ms(0.5), ms(0.95), ms(0.99), ms(1), String(answered.length - times.length)]
}

/** A hundred open evenings, each edited once in ten seconds: from the edit to the repaired running order at its socket. */
export const run = (report: Report): Promise<void> =>
  withServer('./planner-server.ts', [], async (served) => {
    const busy = loadavg()[0]?.toFixed(1)
    const desks = await Promise.all(openEvenings().map((one) => open(served, one)))
    await settled(desks)
    const [before, began] = [await served.cpuMs(), performance.now()]
    const answered = await load(desks)
    const cores = ((await served.cpuMs()) - before) / (performance.now() - began)
    for (const { client } of desks) client.socket.removeAllListeners().terminate()
    report(`Planner: ${desks.length} open evenings, an edit each every ${EVERY_MS / 1000} s, on ${availableParallelism()} cores`)
    report(`(load of the machine before: ${busy}; the server took ${cores.toFixed(2)} cores)`)
    const sizes = ['small', 'middle', 'large'] as const
    table(
      report,
      ['from edit to order, ms', 'edits', 'p50', 'p95', 'p99', 'worst', 'none'],
      [
        row('all', answered),
        ...sizes.map((size) =>
          row(
            size,
            answered.filter((one) => one.size === size),
          ),
        ),
      ],
    )
  })

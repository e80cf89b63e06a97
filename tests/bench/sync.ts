import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import type { Evening } from '#lib/domain/evening.ts'
import { parseEvening } from '#lib/domain/parse.ts'
import { setFields } from '#lib/plan/commands/set.ts'
import { readOrder, readType } from '#lib/plan/frames.ts'
import { WIRE } from '#lib/plan/wire.ts'
import { type Served, withServer } from './child.ts'
import { share } from './cpu.ts'
import { COOKS, documentOf, edit, join, joinRelay, type Load, runLoad } from './sync-load.ts'

const here = (name: string) => fileURLToPath(new URL(name, import.meta.url))
const EVENING_FILE = here('../support/evenings/a-lamb.json')

const RATES = [
  { perSecond: 20, seconds: 4, patienceMs: 2_000 },
  { perSecond: 100, seconds: 3, patienceMs: 2_000 },
]
const ROUNDS = 3
const PLANS = 10
const PLAN_PATIENCE_MS = 10_000

type Report = (line: string) => void
type Kind = 'relay' | 'room' | 'planner'

const evening = (): Evening => {
  const read = parseEvening(JSON.parse(readFileSync(EVENING_FILE, 'utf8')))
  if (!read.ok) throw new Error(`${EVENING_FILE} is not an evening`)
  return read.value
}

const served = <T>(kind: Kind, act: (served: Served) => Promise<T>): Promise<T> =>
  withServer('./sync-server.ts', [kind, EVENING_FILE], act)

interface Run extends Load {
  readonly cpuPerEdit: number
}

const once = async (
  kind: 'relay' | 'room',
  { port, cpuMs }: Served,
  plan: Evening,
  rate: (typeof RATES)[number],
): Promise<Run> => {
  const base = documentOf(plan)
  const clients = await Promise.all(
    Array.from({ length: COOKS }, (_, cook) =>
      kind === 'relay' ? joinRelay(port, base) : join(port, `/cook-${cook}/sync/${plan.id}`),
    ),
  )
  const before = await cpuMs()
  const load = await runLoad(
    clients,
    plan.steps.map(({ id }) => id),
    rate,
  )
  const cpuPerEdit = ((await cpuMs()) - before) / load.edits
  for (const { socket } of clients) socket.removeAllListeners().terminate()
  return { ...load, cpuPerEdit }
}

const inWords = (runs: readonly Run[]): string => {
  const best = (of: (run: Run) => number) => Math.min(...runs.map(of))
  const at = (part: number) =>
    best(({ delays }) =>
      share(
        delays.toSorted((a, b) => a - b),
        part,
      ),
    ).toFixed(1)
  const missing = runs.reduce((sum, { expected, delays }) => sum + expected - delays.length, 0)
  return `p50 ${at(0.5)} ms, p99 ${at(0.99)} ms, CPU ${(best(({ cpuPerEdit }) => cpuPerEdit) * 1000).toFixed(0)} µs an edit, ${missing} of ${runs.reduce((sum, { expected }) => sum + expected, 0)} not delivered`
}

/** From an edit that changes the problem to the first running order of the plan with it. */
const planTimes = (plan: Evening): Promise<number[]> =>
  served('planner', async ({ port }) => {
    const client = await join(port, `/cook-0/sync/${plan.id}`)
    const [step] = plan.steps
    const [way] = step?.ways ?? []
    if (!step || !way) throw new Error('the evening has no step')
    const seen = new Set<string>()
    const nextOrder = (): Promise<void> =>
      new Promise((resolve, reject) => {
        const late = setTimeout(() => reject(new Error(`no running order in ${PLAN_PATIENCE_MS} ms`)), PLAN_PATIENCE_MS)
        const hear = (data: Buffer) => {
          const frame = readType(new Uint8Array(data))
          const message = frame?.type === WIRE.order ? readOrder(frame.body) : null
          if (message?.kind === 'failed') reject(new Error(message.why))
          if (message?.kind !== 'order' || seen.has(message.hash)) return
          seen.add(message.hash)
          clearTimeout(late)
          client.socket.off('message', hear)
          resolve()
        }
        client.socket.on('message', hear)
      })
    const times: number[] = []
    for (let round = 0; round <= PLANS; round += 1) {
      const order = nextOrder()
      const likely = `PT${20 + round}M`
      const begin = performance.now()
      client.socket.send(
        edit(client, (doc) =>
          setFields(doc, 'steps', step.id, { ways: [{ ...way, takes: { least: likely, likely, most: likely } }] }),
        ),
      )
      await order
      times.push(performance.now() - begin)
    }
    client.socket.removeAllListeners().terminate()
    // The first one also waits for the thread to start.
    return times.slice(1)
  })

/** The two in turn, so that a busy moment of the machine meets both. */
const compare = (plan: Evening, relay: Served, room: Served) => async (rate: (typeof RATES)[number], report: Report) => {
  const runs: { readonly relay: Run[]; readonly room: Run[] } = { relay: [], room: [] }
  for (let round = 0; round < ROUNDS; round += 1) {
    runs.relay.push(await once('relay', relay, plan, rate))
    runs.room.push(await once('room', room, plan, rate))
  }
  const cost = (of: readonly Run[]) => Math.min(...of.map(({ cpuPerEdit }) => cpuPerEdit))
  report(`sync, one evening, ${COOKS} sockets, ${rate.perSecond} edits/s, best of ${ROUNDS}`)
  report(`  bare relay  ${inWords(runs.relay)}`)
  report(`  our room    ${inWords(runs.room)}`)
  report(`  CPU an edit, room : relay = ${(cost(runs.room) / cost(runs.relay)).toFixed(2)}`)
}

/** Sync beside a bare relay, best of three in turn, and the time from an edit to its running order. About a minute. */
export const run = async (report: Report): Promise<void> => {
  const plan = evening()
  await served('relay', (relay) =>
    served('room', async (room) => {
      for (const rate of RATES) await compare(plan, relay, room)(rate, report)
    }),
  )
  const times = (await planTimes(plan)).toSorted((a, b) => a - b)
  const [p50, worst] = [share(times, 0.5), share(times, 1)].map((ms) => ms.toFixed(0))
  report(
    `plan, ${plan.steps.length} steps, from an edit to its first running order, ${times.length} edits: p50 ${p50} ms, worst ${worst} ms`,
  )
}

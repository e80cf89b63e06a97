import { expect, test } from 'vitest'
import { secondsOf } from '#lib/domain/duration.ts'
import { instantOfMs, msOfInstant } from '#lib/domain/time.ts'
import { courseOf, stepOf } from '#lib/plan/night-facts.ts'
import { readPlan } from '#lib/plan/read.ts'
import { inReadingOrder } from '#lib/plan/reading-order.ts'
import type { Said, Say } from '#lib/plan/say.ts'
import type { TellCommand } from '#lib/plan/wire.ts'
import { dice } from '#tests/support/dice.ts'
import { cook, course, dish, evening, step } from '#tests/support/evening-builders.ts'
import { type Device, EVENING, type LoopbackRoom, loopbackRoom, turn } from '#tests/support/loopback-room.ts'

const MINUTE = 60_000
const EIGHT = Date.parse('2026-11-14T20:00:00Z')
const STEPS = ['fry', 'boil', 'bake'] as const
const plan = inReadingOrder(
  evening(
    { cooks: ['kim', 'lou', 'max'].map((id) => cook(id)) },
    course('main', dish('pie', ...STEPS.map((id) => step(id, 10)))),
  ),
)
const instant = (ms: number) => instantOfMs(plan, ms)

/** The room at eight in the evening. */
const atEight = async (): Promise<LoopbackRoom> => {
  const room = await loopbackRoom(plan)
  room.clock.advance(EIGHT - room.clock.now())
  return room
}

const tell = (room: LoopbackRoom, device: Device, skewMs: number, op: string, say: Say): TellCommand => {
  const command: TellCommand = { op, kind: 'tell', at: room.clock.now() + skewMs, say }
  device.client.ask(command)
  return command
}

test('K6 two phones whose clocks are seven minutes off, one of them without a line for half an hour, tell the right moments', async () => {
  const room = await atEight()
  const [ahead, behind] = [room.device('m-1', 'host', 'kim', 7 * MINUTE), room.device('m-2', 'cook', 'lou', -7 * MINUTE)]
  room.connect(ahead)
  await room.settle()
  tell(room, ahead, 7 * MINUTE, 'op-started', { kind: 'started', step: 'fry' })
  await room.settle()
  tell(room, behind, -7 * MINUTE, 'op-queued-1', { kind: 'done', step: 'boil' })
  room.clock.advance(2 * MINUTE)
  tell(room, behind, -7 * MINUTE, 'op-queued-2', { kind: 'done', step: 'fry' })
  room.clock.advance(28 * MINUTE)
  room.connect(behind)
  await room.settle()
  const night = await room.rooms().read(EVENING)
  expect(stepOf(night, 'fry')).toEqual({ step: 'fry', started: instant(EIGHT), done: instant(EIGHT + 2 * MINUTE), by: 'lou' })
  expect(stepOf(night, 'boil')).toEqual({ step: 'boil', done: instant(EIGHT), by: 'lou' })
  expect(behind.client.outcomes.get('op-queued-2')).toEqual({
    op: 'op-queued-2',
    kind: 'done',
    told: instant(EIGHT + 2 * MINUTE),
  })
})

test('K7 a word is taken back by who told it, in time, also when both waited for a line and the server was killed between', async () => {
  const room = await atEight()
  const [kim, lou] = [room.device('m-1', 'host', 'kim'), room.device('m-2', 'cook', 'lou')]
  const done: Said = { kind: 'done', step: 'fry' }
  room.connect(kim)
  room.connect(lou)
  await room.settle()
  tell(room, kim, 0, 'op-done-1', done)
  await room.settle()
  tell(room, lou, 0, 'op-not-hers', { kind: 'take-back', of: 'op-done-1', said: done })
  await room.settle()
  expect(lou.client.outcomes.get('op-not-hers')).toMatchObject({ kind: 'refused', why: { kind: 'stays' } })
  await room.kill()
  room.clock.advance(20_000)
  tell(room, kim, 0, 'op-back-1', { kind: 'take-back', of: 'op-done-1', said: done })
  tell(room, kim, 0, 'op-done-2', done)
  room.clock.advance(50_000)
  tell(room, kim, 0, 'op-back-2', { kind: 'take-back', of: 'op-done-2', said: done })
  room.clock.advance(30 * MINUTE)
  room.connect(kim)
  await room.settle()
  expect(['op-back-1', 'op-done-2', 'op-back-2'].map((op) => kim.client.outcomes.get(op)?.kind)).toEqual(['done', 'done', 'done'])
  expect((await room.rooms().read(EVENING)).night).toEqual([])
  tell(room, kim, 0, 'op-done-3', done)
  await room.settle()
  room.clock.advance(61_500)
  room.connect(kim)
  tell(room, kim, 0, 'op-back-3', { kind: 'take-back', of: 'op-done-3', said: done })
  await room.settle()
  expect(kim.client.outcomes.get('op-back-3')).toMatchObject({ kind: 'refused', why: { kind: 'too-late' } })
  expect(stepOf(await room.rooms().read(EVENING), 'fry')).toBeDefined()
})

const SEEDS = Number(process.env.SYNC_SEEDS ?? 8)
const OPS = Number(process.env.SYNC_OPS ?? 60)

interface Tally {
  tells: number
  answered: number
  kills: number
  taken: number
}

/** Devices tell, lose their lines, send twice and come again; the server dies. In the end every word counts once. */
const run = async (seed: number, tally: Tally): Promise<void> => {
  const chance = dice(seed)
  const room = await atEight()
  const skews = [0, 7 * MINUTE, -7 * MINUTE, 90_000]
  const devices = skews.map((skew, n) => room.device(`m-${Math.min(n, 2)}`, 'cook', ['kim', 'lou', 'max'][Math.min(n, 2)], skew))
  const told: { readonly device: Device; readonly op: string; readonly say: Say; readonly ms: number }[] = []
  const say = (device: Device, what: Say) => {
    const op = `op-${seed}-${told.length}-tell`
    told.push({ device, op, say: what, ms: room.clock.now() })
    tell(room, device, skews[devices.indexOf(device)] ?? 0, op, what)
  }
  const actions: [number, (device: Device) => Promise<void> | void][] = [
    [5, (device) => say(device, { kind: 'longer', step: chance.pick(STEPS), minutes: chance.pick([5, 10]) })],
    [3, (device) => say(device, { kind: chance.pick(['started', 'done'] as const), step: chance.pick(STEPS) })],
    [2, (device) => say(device, { kind: chance.pick(['to-table', 'plates-off'] as const), course: 'main' })],
    [
      2,
      (device) => {
        const last = told.findLast((one) => one.device.seat.memberId === device.seat.memberId)
        if (last && last.say.kind !== 'take-back') say(device, { kind: 'take-back', of: last.op, said: last.say })
      },
    ],
    [8, (device) => device.line && device.line.toServer.length > 0 && device.line.deliverToServer()],
    [8, (device) => room.deliverToClient(device)],
    [
      4,
      async () => {
        room.clock.advance(chance.int(100, 5000))
        room.log.commit(chance.int(1, 5))
        await turn()
      },
    ],
    [3, (device) => room.cut(device)],
    [6, (device) => device.line ?? room.connect(device)],
    [
      2,
      (device) => {
        const [first] = device.line?.toServer ?? []
        if (first) device.line?.toServer.push(first.slice())
      },
    ],
    [
      0.7,
      async () => {
        tally.kills += 1
        await room.kill()
      },
    ],
  ]
  const total = actions.reduce((sum, [weight]) => sum + weight, 0)
  for (let n = 0; n < OPS; n += 1) {
    let left = (chance.int(0, 1_000_000) / 1_000_000) * total
    await actions.find(([weight]) => {
      left -= weight
      return left <= 0
    })?.[1](chance.pick(devices))
  }
  await room.settle()
  for (const device of devices) room.connect(device)
  await room.settle()

  const night = await room.rooms().read(EVENING)
  for (const { client } of devices) expect(readPlan(client.doc).evening).toEqual(night)
  const outcome = (device: Device, op: string) => device.client.outcomes.get(op)
  tally.tells += told.length
  tally.answered += told.filter(({ device, op }) => outcome(device, op)?.kind === 'done').length
  for (const { device, op } of told) expect(outcome(device, op), op).toBeDefined()
  const written = told.filter(({ device, op }) => {
    const answer = outcome(device, op)
    return answer?.kind === 'done' && answer.told !== undefined
  })
  const takenBack = new Set(written.flatMap(({ say: one }) => (one.kind === 'take-back' ? [one.of] : [])))
  tally.taken += takenBack.size
  for (const id of STEPS) {
    const minutes = written.flatMap(({ op, say: one }) =>
      one.kind === 'longer' && one.step === id && !takenBack.has(op) ? [one.minutes] : [],
    )
    const { extra, started, done } = stepOf(night, id) ?? {}
    expect(extra === undefined ? 0 : secondsOf(extra) / 60).toBe(minutes.reduce((sum, one) => sum + one, 0))
    for (const [kind, moment] of [
      ['started', started],
      ['done', done],
    ] as const) {
      // What stands was told by somebody then, and by no clock but the server's: at most as much later as it was on its way.
      const tellers = written.filter(({ op, say: one }) => one.kind === kind && one.step === id && !takenBack.has(op))
      if (moment !== undefined) expect(tellers.some(({ ms }) => msOfInstant(moment) >= ms - 1000)).toBe(true)
      if (kind === 'done') expect(moment === undefined).toBe(tellers.length === 0)
    }
  }
  expect(courseOf(night, 'main')?.toTable === undefined).toBe(
    !written.some(({ op, say: one }) => one.kind === 'to-table' && !takenBack.has(op)),
  )
}

test(`K15 told under lost lines, doubled frames and a server that dies, every word counts once: ${SEEDS} seeds`, async () => {
  const tally: Tally = { tells: 0, answered: 0, kills: 0, taken: 0 }
  for (let seed = 1; seed <= SEEDS; seed += 1) {
    try {
      await run(seed, tally)
    } catch (cause) {
      throw new Error(`seed ${seed}`, { cause })
    }
  }
  for (const [what, count] of Object.entries(tally)) expect(count, what).toBeGreaterThan(SEEDS / 4)
})

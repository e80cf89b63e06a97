import { readFileSync } from 'node:fs'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { parseEvening, printEvening } from '#lib/domain/parse.ts'
import { DEFAULT_BUDGET, planEvening } from '#lib/order/engine.ts'
import { problemHash } from '#lib/order/hash.ts'
import { CLOSE } from '#lib/plan/wire.ts'
import { demoEvening } from '#prisma/demo/demo-evening.ts'
import { createEvening } from '#server/evenings/create.ts'
import { exportEvening, importEvening } from '#server/evenings/file.ts'
import { type EveningLine, listEvenings, sortLines } from '#server/evenings/list.ts'
import { addMember } from '#server/evenings/members.ts'
import { plantEvening } from '#server/evenings/plant.ts'
import { drinkingGuests } from '#server/guests/drinking.ts'
import { needsFor } from '#server/guests/needs.ts'
import { tableOf } from '#server/guests/table.ts'
import type { Live } from '#server/live.ts'
import { openNights } from '#server/night/open-nights.ts'
import { root } from '#server/root.ts'
import { course, dish, evening, follows, role, step } from '#tests/support/evening-builders.ts'
import { handClock } from '#tests/support/hand-clock.ts'
import { openLiveParts, somebody } from '#tests/support/live-parts.ts'
import { turn } from '#tests/support/loopback-room.ts'
import { readEvening } from '#tests/support/read-evening.ts'

let parts: Live & { readonly close: () => Promise<void> }
beforeAll(async () => {
  parts = await openLiveParts()
})
afterAll(() => parts.close())

const dinner = { name: '  A dinner ', date: '2027-03-06', zone: 'Europe/London', sitDown: '19:30', covers: 6 }

test('A7 a new evening is a whole one that its maker hosts and cooks at', async () => {
  const user = await somebody('Ama')
  const made = await createEvening(user.id, dinner)
  if (!made.ok) throw new Error(made.error.kind)
  const plan = await parts.rooms.read(made.value.eveningId)
  expect(parseEvening(JSON.parse(printEvening(plan))).ok).toBe(true)
  expect(plan).toMatchObject({ id: made.value.eveningId, name: 'A dinner', covers: 6, guestsFrom: { day: 0, time: '19:00' } })
  expect(plan.kitchens[0]?.kit.map((kit) => kit.kind).sort()).toEqual(
    ['cold', 'cold', 'oven', 'ring', 'ring', 'ring', 'tool', 'tool', 'tool', 'worktop'].sort(),
  )
  expect(await listEvenings(user.id)).toEqual([
    {
      id: made.value.eveningId,
      name: 'A dinner',
      date: '2027-03-06',
      zone: 'Europe/London',
      sitDown: '19:30',
      covers: 6,
      role: 'host',
      courseNames: [],
      cookNames: ['Ama'],
      dishes: 0,
    },
  ])
})

test('A7 every sit-down from midnight to midnight makes an evening', async () => {
  const user = await somebody('Ama')
  for (const sitDown of ['00:00', '00:10', '12:30', '23:59'])
    expect((await createEvening(user.id, { ...dinner, sitDown })).ok).toBe(true)
})

test('A7 what cannot be an evening is refused with its fields named', async () => {
  const user = await somebody('Ama')
  const bad = { name: '', date: '2027-02-30', zone: 'Mars/Olympus', sitDown: '25:00', covers: 0, extra: 1 }
  const refused = await createEvening(user.id, bad)
  expect(refused.ok).toBe(false)
  if (refused.ok || refused.error.kind !== 'invalid') throw new Error('expected a refusal')
  expect(refused.error.refusals.map((refusal) => refusal.path).sort()).toEqual([
    'covers',
    'date',
    'extra',
    'name',
    'sitDown',
    'zone',
  ])
  expect(await listEvenings(user.id)).toEqual([])
})

const imported = async (userId: string, text: string): Promise<string> => {
  const made = await importEvening(userId, text)
  if (!made.ok) throw new Error(`the file was refused: ${JSON.stringify(made.error)}`)
  return made.value.eveningId
}
const exported = async (userId: string, eveningId: string) => {
  const file = await exportEvening(userId, eveningId)
  if (!file.ok) throw new Error(file.error.kind)
  return file.value
}

test('A8 a file becomes a new evening under an id of its own and comes out as it went in, guests and all', async () => {
  const user = await somebody('Salma')
  const demo = demoEvening('2027-03-06')
  const [first, second] = [await imported(user.id, printEvening(demo)), await imported(user.id, printEvening(demo))]
  expect(first).not.toBe(second)
  const file = await exported(user.id, first)
  expect(file.name).toBe('eight-at-the-long-table-2027-03-06.json')
  const back = parseEvening(JSON.parse(file.text))
  expect(back.ok && sorted(back.value)).toEqual(sorted(demo))
  expect(demo.guests.length).toBeGreaterThan(0)
  expect(back.ok && back.value.guests).toEqual(demo.guests)
})

test('A8 the example in docs/ goes in and out byte for byte, and so does whatever came out, at somebody else’s too', async () => {
  const [ama, salma] = [await somebody('Ama'), await somebody('Salma')]
  const example = readFileSync(`${root}docs/example-evening.json`, 'utf8')
  expect((await exported(ama.id, await imported(ama.id, example))).text).toBe(example)
  for (const evening of [readEvening('a-lamb'), readEvening('c-pork'), demoEvening('2027-03-06')]) {
    const once = await exported(ama.id, await imported(ama.id, printEvening(evening)))
    const again = await exported(salma.id, await imported(salma.id, once.text))
    expect(again).toEqual(once)
  }
})

test('A8 an evening that was made here goes out and in again as the same file', async () => {
  const user = await somebody('Ama')
  const made = await createEvening(user.id, dinner)
  if (!made.ok) throw new Error(made.error.kind)
  const { text } = await exported(user.id, made.value.eveningId)
  expect(JSON.parse(text).id).toBe(made.value.eveningId)
  expect((await exported(user.id, await imported(user.id, text))).text).toBe(text)
})

test('A17 guests are the hosts’ alone: not in a cook’s file, not in the shared plan, and gone with the evening', async () => {
  const [host, cook] = [await somebody('Salma'), await somebody('Noor')]
  const demo = demoEvening('2027-03-06')
  const eveningId = await imported(host.id, printEvening(demo))
  expect((await addMember(host.id, eveningId, { email: cook.email, role: 'cook', cook: null })).ok).toBe(true)
  expect(JSON.parse((await exported(cook.id, eveningId)).text).guests).toEqual([])
  expect(JSON.parse((await exported(host.id, eveningId)).text).guests).toEqual(demo.guests)
  expect((await parts.rooms.read(eveningId)).guests).toEqual([])
  const listed = await tableOf(host.id, eveningId)
  expect(listed.ok && listed.value.guests).toEqual(
    demo.guests.map((guest) => ({ ...guest, invitation: null, changedAt: null, by: 'host' })),
  )
  expect(await parts.db.guest.count({ where: { eveningId } })).toBe(demo.guests.length)
  await parts.db.evening.delete({ where: { id: eveningId } })
  expect(await parts.db.guest.count({ where: { eveningId } })).toBe(0)
})

test('DR3 what each guest drinks is told to hosts alone, without the words that they wrote', async () => {
  const [host, cook, stranger] = [await somebody('Salma'), await somebody('Noor'), await somebody('Ama')]
  const eveningId = await imported(host.id, printEvening(demoEvening('2027-03-06')))
  expect((await addMember(host.id, eveningId, { email: cook.email, role: 'cook', cook: null })).ok).toBe(true)
  const guests = await drinkingGuests(host.id, eveningId)
  expect(guests?.map(({ id }) => id)).toEqual(demoEvening('2027-03-06').guests.map(({ id }) => id))
  expect(guests?.some(({ words }) => words !== '')).toBe(false)
  expect([await drinkingGuests(cook.id, eveningId), await drinkingGuests(stranger.id, eveningId)]).toEqual([null, null])
})

test('A17 who has a seat knows the needs by their number, of everybody who has not said no; unknown is no need and no answer', async () => {
  const host = await somebody('Salma')
  const guest = (id: string, reply: string, needs: unknown) => ({
    id,
    name: id,
    reply,
    child: false,
    portion: 1,
    needs,
    drinks: 'unknown',
    drives: false,
    words: '',
  })
  const nuts = { need: 'no-nuts', grade: 'severe' }
  const guests = [
    guest('g1', 'yes', [nuts, { need: 'vegan', grade: 'avoids' }]),
    guest('g2', 'maybe', [nuts]),
    guest('g3', 'no', [{ need: 'no-fish', grade: 'allergy' }]),
    guest('g4', 'waiting', null),
    guest('g5', 'yes', [{ need: 'no-nuts', grade: 'dislikes' }]),
  ]
  const eveningId = await imported(host.id, JSON.stringify({ ...readEvening('a-lamb'), guests }))
  const needs = await needsFor(host.id, eveningId)
  expect(needs.ok && needs.value.needs).toEqual([
    { need: 'no-nuts', grade: 'dislikes', guests: 1 },
    { need: 'no-nuts', grade: 'severe', guests: 2 },
    { need: 'vegan', grade: 'avoids', guests: 1 },
  ])
  expect(needs.ok && needs.value.unknown).toBe(1)
  const listed = await tableOf(host.id, eveningId)
  expect(listed.ok && listed.value.guests[3]?.needs).toBeNull()
})

/** An arbitrary file has its lists in any order; what order siblings have stands in their keys. */
const sorted = (evening: object) =>
  Object.fromEntries(
    Object.entries(evening).map(([name, value]) => [
      name,
      Array.isArray(value) ? [...value].sort((a, b) => (JSON.stringify(a) < JSON.stringify(b) ? -1 : 1)) : value,
    ]),
  )

test('A8 a file that is no evening is refused with the field named, and nothing is made', async () => {
  const user = await somebody('Ama')
  const demo = demoEvening('2027-03-06')
  const broken = JSON.stringify({ ...demo, covers: 'eight', surprise: true })
  for (const [text, path] of [
    ['{', ''],
    ['[]', ''],
    [broken, 'covers'],
  ] as const) {
    const refused = await importEvening(user.id, text)
    if (refused.ok || refused.error.kind !== 'invalid') throw new Error(`"${text.slice(0, 20)}" was taken`)
    expect(refused.error.refusals[0]?.path).toBe(path)
    expect(refused.error.refusals[0]?.why).toMatch(/\w/)
  }
  expect(await listEvenings(user.id)).toEqual([])
})

test('A9 the next evening stands first, past ones last, the latest of them first', () => {
  const line = (date: string, zone = 'Europe/London'): EveningLine => ({
    id: `${date}-${zone}`,
    name: '',
    date,
    zone,
    sitDown: '19:00',
    covers: 4,
    role: 'host',
    courseNames: [],
    cookNames: [],
    dishes: 0,
  })
  const lines = [
    line('2027-01-01'),
    line('2027-03-01'),
    line('2027-02-10'),
    line('2027-02-09'),
    line('2027-02-09', 'Pacific/Kiritimati'),
  ]
  // It is the 10th already on Kiritimati: an evening of the 9th is past there, and tonight in London.
  const today = (zone: string) => (zone === 'Pacific/Kiritimati' ? '2027-02-10' : '2027-02-09')
  expect(sortLines(lines, today).map(({ id }) => id)).toEqual([
    '2027-02-09-Europe/London',
    '2027-02-10-Europe/London',
    '2027-03-01-Europe/London',
    '2027-02-09-Pacific/Kiritimati',
    '2027-01-01-Europe/London',
  ])
})

test('K22 K26 a live evening is found again after a start; what has rung is stored, rings over no two starts, and goes with its evening', async () => {
  const { db, rooms, planner } = parts
  await parts.nights.close()
  const user = await somebody('Noor')
  const begun = '2026-11-14T18:30:00+00:00'
  const told = { night: 'begun' as const, begun, by: 'kim' }
  const menu = course('m', dish('d', step('chop', 20), step('plate', 5, follows('chop'), role('plate'))))
  const { eveningId } = await plantEvening({ ...evening(menu), night: [told] }, [{ userId: user.id, role: 'host', cook: 'kim' }])
  const plan = await rooms.read(eveningId)
  const order = planEvening(plan, { now: begun, budget: DEFAULT_BUDGET })
  const chop = Date.parse(order.cues.find((cue) => cue.step === 'chop')?.start ?? '')
  await db.storedOrder.create({ data: { eveningId, hash: problemHash(plan), order: JSON.stringify(order) } })

  /** Another start of the server, with a clock of its own. */
  const start = async (at: number) => {
    const clock = handClock(at)
    const nights = await openNights({ db, rooms, planner, clock })
    const rang: string[] = []
    nights.onFire((id, fired) => {
      if (id === eveningId) rang.push(fired.id)
    })
    const until = async (is: () => boolean) => {
      while (!is()) {
        // Not past what is waited for, however long the disk takes.
        if (clock.now() < at + 240_000) clock.advance(100)
        await turn()
      }
    }
    return { nights, rang, until }
  }

  const first = await start(chop)
  await first.until(() => first.rang.length > 0)
  expect(first.nights.isLive(eveningId)).toBe(true)
  expect(first.rang).toEqual(['begin:chop:0'])
  expect(first.nights.fired(eveningId)).toMatchObject([{ id: 'begin:chop:0', at: chop, kind: 'begin', cooks: ['kim'], batch: 0 }])
  await first.nights.close()
  const second = await start(chop + 1000)
  await second.until(() => second.rang.length > 0)
  expect(second.rang).not.toContain('begin:chop:0')
  expect(second.nights.fired(eveningId).map(({ id }) => id)).toEqual(['begin:chop:0', ...second.rang])
  expect(await db.nightAlert.count({ where: { eveningId } })).toBe(1 + second.rang.length)

  rooms.closeEvening(eveningId, CLOSE.gone)
  expect(second.nights.isLive(eveningId)).toBe(false)
  await db.evening.delete({ where: { id: eveningId } })
  expect(await db.nightAlert.count({ where: { eveningId } })).toBe(0)
  await second.nights.close()
})

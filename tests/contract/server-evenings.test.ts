import { afterAll, beforeAll, expect, test } from 'vitest'
import { parseEvening, printEvening } from '#lib/domain/parse.ts'
import { demoEvening } from '#prisma/demo/demo-evening.ts'
import { createEvening } from '#server/evenings/create.ts'
import { exportEvening, importEvening } from '#server/evenings/file.ts'
import { type EveningLine, listEvenings, sortLines } from '#server/evenings/list.ts'
import type { Live } from '#server/live.ts'
import { openLiveParts, somebody } from '#tests/support/live-parts.ts'

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

test('A8 a file becomes a new evening under an id of its own and comes out as it went in, but for the guests', async () => {
  const user = await somebody('Salma')
  const demo = demoEvening('2027-03-06')
  const first = await importEvening(user.id, printEvening(demo))
  const second = await importEvening(user.id, printEvening(demo))
  if (!first.ok || !second.ok) throw new Error('the file was refused')
  expect(first.value.eveningId).not.toBe(second.value.eveningId)
  const file = await exportEvening(user.id, first.value.eveningId)
  if (!file.ok) throw new Error(file.error.kind)
  expect(file.value.name).toBe('eight-at-the-long-table-2027-03-06.json')
  const back = parseEvening(JSON.parse(file.value.text))
  expect(back.ok && sorted(back.value)).toEqual(sorted({ ...demo, id: first.value.eveningId, guests: [] }))
  expect(first.value.guestsLeftOut).toBe(demo.guests.length)
  expect(demo.guests.length).toBeGreaterThan(0)
})

/** The shared plan keeps its lists by id; what order siblings have stands in their keys. */
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

import fc from 'fast-check'
import ICAL from 'ical.js'
import { expect, test } from 'vitest'
import { type Entry, entriesOf } from '#app/_calendar/entries.ts'
import { cleanText } from '#lib/domain/atoms.ts'
import { alarmOf } from '#lib/domain/calendar-alarm.ts'
import type { Evening } from '#lib/domain/evening.ts'
import { type CalendarEvent, writeCalendar } from '#server/calendar/write-calendar.ts'
import { readEvening } from '#tests/support/read-evening.ts'
import { planned } from './planned.ts'

const WHOSE = { eveningId: 'the-evening', memberId: 'the-seat' }
const CHANGED = Date.UTC(2026, 0, 2, 3, 4, 5)

const eventOf = (entry: Entry, alarm: number | null = 10): CalendarEvent => ({
  ...entry,
  sequence: 3,
  changedAt: CHANGED,
  alarm,
  cancelled: false,
})

/** As another program reads it: every component and property, nothing lenient. */
const readBack = (text: string): ICAL.Component => new ICAL.Component(ICAL.parse(text))
const eventsIn = (text: string): ICAL.Event[] =>
  readBack(text)
    .getAllSubcomponents('vevent')
    .map((each) => new ICAL.Event(each))
/** Of a property that it does not know the parser takes the value as it stands; its type is TEXT all the same (RFC 5545, 3.8.8.2). */
const calendarName = (calendar: ICAL.Component, property: 'x-wr-calname' | 'name'): string =>
  String(calendar.getFirstPropertyValue(property) ?? '').replace(/\\([\\;,])/g, '$1')
const msOf = (time: ICAL.Time): number => time.toUnixTime() * 1000

const lamb = planned(readEvening('a-lamb'), 60)
const kim = lamb.evening.cooks[0]?.id ?? ''
const kims = entriesOf(lamb.evening, lamb.order, { ...WHOSE, cook: kim })

test('CA1 another program reads every entry as it was meant: when, what, by which name, and when it calls', () => {
  expect(kims.length).toBeGreaterThan(15)
  const text = writeCalendar(
    'Lamb, on Saturday; with \\ friends',
    kims.map((entry) => eventOf(entry)),
  )
  const calendar = readBack(text)
  for (const property of ['x-wr-calname', 'name'] as const)
    expect(calendarName(calendar, property)).toBe('Lamb, on Saturday; with \\ friends')
  expect(calendar.getFirstPropertyValue('version')).toBe('2.0')
  expect(calendar.hasProperty('method')).toBe(false)
  expect(
    eventsIn(text).map(({ uid, summary, description, startDate, endDate, sequence }) => ({
      uid,
      title: summary,
      notes: description ?? '',
      from: msOf(startDate),
      to: msOf(endDate),
      sequence,
    })),
  ).toEqual(
    kims.map(({ uid, title, notes, from, to }) => ({ uid, title, notes, from, to: Math.max(to, from + 60_000), sequence: 3 })),
  )
  for (const event of calendar.getAllSubcomponents('vevent')) {
    // Without a METHOD the stamp is when it was last changed (RFC 5545, 3.8.7.2).
    for (const name of ['dtstamp', 'last-modified']) expect(msOf(event.getFirstPropertyValue(name) as ICAL.Time)).toBe(CHANGED)
    const [alarm, ...others] = event.getAllSubcomponents('valarm')
    expect(others).toEqual([])
    expect(alarm?.getFirstPropertyValue('action')).toBe('DISPLAY')
    expect(String(alarm?.getFirstPropertyValue('trigger'))).toBe('-PT10M')
    expect(alarm?.getFirstPropertyValue('description')).toBe(event.getFirstPropertyValue('summary'))
  }
})

test('CA1 an alarm at the moment itself is at that moment, and none is none', () => {
  const [entry] = kims
  if (!entry) throw new Error('no entry')
  const alarms = (alarm: number | null) =>
    readBack(writeCalendar('x', [eventOf(entry, alarm)]))
      .getFirstSubcomponent('vevent')
      ?.getAllSubcomponents('valarm') ?? []
  expect(alarms(null)).toEqual([])
  expect(String(alarms(0)[0]?.getFirstPropertyValue('trigger'))).toBe('PT0S')
  // Who has chosen nothing is called by a file as by an address.
  expect([alarmOf(null), alarmOf({ alarm: null }), alarmOf({ alarm: 0 })]).toEqual([10, null, 0])
})

test('CA2 entries keep their names when the order moves them, and no two have the same', () => {
  const uids = kims.map(({ uid }) => uid)
  expect(new Set(uids).size).toBe(uids.length)
  const later = (instant: string) => new Date(Date.parse(instant) + 45 * 60_000).toISOString()
  const cues = lamb.order.cues.map((cue) => ({
    ...cue,
    start: later(cue.start),
    end: later(cue.end),
    touches: cue.touches.map((touch) => ({ ...touch, at: later(touch.at) })),
  }))
  const moved = entriesOf(lamb.evening, { ...lamb.order, cues }, { ...WHOSE, cook: kim })
  const [, ...doings] = kims
  expect(moved.slice(1).map(({ uid, from }) => [uid, from - 45 * 60_000])).toEqual(doings.map(({ uid, from }) => [uid, from]))
})

test('CA3 days ahead are in it, and so is the way where nothing is carried', () => {
  const days = lamb.evening.cooks
    .flatMap(({ id }) => entriesOf(lamb.evening, lamb.order, { ...WHOSE, cook: id }))
    .map(({ from }) => new Date(from).toISOString().slice(0, 10))
  expect(new Set(days).size).toBeGreaterThan(1)
  const away: Evening = {
    ...lamb.evening,
    kitchens: [...lamb.evening.kitchens, { id: 'away', name: 'Kim’s', toTable: 'PT20M', kit: [] }],
    cooks: lamb.evening.cooks.map((cook) =>
      cook.id === kim
        ? {
            ...cook,
            presence: [
              { kitchen: 'away', from: { day: 0, time: '09:00' }, to: { day: 0, time: '11:00' } },
              { kitchen: lamb.evening.host, from: { day: 0, time: '12:00' }, to: { day: 0, time: '23:00' } },
            ],
          }
        : cook,
    ),
  }
  const leave = entriesOf(away, null, { ...WHOSE, cook: kim }).at(-1)
  expect(leave?.title).toMatch(/^Leave for /)
  expect((leave?.to ?? 0) - (leave?.from ?? 0)).toBe(20 * 60_000)
  expect(leave?.notes).toBe('To be there at 12:00.')
})

test('CA3 what is bought fresh is bought on its day, as an entry of the whole day that calls nobody', () => {
  const isOnTheDay = (dish: string) =>
    lamb.order.cues.every(({ step, start }) => lamb.names.step(step)?.dish !== dish || start.startsWith(lamb.evening.date))
  const own = lamb.evening.dishes.find(({ id }) => isOnTheDay(id))
  if (!own) throw new Error('no dish')
  const ingredients: Evening['ingredients'] = ['cod fillet', 'potatoes'].map((food, at) => ({
    id: `bought-${at}`,
    dish: own.id,
    order: 'a',
    food,
    amount: { n: '500', unit: 'g' },
    scales: 'yes',
    allergens: [],
    checked: 'unknown',
    contains: [],
  }))
  const days = entriesOf({ ...lamb.evening, ingredients }, lamb.order, { ...WHOSE, cook: kim }).filter(({ date }) => date)
  expect(days.map(({ date, notes }) => [date, notes.includes('cod'), notes.includes('potatoes')])).toEqual([
    ['2026-11-13', false, true],
    ['2026-11-14', true, false],
  ])
  const [event] = readBack(
    writeCalendar(
      'x',
      days.slice(1).map((entry) => eventOf(entry)),
    ),
  ).getAllSubcomponents('vevent')
  expect(event?.getFirstProperty('dtstart')?.toICALString()).toBe('DTSTART;VALUE=DATE:20261114')
  expect(event?.getAllSubcomponents('valarm')).toEqual([])
})

test('CA4 on the nights when clocks change every entry is at its own instant', () => {
  // Clocks go forward at 01:00 UTC on 29 March 2026 and back on 25 October in the UK; on 8 March and 1 November at 02:00 local in New York.
  const nights = [
    ['2026-03-28', 'Europe/London', '2026-03-29T00:30:00Z', '2026-03-29T01:30:00Z', '00:30', '02:30'],
    ['2026-10-24', 'Europe/London', '2026-10-25T00:30:00Z', '2026-10-25T01:30:00Z', '01:30', '01:30'],
    ['2026-03-07', 'America/New_York', '2026-03-08T06:30:00Z', '2026-03-08T07:30:00Z', '01:30', '03:30'],
    ['2026-10-31', 'America/New_York', '2026-11-01T05:30:00Z', '2026-11-01T06:30:00Z', '01:30', '01:30'],
  ] as const
  for (const [date, zone, from, to, fromClock, toClock] of nights) {
    const late = { ...lamb.evening, date, zone, guestsFrom: { day: 0, time: '21:00' }, sitDown: { day: 0, time: '21:30' } }
    const [event] = eventsIn(
      writeCalendar('x', [eventOf({ uid: 'u', title: 't', notes: '', from: Date.parse(from), to: Date.parse(to) })]),
    )
    if (!event) throw new Error('no event')
    expect([msOf(event.startDate), msOf(event.endDate)]).toEqual([Date.parse(from), Date.parse(to)])
    expect(event.duration.toSeconds()).toBe(3600)
    const clock = (time: ICAL.Time) =>
      new Intl.DateTimeFormat('en-GB', { hour: '2-digit', minute: '2-digit', timeZone: zone }).format(msOf(time))
    expect([date, clock(event.startDate), clock(event.endDate)]).toEqual([date, fromClock, toClock])
    const [whole] = entriesOf(late, null, { ...WHOSE, cook: null })
    // Three hours from sitting down are three hours, whatever the clock on the wall does.
    expect((whole?.to ?? 0) - (whole?.from ?? 0)).toBe(3.5 * 3_600_000)
  }
})

test('CA5 nothing of guests or of what is kept from whom is in it', () => {
  const [first, second] = lamb.evening.dishes
  if (!first || !second) throw new Error('no dishes')
  const guarded: Evening = {
    ...lamb.evening,
    guests: [
      {
        id: 'g1',
        name: 'Zephyrine',
        reply: 'yes',
        child: false,
        portion: 1,
        needs: [{ need: 'sesame', grade: 'severe' }],
        drinks: 'none',
        drives: false,
        words: 'a secret word',
      },
    ],
    dishes: lamb.evening.dishes.map((dish) =>
      dish.id === second.id
        ? { ...dish, name: 'Sesame-free one', variant: { of: first.id, fork: lamb.evening.steps[0]?.id ?? '', portions: 1 } }
        : dish,
    ),
    steps: lamb.evening.steps.map((step) =>
      step.dish === second.id
        ? { ...step, does: 'Cover the plate without sesame', guard: { for: 'sesame', does: 'cover' } }
        : step,
    ),
  }
  for (const { id } of lamb.evening.cooks) {
    const text = writeCalendar(
      'x',
      entriesOf(guarded, lamb.order, { ...WHOSE, cook: id }).map((entry) => eventOf(entry)),
    )
    expect(text).toContain('Keep a plate apart')
    expect(text).not.toMatch(/Zephyrine|sesame|secret word/i)
  }
})

/** What text may be made of to get out of its place: the format's own signs, line ends of every kind, several octets a letter. */
const hostile = fc.oneof(
  fc.string({ unit: 'binary', maxLength: 40 }),
  fc.string({ unit: 'grapheme', maxLength: 60 }),
  fc
    .array(
      fc.constantFrom(
        '\r\n',
        '\n',
        '\r',
        '\u2028',
        '\u0085',
        '\0',
        '\t',
        ' ',
        ';',
        ',',
        ':',
        '\\',
        '\\n',
        '"',
        'BEGIN:VEVENT',
        'END:VCALENDAR',
        'ATTENDEE:mailto:x@example.test',
        '<script>',
        '👩‍🍳',
        'é',
        '\ud800',
        'a'.repeat(73),
      ),
      { maxLength: 8 },
    )
    .map((parts) => parts.join('')),
)

/** What becomes of a text: its characters, but for those that no line may hold. Lone halves of a pair are not text. */
const asLine = (text: string): string => Buffer.from(cleanText(text, false)).toString()
const asLines = (text: string): string =>
  text
    .replace(/\r\n?|[\u2028\u2029\u0085]/g, '\n')
    .split('\n')
    .map(asLine)
    .join('\n')

test('CA6 10,000 hostile strings come back as the text they were, in an entry that is still one, in lines of at most 75 octets', () => {
  const many = fc.array(hostile, { minLength: 18, maxLength: 18 })
  let seen = 0
  fc.assert(
    fc.property(hostile, hostile, many, (name, title, all) => {
      seen += 2 + all.length
      const notes = all.join(' | ')
      const event = eventOf({ uid: 'one', title, notes, from: Date.UTC(2026, 5, 1), to: Date.UTC(2026, 5, 1, 1) })
      const text = writeCalendar(name, [event])
      const bytes = Buffer.from(text, 'utf8')
      for (const line of bytes.toString('latin1').split('\r\n')) expect(line.length).toBeLessThanOrEqual(75)
      // biome-ignore lint/suspicious/noControlCharactersInRegex: that there is none is what is looked at
      expect(text.replaceAll('\r\n', '')).not.toMatch(/[\x00-\x1f\x7f-\x9f\u2028\u2029]/)
      const calendar = readBack(bytes.toString('utf8'))
      for (const property of ['x-wr-calname', 'name'] as const) expect(calendarName(calendar, property)).toBe(asLine(name))
      expect(calendar.getAllSubcomponents().map(({ name: kind }) => kind)).toEqual(['vevent'])
      const read = calendar.getFirstSubcomponent('vevent')
      expect(read?.getAllProperties().map(({ name: property }) => property)).toEqual(
        PROPERTIES.filter((each) => notes || each !== 'description'),
      )
      expect(read?.getFirstPropertyValue('uid')).toBe('one')
      expect(read?.getFirstPropertyValue('summary')).toBe(asLine(title) || 'An entry')
      expect(read?.getFirstPropertyValue('description') ?? '').toBe(asLines(notes))
      const alarm = read?.getFirstSubcomponent('valarm')
      expect(alarm?.getFirstPropertyValue('description')).toBe(read?.getFirstPropertyValue('summary'))
    }),
    { numRuns: 500 },
  )
  expect(seen).toBeGreaterThanOrEqual(10_000)
})

const PROPERTIES = [
  'uid',
  'dtstamp',
  'last-modified',
  'sequence',
  'dtstart',
  'dtend',
  'summary',
  'description',
  'status',
  'class',
]

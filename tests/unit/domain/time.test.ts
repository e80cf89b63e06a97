import fc from 'fast-check'
import { Temporal } from 'temporal-polyfill'
import { describe, expect, test, vi } from 'vitest'
import { durationOf, isDuration, secondsOf, ticksDown, ticksUp } from '#lib/domain/duration.ts'
import {
  dateAt,
  dateOfDay,
  daysUntil,
  epochMsOf,
  instantOfMs,
  isDate,
  msOfInstant,
  tickOf,
  tickOfMs,
  wallTimeOfMs,
  wallTimeOfTick,
} from '#lib/domain/time.ts'
import { isZone, offsetAt } from '#lib/domain/zone.ts'

const minutesBetween = (clock: { date: string; zone: string }, from: [number, string], to: [number, string]): number =>
  (epochMsOf(clock, { day: to[0], time: to[1] }) - epochMsOf(clock, { day: from[0], time: from[1] })) / 60_000

describe('nights when clocks change', () => {
  // Directive 2000/84/EC: summer time in the Union begins and ends at 01:00 UTC on the last Sundays of March and October.
  test('T1 the night clocks go back is an hour longer than it looks', () => {
    const night = { date: '2026-10-24', zone: 'Europe/Berlin' }
    expect(minutesBetween(night, [0, '20:00'], [1, '04:00'])).toBe(9 * 60)
  })
  test('T1 the night clocks go forward is an hour shorter than it looks', () => {
    const night = { date: '2026-03-28', zone: 'Europe/Berlin' }
    expect(minutesBetween(night, [0, '20:00'], [1, '04:00'])).toBe(7 * 60)
  })
  test('T1 ticks are elapsed time: a window across the change is as long as the night really is', () => {
    const night = { date: '2026-10-24', zone: 'Europe/Berlin' }
    expect(tickOf(night, { day: 1, time: '04:00' }, 'down') - tickOf(night, { day: 0, time: '20:00' }, 'up')).toBe(9 * 120)
  })
  // RFC 5545 3.3.5: a local time that occurs twice is its first occurrence; one that does not occur uses the offset before the gap.
  test('T2 a time that happens twice is the first one', () => {
    const night = { date: '2026-10-24', zone: 'Europe/Berlin' }
    expect(instantOfMs(night, epochMsOf(night, { day: 1, time: '02:30' }))).toBe('2026-10-25T02:30:00+02:00')
  })
  test('T2 a time that never happens moves on by the gap', () => {
    const night = { date: '2026-03-28', zone: 'Europe/Berlin' }
    expect(instantOfMs(night, epochMsOf(night, { day: 1, time: '02:30' }))).toBe('2026-03-29T03:30:00+02:00')
  })
})

/** Every zone, and moments of the years in which they are used: also beside the changes of clocks and offsets with seconds. */
const zones = Intl.supportedValuesOf('timeZone')
const instant = fc.oneof(
  fc.integer({ min: -5_000_000_000, max: 4_000_000_000 }).map((second) => second * 1000),
  fc.integer({ min: 0, max: 70 * 365 * 96 }).map((quarter) => quarter * 900_000),
)
const moment = fc.record({ zone: fc.constantFrom(...zones), ms: instant, more: fc.integer({ min: -1, max: 999 }) })

describe('as Temporal has it', () => {
  test('T1 an instant is written, and read again, in every zone', () => {
    fc.assert(
      fc.property(moment, ({ zone, ms, more }) => {
        const wanted = Temporal.Instant.fromEpochMilliseconds(ms + more).toZonedDateTimeISO(zone)
        const written = wanted.toString({ timeZoneName: 'never', smallestUnit: 'second' })
        const clock = { date: '2026-11-14', zone }
        expect(instantOfMs(clock, ms + more)).toBe(written)
        expect(instantOfMs(clock, ms + more)).toBe(written)
        expect(msOfInstant(written)).toBe(Temporal.Instant.from(written).epochMilliseconds)
        expect(wallTimeOfMs(clock, ms + more)).toEqual({
          day: Temporal.PlainDate.from(clock.date).until(wanted.toPlainDate(), { largestUnit: 'days' }).days,
          time: wanted.toPlainTime().toString({ smallestUnit: 'minute' }),
        })
        expect(dateAt(zone, ms + more, 40)).toBe(wanted.toPlainDate().add({ days: 40 }).toString())
      }),
      { numRuns: 800 },
    )
  })
  test('T2 a wall-clock time is the same instant, also what happens twice or never', () => {
    // The hours about every change of clocks of 1990 to 2040, in some zones of each run.
    let changes = 0
    fc.assert(
      fc.property(fc.constantFrom(...zones), fc.integer({ min: 1990, max: 2039 }), (zone, year) => {
        const from = Temporal.PlainDateTime.from(`${year}-01-01T00:00`).toZonedDateTime(zone)
        const change = from.getTimeZoneTransition('next')
        if (!change) return
        changes += 1
        for (let minutes = -1500; minutes <= 1500; minutes += 30) {
          const wall = change.toPlainDateTime().add({ minutes })
          const clock = { date: wall.toPlainDate().toString(), zone }
          const time = wall.toPlainTime().toString({ smallestUnit: 'minute' })
          const wanted = wall.with({ second: 0 }).toZonedDateTime(zone).epochMilliseconds
          expect(epochMsOf(clock, { day: 0, time }), `${clock.date} ${time} ${zone}`).toBe(wanted)
        }
      }),
      { numRuns: 40 },
    )
    expect(changes).toBeGreaterThan(0)
  })
  test('T3 days are counted over four hundred years', () => {
    const first = Temporal.PlainDate.from('1799-12-31')
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 400 * 366 }), (day) => {
        const wanted = first.add({ days: day }).toString()
        expect(dateOfDay({ date: '1799-12-31', zone: 'UTC' }, day)).toBe(wanted)
        expect(daysUntil({ date: wanted, zone: 'UTC' }, '1799-12-31')).toBe(day)
      }),
      { numRuns: 2000 },
    )
  })
})

test.each(['2026-11-14T19:45:00', '2026-02-30T00:00:00Z', '19:45', '2026-11-14', ''])('T1 %j is no instant', (text) => {
  expect(() => msOfInstant(text)).toThrow(RangeError)
})

describe('midnight', () => {
  test('T3 a dinner past midnight keeps its order and lengths', () => {
    const dinner = { date: '2026-12-31', zone: 'Europe/Madrid' }
    expect(minutesBetween(dinner, [0, '21:30'], [1, '00:45'])).toBe(195)
    expect(wallTimeOfTick(dinner, tickOf(dinner, { day: 1, time: '00:45' }, 'up'))).toEqual({ day: 1, time: '00:45' })
  })
  // IANA tz database, Africa/Cairo: since 2023 summer time begins on the last Friday of April at 00:00, which becomes 01:00.
  test('T3 a zone whose midnight does not exist', () => {
    const dinner = { date: '2026-04-23', zone: 'Africa/Cairo' }
    expect(instantOfMs(dinner, epochMsOf(dinner, { day: 1, time: '00:00' }))).toBe('2026-04-24T01:00:00+03:00')
    expect(minutesBetween(dinner, [0, '23:00'], [1, '01:30'])).toBe(90)
    const dayAfter = { date: '2026-05-01', zone: 'Africa/Cairo' }
    expect(tickOf(dayAfter, { day: -7, time: '01:00' }, 'up')).toBe(0)
  })
})

describe('durations', () => {
  test.each([
    ['PT1H30M', 5400],
    ['P2D', 172_800],
    ['P1DT23H56M', 172_560],
    ['PT0S', 0],
    ['P0D', 0],
    ['PT90S', 90],
  ])('T4 %s is %d s (ISO 8601-1:2019, 5.5.2)', (text, seconds) => {
    expect(secondsOf(text)).toBe(seconds)
  })
  test.each(['', 'P', 'PT', 'P1M', 'P1Y', 'P1W', 'PT1.5H', '-PT1M', 'PT-1M', '1H', 'PT1H30', 'P1DT'])(
    'T4 %j is no duration',
    (text) => {
      expect(isDuration(text)).toBe(false)
    },
  )
  test('T4 plans round up to a tick and limits down', () => {
    expect([ticksUp('PT61S'), ticksDown('PT61S'), ticksUp('PT1M'), ticksDown('PT29S')]).toEqual([3, 2, 2, 0])
  })
  test('T4 windows round inward: a start up, an end down', () => {
    const dinner = { date: '2026-06-06', zone: 'Europe/London' }
    const ms = epochMsOf(dinner, { day: 0, time: '20:00' }) + 1_000
    const on = tickOf(dinner, { day: 0, time: '20:00' }, 'up')
    expect([tickOfMs(dinner, ms, 'up'), tickOfMs(dinner, ms, 'down')]).toEqual([on + 1, on])
  })
  test('T4 writing seconds and reading them back is the identity', () => {
    fc.assert(fc.property(fc.integer({ min: 0, max: 8_000_000 }), (seconds) => secondsOf(durationOf(seconds)) === seconds))
  })
})

test('T3 names of zones and dates are checked', () => {
  expect([isZone('Europe/London'), isZone('Mars/Base'), isZone('+02:00'), isZone('')]).toEqual([true, false, false, false])
  expect([isDate('2028-02-29'), isDate('2026-02-29'), isDate('2026-2-1'), isDate('tomorrow')]).toEqual([
    true,
    false,
    false,
    false,
  ])
  expect(dateAt('Pacific/Auckland', Date.UTC(2026, 10, 25, 13), 4)).toBe('2026-11-30')
  expect(daysUntil({ date: '2026-12-05', zone: 'Europe/London' }, '2026-11-25')).toBe(10)
})

// What the browser has stands in the place of DateTimeFormat, which Node's own tests go by.
test('T1 with Temporal the clocks of every zone are the same as with DateTimeFormat', async () => {
  const toZoned = vi.spyOn(Temporal.Instant.prototype, 'toZonedDateTimeISO')
  vi.stubGlobal('Temporal', Temporal)
  vi.resetModules()
  const here = await import('#lib/domain/zone.ts')
  vi.unstubAllGlobals()
  const zones = Intl.supportedValuesOf('timeZone')
  expect(zones.length).toBeGreaterThan(300)
  for (const zone of zones)
    for (const year of [1890, 1945, 1996, 2026, 2037])
      for (const month of [0, 3, 6, 9]) {
        const at = Date.UTC(year, month, 26, 1, 10, 7)
        expect([zone, at, here.offsetAt(zone, at)]).toEqual([zone, at, offsetAt(zone, at)])
      }
  expect(toZoned.mock.calls.length).toBeGreaterThan(zones.length * 20)
  for (const name of ['Europe/London', 'europe/london', 'UTC', 'Mars/Base', '+02:00', 'E', ''])
    expect([name, here.isZone(name)]).toEqual([name, isZone(name)])
})

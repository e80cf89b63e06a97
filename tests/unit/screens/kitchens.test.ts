import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { freeHours } from '#app/_cooks/free-hours.ts'
import { kitFor, kitToAdd } from '#app/_cooks/usual-kit.ts'
import { claimedText } from '#app/_words/claimed.ts'
import { DAYS, dayChoices, dayWords, readDay } from '#app/_words/day.ts'
import { kitChangeText, kitchenText, kitText } from '#app/_words/kit-piece.ts'
import { paceChoices, paceWords, readTenMinutes, tenMinutes } from '#app/_words/pace.ts'
import { hoursText, presenceFaultText, readUntil, untilText } from '#app/_words/presence.ts'
import { readClock } from '#app/_words/read-clock.ts'
import { serves } from '#lib/domain/kit-wants.ts'
import { Cook, Kit, type Use } from '#lib/domain/kitchen.ts'
import { presenceFault } from '#lib/domain/presence.ts'
import * as make from '#tests/support/evening-builders.ts'

const DATE = '2026-12-05'
const clock = { date: DATE, zone: 'Europe/London' }

test('U5 clocks are read as people write them', () => {
  const said: Record<string, string | null> = {
    '17:00': '17:00',
    '17.30': '17:30',
    '9': '09:00',
    '9:05': '09:05',
    '17h': '17:00',
    '17h30': '17:30',
    '5 pm': '17:00',
    '5:15pm': '17:15',
    '12 am': '00:00',
    '12 p.m.': '12:00',
    noon: '12:00',
    '1730': '17:30',
    '24:00': null,
    '13 pm': null,
    '0 am': null,
    '9:60': null,
    '9 o': null,
    '': null,
    '-3': null,
  }
  for (const [text, read] of Object.entries(said)) expect(readClock(text), text).toBe(read)
})

test('U5 no two days of a plan have the same words, and each is read back', () => {
  for (const date of ['2026-12-05', '2026-11-30', '2027-01-01']) {
    expect(new Set(dayChoices(date).map(([, words]) => words)).size).toBe(DAYS.length)
    for (const day of DAYS) expect(readDay(dayWords(date, day), date, -7)).toBe(day)
  }
  expect(dayWords(DATE, 0)).toBe('Saturday')
  expect(dayWords(DATE, -7)).toBe('Saturday the week before')
  expect(readDay('fri', DATE, -7)).toBe(-1)
  expect(readDay('Sat', DATE, -5)).toBe(0)
  expect(readDay('xyz', DATE, -7)).toBeNull()
})

const time = fc
  .tuple(fc.integer({ min: 0, max: 23 }), fc.integer({ min: 0, max: 59 }))
  .map(([hour, minute]) => `${String(hour).padStart(2, '0')}:${String(minute).padStart(2, '0')}`)
const moment = fc.record({ day: fc.integer({ min: -7, max: 1 }), time })

describe('hours of a cook', () => {
  test('U5 what is shown of when hours end is read as that', () => {
    fc.assert(
      fc.property(moment, moment, (from, to) => {
        const hours = { kitchen: 'home', from, to }
        fc.pre(presenceFault(clock, [hours]) === null)
        expect(readUntil(untilText(DATE, hours), DATE, from)).toEqual(to)
      }),
      { numRuns: 500 },
    )
  })

  test('U5 an early hour after an evening’s work is that night; other days are said', () => {
    const from = { day: -1, time: '17:00' }
    expect(readUntil('22', DATE, from)).toEqual({ day: -1, time: '22:00' })
    expect(readUntil('1 am', DATE, from)).toEqual({ day: 0, time: '01:00' })
    expect(readUntil('11:00 next day', DATE, from)).toEqual({ day: 0, time: '11:00' })
    expect(readUntil('11:00 on Sunday', DATE, from)).toEqual({ day: 1, time: '11:00' })
    expect(readUntil('sun 11 am', DATE, from)).toEqual({ day: 1, time: '11:00' })
    expect(readUntil('16:00', DATE, from)).toEqual({ day: -1, time: '16:00' })
    expect(readUntil('01:00', DATE, { day: 1, time: '17:00' })).toEqual({ day: 1, time: '01:00' })
    expect(readUntil('9:00 next day', DATE, { day: 1, time: '17:00' })).toBeNull()
    expect(readUntil('when it is dark', DATE, from)).toBeNull()
  })

  test('G6 backwards and overlapping hours are refused in words that say what to do; touching ones are not', () => {
    const hours = (day: number, from: string, to: string, kitchen = 'home') => ({
      kitchen,
      from: { day, time: from },
      to: { day, time: to },
    })
    const backwards = [hours(0, '09:00', '12:00'), hours(0, '17:00', '16:00')]
    const overlap = [hours(-1, '17:00', '22:00'), hours(-1, '21:00', '23:00', 'away')]
    expect(presenceFault(clock, backwards)).toEqual({ kind: 'backwards', index: 1 })
    expect(presenceFault(clock, overlap)).toEqual({ kind: 'overlap', index: 1, other: 0 })
    expect(presenceFault(clock, [hours(0, '09:00', '12:00'), hours(0, '12:00', '13:00', 'away')])).toBeNull()
    expect(presenceFaultText({ kind: 'backwards', index: 1 }, backwards, DATE)).toMatch(
      /^These hours would end .* Write a later end/,
    )
    expect(presenceFaultText({ kind: 'overlap', index: 1, other: 0 }, overlap, DATE)).toContain('Friday 17:00 to 22:00')
  })

  test('G6 more hours are offered where there are none yet, and never on top of others', () => {
    const taken: ReturnType<typeof freeHours>[] = []
    const list = () => taken.flatMap((hours) => (hours ? [hours] : []))
    for (let more = freeHours(clock, 'home', list()); more; more = freeHours(clock, 'home', list())) {
      taken.push(more)
      expect(presenceFault(clock, list())).toBeNull()
      expect(taken.length).toBeLessThan(30)
    }
    expect(taken.length).toBeGreaterThan(5)
    expect(hoursText(DATE, list()[0] ?? { from: { day: 0, time: '' }, to: { day: 0, time: '' } })).toBe('Saturday 09:00 to 12:00')
  })
})

test('U5 a pace is said in words, and what ten minutes take is read back to it', () => {
  for (let tenths = 12; tenths <= 32; tenths += 1) {
    const pace = tenths / 20
    expect(readTenMinutes(tenMinutes(pace)), tenMinutes(pace)).toBeCloseTo(pace, 9)
    expect(Cook.shape.pace.safeParse(readTenMinutes(tenMinutes(pace))).success).toBe(true)
    expect(paceChoices(pace).map(([value]) => value)).toContain(String(pace))
    expect(new Set(paceChoices(pace).map(([, words]) => words)).size).toBe(paceChoices(pace).length)
  }
  expect(paceWords(1)).toBe('as the methods say')
  expect(paceWords(1.2)).toBe('a little slower than most')
  expect(tenMinutes(1.15)).toBe('11½ min')
  for (const text of ['5', '17', '16½', '', 'fast', '-12']) expect(readTenMinutes(text), text).toBeNull()
})

test('G4 the kit that is offered for a want serves it, and is what the schema takes; so is all that can be added', () => {
  const uses: Use[] = [
    { kind: 'ring', size: 'large' },
    { kind: 'oven', shelves: 3, lowC: 260, highC: 280, preheated: true },
    { kind: 'cold', keep: 'frozen', places: 7 },
    { kind: 'worktop', places: 12 },
    { kind: 'tool', tool: 'Waffle iron', count: 2 },
  ]
  for (const use of uses) {
    const kit = Kit.parse({ ...kitFor(use), id: 'new' })
    expect(serves(kit, use), use.kind).toBe(true)
    expect(kitText(kit)).not.toBe('')
  }
  const offered = kitToAdd(make.HOME_KIT)
  for (const [words, piece] of offered) expect(Kit.safeParse({ ...piece, id: 'new' }).error, words).toBeUndefined()
  expect(offered.map(([words]) => words)).not.toContain('sink')
  expect(kitToAdd([]).map(([words]) => words)).toContain('sink')
})

test('G5 kit and what changes of it are said', () => {
  expect(kitchenText(make.HOME_KIT)).toBe(
    'One small ring, two medium rings, one large ring, oven with two shelves, fridge for four, worktop for eight and sink.',
  )
  const oven = { id: 'o', kind: 'oven', name: 'Oven', shelves: 2, maxC: 250, upPerMin: 8, downPerMin: 3 } as const
  expect(kitChangeText({ kind: 'new', is: oven })).toBe('new: oven with two shelves')
  expect(kitChangeText({ kind: 'other', was: oven, is: { ...oven, shelves: 1 } })).toBe(
    'now: oven with one shelf, before: oven with two shelves',
  )
  expect(kitChangeText({ kind: 'other', was: oven, is: { ...oven, maxC: 220 } })).toContain('up to 220°')
})

test('G8 what a cook has taken on is said: courses, dishes, and how many steps', () => {
  const evening = make.evening(make.course('main', make.dish('soup', make.step('stir', 5), make.step('blend', 5))), {
    cooks: [make.cook('kim'), make.cook('lou')],
    claims: [make.claim('soup', 'kim'), make.claim('stir', 'kim'), make.claim('main', 'lou')],
  })
  expect(claimedText(evening, 'kim')).toBe('Dish soup and one step')
  expect(claimedText(evening, 'lou')).toBe('Course main')
  expect(claimedText(evening, 'nobody')).toBe('')
})

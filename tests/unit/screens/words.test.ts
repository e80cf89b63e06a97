import fc from 'fast-check'
import { expect, test } from 'vitest'
import type { Link, OrderState } from '#app/_sync/plan.ts'
import { becauseText } from '#app/_words/because.ts'
import { careWords, keepWords, roleWords, stateWords, whereWords } from '#app/_words/care.ts'
import { chanceText, tightText, waitFreeText } from '#app/_words/chance.ts'
import { clashText, clashTitle, remedyPrice, remedyText } from '#app/_words/clash.ts'
import {
  atText,
  clockText,
  countOf,
  dateText,
  dayName,
  dayOf,
  distanceText,
  listText,
  longDate,
  mediumDate,
} from '#app/_words/clock.ts'
import { durationText, minutesText, readDuration, readSpan, spanText } from '#app/_words/duration.ts'
import { faultText } from '#app/_words/fault.ts'
import { heatText, readHeat } from '#app/_words/heat.ts'
import { kitName, useText } from '#app/_words/kit.ts'
import { closedWords, linkText, refusalText } from '#app/_words/link.ts'
import { namesOf } from '#app/_words/names.ts'
import { orderStateText } from '#app/_words/order-state.ts'
import { platesOffText } from '#app/_words/plates-off.ts'
import { fileRefusalText, refusedByField, refusedText } from '#app/_words/refused.ts'
import { shorten } from '#app/_words/shorten.ts'
import { durationOf } from '#lib/domain/duration.ts'
import { Kit, Use } from '#lib/domain/kitchen.ts'
import { Care, KeepHow, StepRole } from '#lib/domain/menu.ts'
import type { RunningOrder, Suffers } from '#lib/domain/running-order.ts'
import { type Clash, ClashKind, Reason, Remedy } from '#lib/domain/running-order.ts'
import { CommandRefusal } from '#lib/plan/wire.ts'
import { randomEvening } from '#tests/support/random-evening.ts'

const evening = randomEvening(1)
const names = namesOf(evening)
const [step, cook, course, dish] = [
  evening.steps[0]?.id ?? '',
  evening.cooks[0]?.id ?? '',
  evening.courses[0]?.id ?? '',
  evening.dishes[0]?.id ?? '',
]
const kit = evening.kitchens[0]?.kit[0]?.id ?? ''

/** The kinds that a discriminated union of the schemas knows. */
const kinds = (union: {
  readonly def: {
    readonly options: readonly { readonly shape: { readonly kind: { readonly def: { readonly values: readonly unknown[] } } } }[]
  }
}): string[] => union.def.options.map((option) => String(option.shape.kind.def.values[0]))

const tells = (text: string) => {
  expect(text.length).toBeGreaterThan(2)
  expect(text).not.toMatch(/undefined|null|NaN|\[object/)
}

test('U4 every kind of reason, clash, way out, refusal and state has words of its own', () => {
  const reasons: readonly Reason[] = [
    { kind: 'after', step },
    { kind: 'kit', kit, step },
    { kind: 'cook', cook, step },
    { kind: 'oven', kit, step },
    { kind: 'course', course },
    { kind: 'window' },
    { kind: 'presence', cook },
    { kind: 'now' },
  ]
  expect(reasons.map((reason) => reason.kind).sort()).toEqual(kinds(Reason).sort())
  for (const place of ['before', 'after', 'beside'] as const)
    for (const reason of reasons) tells(becauseText(reason, names, () => place))
  expect(new Set(reasons.map((reason) => becauseText(reason, names, () => 'after'))).size).toBe(reasons.length)

  const clashes = ClashKind.options.map(
    (kind): Clash => ({
      kind,
      steps: [step],
      dish,
      course,
      kit,
      from: '2026-11-14T20:14:00+00:00',
      to: '2026-11-14T20:40:00+00:00',
      by: 'PT26M',
      ways: [],
    }),
  )
  for (const clash of clashes) tells(clashText(clash, names))
  expect(new Set(clashes.map((clash) => clashTitle(clash, 'Europe/London'))).size).toBe(clashes.length)
  expect(clashTitle(clashes[0] as Clash, 'Europe/London')).toMatch(/^Clash at 20:14: /)

  const after = (wait: string) => ({ course, toTable: '', platesOff: '', wait }) as RunningOrder['courses'][number]
  const off = [after('PT8M'), after('PT0S'), undefined].map((next) => platesOffText(next, names))
  expect(off).toEqual([
    `Plates off, then wait 8 min for ${names.courseName(course)}`,
    `Plates off, then no wait for ${names.courseName(course)}`,
    'Plates off',
  ])

  const price = { missed: 'PT0S', said: 'Nobody notices.' }
  const remedies: readonly Remedy[] = [
    { kind: 'use-way', step, way: 1, ...price },
    { kind: 'do-ahead', step, earliest: { day: -1, time: '17:00' }, ...price },
    { kind: 'other-oven', step, kit, ...price },
    { kind: 'course-later', course, by: 'PT10M', ...price },
    { kind: 'give-to', step, cook, ...price },
    { kind: 'widen-temperature', step, way: 0, lowC: 200, highC: 230, ...price },
    { kind: 'keep-longer', dish, by: 'PT5M', ...price },
    { kind: 'wait-longer', step, after: step, by: 'PT5M', ...price },
    { kind: 'bring-cold', dish, chill: 'dish-chill', fridge: 'dish-fridge', heat: 'dish-heat', ...price },
    { kind: 'drop', dish, ...price },
  ]
  expect(remedies.map((remedy) => remedy.kind).sort()).toEqual(kinds(Remedy).sort())
  for (const remedy of remedies) tells(remedyText(remedy, names, evening))
  expect(new Set(remedies.map((remedy) => remedyText(remedy, names, evening))).size).toBe(remedies.length)

  const refusals: readonly CommandRefusal[] = [
    { kind: 'taken', by: cook },
    { kind: 'not-yours' },
    { kind: 'full' },
    { kind: 'unknown-target' },
    { kind: 'unknown-cook' },
    { kind: 'not-stored' },
    { kind: 'no-seat' },
    { kind: 'not-tonight' },
    { kind: 'too-long' },
    { kind: 'too-late' },
    { kind: 'stays' },
  ]
  expect(refusals.map((why) => why.kind).sort()).toEqual(kinds(CommandRefusal).sort())
  expect(new Set(refusals.map((why) => refusalText(why, names))).size).toBe(refusals.length)
  expect(refusalText({ kind: 'taken', by: cook }, names)).toContain(evening.cooks[0]?.name)
})

test('U4 a clash tells what it fights with and over which kit, a way out what it costs', () => {
  const [first, second] = [evening.steps.find((each) => each.dish === dish), evening.steps.find((each) => each.dish !== dish)]
  const clash: Clash = {
    kind: 'keeps',
    steps: [first?.id ?? '', second?.id ?? ''],
    dish,
    course,
    kit,
    from: '2026-11-14T20:14:00+00:00',
    to: '2026-11-14T20:40:00+00:00',
    by: 'PT26M',
    ways: [],
  }
  const fight = `It fights with “${names.stepName(second?.id ?? '')}” over ${names.kitName(kit)}.`
  expect(clashText(clash, names)).toContain(fight)
  expect(clashText({ ...clash, steps: [first?.id ?? ''] }, names)).toContain(`It is about ${names.kitName(kit)}.`)
  expect(clashText({ ...clash, steps: [first?.id ?? ''], kit: null }, names)).not.toMatch(/fights|about/)
  const lag = clashText({ ...clash, kind: 'lag', steps: [first?.id ?? '', first?.id ?? '', second?.id ?? ''] }, names)
  expect(lag).toContain('comes 26 min later after')
  expect(lag).toContain(fight)
  const way = { kind: 'drop' as const, dish, said: 'It would be missing from the table.' }
  expect(remedyPrice({ ...way, missed: 'PT0S' })).toBeNull()
  expect(remedyPrice({ ...way, missed: 'PT4M30S' })).toBe('The cooks miss 4½ min more at the table.')
})

test('U4 a chance is so many evenings in twenty, never more than reckoned, and says what it hangs on', () => {
  expect([0.96, 0.95, 0.9499, 0.5, 0.05, 0.04, 0, 0.995, 1].map(chanceText)).toEqual([
    '19 evenings in 20',
    '19 evenings in 20',
    '18 evenings in 20',
    '10 evenings in 20',
    '1 evening in 20',
    'hardly any evening',
    'hardly any evening',
    'nearly every evening',
    'nearly every evening',
  ])
  const served = {
    course,
    toTable: '2026-11-14T19:30:00+00:00',
    platesOff: '2026-11-14T19:50:00+00:00',
    wait: 'PT0S',
    onTime: 0.96,
    decidedBy: step,
    waitFreeUntil: '2026-11-14T19:38:00+00:00',
  }
  expect(waitFreeText(served, names, 'Europe/London')).toBe('Can wait until 19:38.')
  expect(waitFreeText({ ...served, waitFreeUntil: served.toTable }, names, 'Europe/London')).toBe('Cannot wait.')
  expect(waitFreeText({ ...served, waitFreeUntil: null }, names, 'Europe/London')).toBeNull()
  const beyond = (suffers: Suffers, until: string | null) =>
    waitFreeText({ ...served, waitBeyond: { suffers: [suffers], until } }, names, 'Europe/London')
  const until = '2026-11-14T19:50:00+00:00'
  const suffering = `${shorten(names.dishName(dish), 32)} suffers`
  expect(beyond({ kind: 'dish', dish }, until)).toBe(`Can wait until 19:38; then ${suffering}, and more from 19:50.`)
  const far = '2026-11-14T23:30:00+00:00'
  expect(beyond({ kind: 'dish', dish }, far)).toBe(`Can wait until 19:38; then ${suffering}.`)
  const one: Suffers = { kind: 'dish', dish }
  const cannot = { ...served, waitFreeUntil: served.toTable, waitBeyond: { suffers: [one], until } }
  expect(waitFreeText(cannot, names, 'Europe/London')).toBe(`Cannot wait: ${suffering}, and more from 19:50.`)
  expect(beyond({ kind: 'cook', cook: 'nobody' }, null)).toBe('Can wait until 19:38; then somebody has to go.')
  expect(beyond({ kind: 'step', step }, null)).toBe(`Can wait until 19:38; then “${names.stepName(step)}” is out of time.`)
  const unsure = { ...served, onTime: 0.66 }
  expect(tightText([served, unsure, { ...served, onTime: null }], names)).toBe(
    `${names.courseName(course)} is on time 13 evenings in 20. It hangs on “${names.stepName(step)}”.`,
  )
  expect([tightText([served], names), tightText([{ ...served, onTime: 0.8 }], names), tightText([], names)]).toEqual([
    null,
    null,
    null,
  ])
})

test('U75 the link counts the taps that the server has not answered, and is not saved before it has', () => {
  expect(linkText({ kind: 'saved' }, 1)).toBe('Sending one tap…')
  expect(linkText({ kind: 'saving' }, 2)).toBe('Sending two taps…')
  expect(linkText({ kind: 'offline', unsent: false }, 14)).toBe('Not connected, 14 taps kept on this device')
  expect(linkText({ kind: 'offline', unsent: true }, 1)).toBe('Not connected, changes and one tap kept on this device')
})

test('U4 the link says "Saved" only when it is, and every end of it says what to do', () => {
  const links: readonly Link[] = [
    { kind: 'connecting' },
    { kind: 'saved' },
    { kind: 'saving' },
    { kind: 'offline', unsent: true },
    { kind: 'offline', unsent: false },
    ...(['sign-in', 'removed', 'gone', 'other-epoch', 'refused', 'reload'] as const).map(
      (why): Link => ({ kind: 'closed', why }),
    ),
  ]
  expect(new Set(links.map((link) => linkText(link))).size).toBe(links.length)
  for (const link of links) expect(/^Saved$/.test(linkText(link))).toBe(link.kind === 'saved')
  for (const { says, todo } of Object.values(closedWords)) {
    tells(says)
    tells(todo)
  }
})

test('U4 an order that is not of the plan on the screen says so', () => {
  const order = { cues: [] } as unknown as Extract<OrderState, { kind: 'current' }>['order']
  expect(orderStateText({ kind: 'current', order })).toBeNull()
  expect(orderStateText({ kind: 'planning', order })).toMatch(/again/)
  expect(orderStateText({ kind: 'planning', order: null })).not.toMatch(/again/)
  expect(orderStateText({ kind: 'failed', order, why: 'it took too long.' })).toMatch(/it took too long/)
})

test('U4 every word of the schemas that a sentence can choose has its words', () => {
  for (const care of Care.options) tells(careWords[care])
  for (const role of StepRole.options) tells(roleWords[role])
  for (const how of KeepHow.options) tells(keepWords[how])
  expect(Object.keys(whereWords)).toHaveLength(3)
  expect(Object.keys(stateWords)).toHaveLength(3)
  const uses: readonly Use[] = [
    { kind: 'ring', size: 'large' },
    { kind: 'oven', shelves: 2, lowC: 190, highC: 200, preheated: true },
    { kind: 'cold', keep: 'frozen', places: 1 },
    { kind: 'worktop', places: 6 },
    { kind: 'tool', tool: 'blender', count: 1 },
  ]
  expect(uses.map((use) => use.kind).sort()).toEqual(kinds(Use).sort())
  expect(uses.map(useText)).toEqual([
    'a large ring',
    'the oven at 190 to 200°, two shelves, already hot',
    'one place in the freezer',
    'six places on the worktop',
    'the blender',
  ])
  const all: readonly Kit[] = [
    { id: 'r', kind: 'ring', size: 'small', count: 1 },
    { id: 'o', kind: 'oven', name: 'Oven', shelves: 2, maxC: 250, upPerMin: 8, downPerMin: 3 },
    { id: 'c', kind: 'cold', keep: 'cold', places: 4 },
    { id: 'w', kind: 'worktop', places: 4 },
    { id: 't', kind: 'tool', tool: 'sink', count: 1 },
  ]
  expect(all.map((item) => item.kind).sort()).toEqual(kinds(Kit).sort())
  expect(all.map(kitName)).toEqual(['the small ring', 'the oven', 'the fridge', 'the worktop', 'the sink'])
})

test('U5 a time that is written is read back as it was', () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 2 * 14_400 }), (halves) => {
      const duration = durationOf(halves * 30)
      const read = readDuration(durationText(duration))
      // Beyond an hour and a half, half minutes are not said.
      const said = halves < 180 ? halves : Math.ceil(halves / 2) * 2
      expect(read).toBe(durationOf(said * 30))
    }),
  )
})

test('U5 times are read as people write them, and nothing else is', () => {
  const cases: readonly (readonly [string, string | null])[] = [
    ['25', 'PT25M'],
    ['25 min', 'PT25M'],
    ['1 h 30', 'PT1H30M'],
    ['1h30', 'PT1H30M'],
    ['1:30', 'PT1H30M'],
    ['1.5 h', 'PT1H30M'],
    ['2 days', 'P2D'],
    ['7½ min', 'PT7M30S'],
    ['90 minutes', 'PT1H30M'],
    ['', null],
    ['soon', null],
    ['-5', null],
    ['400 days', null],
  ]
  for (const [text, duration] of cases) expect(readDuration(text), text).toBe(duration)
  expect(readSpan('55 to 70')).toEqual(['PT55M', 'PT1H10M'])
  expect(readSpan('1 to 2 h')).toEqual(['PT1H', 'PT2H'])
  expect(readSpan('20–35 min')).toEqual(['PT20M', 'PT35M'])
  expect(readSpan('70 to 55')).toBeNull()
  expect(spanText('PT20M', 'PT35M')).toBe('20 to 35 min')
  expect(minutesText(0.5)).toBe('½ min')
})

test('U5 temperatures are read as people write them', () => {
  expect(readHeat('190 to 200°')).toEqual([190, 200])
  expect(readHeat('200-190')).toBeNull()
  expect(readHeat('180 °C')).toEqual([180, 180])
  expect(readHeat('hot')).toBeNull()
  expect(heatText(180, 180)).toBe('180°')
  fc.assert(
    fc.property(fc.integer({ min: -40, max: 500 }), fc.integer({ min: 0, max: 100 }), (low, more) => {
      const high = Math.min(500, low + more)
      expect(readHeat(heatText(low, high))).toEqual([low, high])
    }),
  )
})

test('U5 clocks and days are those of the evening’s zone', () => {
  const clock = { date: '2027-03-28', zone: 'Europe/London' }
  expect(clockText('2027-03-28T19:30:00+01:00', clock.zone)).toBe('19:30')
  expect(dayOf(clock, '2027-03-27T23:59:00+00:00')).toBe(-1)
  expect(dayOf(clock, '2027-03-29T00:30:00+01:00')).toBe(1)
  expect(longDate('2026-12-05')).toBe('Saturday 5 December')
  expect(atText('2026-12-05', { day: -2, time: '17:00' })).toBe('Thursday 17:00')
  expect([0, 1, -1, 2, 20, -9].map(distanceText)).toEqual([
    'Today',
    'Tomorrow',
    'Yesterday',
    'In two days',
    'In three weeks',
    'Nine days ago',
  ])
  expect(listText(['Kim', 'Lou', 'Noor'])).toBe('Kim, Lou and Noor')
  expect([countOf(1, 'dish', 'dishes'), countOf(11, 'dish', 'dishes')]).toEqual(['one dish', 'eleven dishes'])
})

test('U4 a refused field is named, with what is wrong with it', () => {
  expect(refusedText({ path: 'sitDown', kind: 'shape', why: 'must be HH:MM' })).toBe('The time to sit down: it must be HH:MM.')
  expect(refusedText({ path: 'dishes[2].course', kind: 'unknown-id', why: 'no course has the id "x"' })).toBe(
    '“dishes[2].course”: no course has the id "x".',
  )
  expect(fileRefusalText({ path: 'cooks', kind: 'shape', why: 'Invalid input: expected array, received undefined' })).toBe(
    'cooks: is missing',
  )
  expect(fileRefusalText({ path: 'covers', kind: 'shape', why: 'Invalid input: expected int, received string' })).toBe(
    'covers: must be a whole number',
  )
  expect(fileRefusalText({ path: 'covers', kind: 'shape', why: 'Too small: expected number to be >=1' })).toBe(
    'covers: must be at least 1',
  )
  expect(Object.keys(refusedByField([{ path: 'name', kind: 'shape', why: 'must not be empty' }]))).toEqual(['name'])
  tells(faultText({ kind: 'unknown-entry', root: 'steps', id: 'a' }))
  tells(faultText({ kind: 'id-taken', id: 'a' }))
  expect(faultText({ kind: 'refused', refusals: [{ path: 'covers', kind: 'shape', why: 'must be a number' }] })).toContain(
    'number of people',
  )
})

test('U4 a short form of a step is never longer than asked and never empty', () => {
  expect(shorten('Peel and dice the celeriac', 40)).toBe('Peel and dice the celeriac')
  expect(shorten('Bake the cases blind, weights out for the last five minutes', 30)).toBe('Bake the cases blind')
  fc.assert(
    fc.property(fc.string({ minLength: 1, maxLength: 200 }), fc.integer({ min: 6, max: 60 }), (text, most) => {
      const short = shorten(text, most)
      expect(short.length).toBeLessThanOrEqual(most)
    }),
  )
})

test('U5 clocks and dates are those of DateTimeFormat in British English, day after day and in all kinds of zones', () => {
  const format = (options: Intl.DateTimeFormatOptions) => new Intl.DateTimeFormat('en-GB', options)
  const named = { day: 'numeric', month: 'long', timeZone: 'UTC' } as const
  const [long, medium, weekday] = [
    format({ ...named, weekday: 'long' }),
    format({ ...named, weekday: 'short' }),
    format({ weekday: 'long', timeZone: 'UTC' }),
  ]
  const days = Array.from({ length: 387 }, (_, day) => Date.UTC(2027, 11, 20, 12) + day * 86_400_000)
  const dateOf = (at: number) => new Date(at).toISOString().slice(0, 10)
  expect(days.map((at) => longDate(dateOf(at)))).toEqual(days.map((at) => long.format(at).replace(',', '')))
  expect(days.map((at) => mediumDate(dateOf(at)))).toEqual(days.map((at) => medium.format(at).replace(',', '')))
  expect(days.map((at) => dayName(dateOf(at), 3))).toEqual(days.map((at) => weekday.format(at + 3 * 86_400_000)))
  const moments = Array.from({ length: 1100 }, (_, at) => Date.UTC(2026, 2, 20) + at * 31_234_567)
  for (const timeZone of [
    'Europe/London',
    'Asia/Kathmandu',
    'Pacific/Chatham',
    'America/St_Johns',
    'Pacific/Kiritimati',
    'UTC',
  ]) {
    const clock = format({ hour: '2-digit', minute: '2-digit', hourCycle: 'h23', timeZone })
    const numbers = format({ year: 'numeric', month: '2-digit', day: '2-digit', timeZone })
    expect(moments.map((at) => clockText(at, timeZone))).toEqual(moments.map((at) => clock.format(at)))
    expect(moments.map((at) => dateText(at, timeZone))).toEqual(
      moments.map((at) => numbers.format(at).split('/').reverse().join('-')),
    )
  }
})

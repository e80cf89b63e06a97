import { expect, test } from 'vitest'
import { courseText, eatenIn, momentOf, notBeforeText } from '#app/_menu/course-sentence.ts'
import { menuRows } from '#app/_menu/rows.ts'
import { copiedText } from '#app/_words/copied.ts'
import { drinkText, readNumber } from '#app/_words/drink.ts'
import { needsText } from '#app/_words/need.ts'
import { spanFromUsual } from '#lib/domain/usual-span.ts'
import { cook, course, dish, dishWith, evening, notAfter, notBefore, oven, ring, step } from '#tests/support/evening-builders.ts'
import { planned } from './planned.ts'

const menu = evening(
  { cooks: [cook('kim', ['home -1 16:00 -1 22:00', 'home 12:00 23:30'])] },
  course(
    'starter',
    dish('soup', step('soup-boil', 20, ring('medium'), notBefore('-1 17:00'), notAfter('-1 20:00')), step('soup-fill', 6)),
  ),
  course(
    'main',
    dish('roast', dishWith({ standIn: 'pie' }), step('roast-roast', 60, oven(180, 190)), step('roast-carve', 14)),
    dish('pie', dishWith({ state: 'spare' }), step('pie-bake', 30, oven(200, 210))),
    dish('salad'),
  ),
)

test('Y8 a row says when work begins, the kit, the state, and the minutes; a course their sum', () => {
  const { order } = planned(menu)
  const rows = menuRows(menu, order, null)
  const row = (of: string, id: string) => rows.courses.get(of)?.rows.find((each) => each.dish.id === id)
  expect(row('starter', 'soup')?.about).toMatchObject({ when: 'begun Friday', kit: 'a medium ring', state: '' })
  expect(row('main', 'roast')?.about).toMatchObject({
    kit: 'oven 180 to 190°, one shelf',
    state: expect.stringMatching(/^or .*pie in its place$/),
  })
  expect(row('main', 'roast')?.about.when).toMatch(/^from \d\d:\d\d$/)
  expect(row('main', 'pie')?.about.state).toMatch(/^kept as a spare, stands in for .*roast$/)
  expect(row('main', 'salad')?.about).toMatchObject({ when: 'no method yet', kit: '', steps: 'write its method' })
  const minutes = rows.courses.get('main')?.rows.map((each) => each.minutes ?? 0) ?? []
  expect(rows.courses.get('main')?.minutes).toBe(minutes.reduce((sum, each) => sum + each, 0))
  expect(rows.minutes).toBe([...rows.courses.values()].reduce((sum, each) => sum + (each.minutes ?? 0), 0))
  expect(rows.minutes).toBeGreaterThan(0)
})

test('Y8 without a running order nothing is said of minutes and of when', () => {
  const rows = menuRows(menu, null, null)
  expect(rows.minutes).toBeNull()
  expect([...rows.courses.values()].flatMap((each) => each.rows.map((row) => row.minutes))).toEqual([null, null, null, null])
  expect(rows.courses.get('main')?.rows[0]?.about.when).toBe('two steps')
})

test('Y8 every warning stands once, under its course', () => {
  const { order } = planned(menu)
  const rows = menuRows(menu, order, [{ need: 'vegetarian', grade: 'avoids', guests: 2 }])
  const says = [...rows.courses.values()].flatMap((each, at) => each.warnings.map((words) => `${at} ${words.says}`))
  expect(says.length).toBe(rows.warnings)
  expect(new Set(says).size).toBe(says.length)
  expect(rows.courses.get('starter')?.warnings[0]?.says).toMatch(/confirmed for two guests \(vegetarian\)/)
  expect(menuRows(menu, order, null).warnings).toBeLessThan(rows.warnings)
})

test('Y8 a course, a drink and needs are said in words', () => {
  const [first] = menu.courses
  if (!first) throw new Error('no course')
  expect(courseText({ ...first, service: 'plated', wait: { ideal: ['PT4M', 'PT12M'], most: 'PT15M' } }, menu.date)).toMatch(
    /^Plated, eaten in \d+ min, waited for 15 min at most$/,
  )
  expect(courseText({ ...first, welcome: true, notBefore: { day: 0, time: '21:00' } }, menu.date)).toMatch(
    /^A welcome before sit-down, .*not before 21:00$/,
  )
  const drink = {
    id: 'd',
    course: 'starter',
    order: 'a',
    name: 'Perry',
    role: 'with',
    mlEach: 120,
    abv: 5.5,
    servedC: 8,
  } as const
  expect(drinkText(drink)).toEqual({ name: 'Perry, 12\u00a0cl', about: 'with alcohol, 5.5%, at 8°' })
  // A drink "without" that has some after all says so.
  expect(drinkText({ ...drink, role: 'without', abv: 0.5 }).about).toBe('without, but for 0.5%, at 8°')
  expect(['12,5 %', '10 cl', '-4°', '8', 'cold', '1 or 2'].map(readNumber)).toEqual([12.5, 10, -4, 8, null, null])
  expect(
    needsText([
      { need: 'vegan', grade: 'avoids', guests: 2 },
      { need: 'nuts', grade: 'severe', guests: 1 },
    ]),
  ).toBe('two guests (vegan) and one guest (severe nuts allergy)')
  expect(copiedText('Leek tart', ['oven'])).toBe('Copied Leek tart. Any oven will do for it.')
})

test('Y9 another usual length suggests least and most anew, unless somebody wrote them', () => {
  expect(eatenIn(spanFromUsual(25 * 60), 'PT40M')).toEqual(spanFromUsual(40 * 60))
  const own = { least: 'PT10M', likely: 'PT25M', most: 'PT30M' }
  expect(eatenIn(own, 'PT28M')).toEqual({ ...own, likely: 'PT28M' })
  expect(eatenIn(own, 'PT50M')).toEqual({ least: 'PT10M', likely: 'PT50M', most: 'PT50M' })
  expect(eatenIn(own, 'PT5M')).toEqual({ least: 'PT5M', likely: 'PT5M', most: 'PT30M' })
})

test('Y9 a clock time of the small hours is the next day’s for a dinner, and today’s for a lunch', () => {
  expect(momentOf('00:30', { day: 0, time: '19:30' })).toEqual({ day: 1, time: '00:30' })
  expect(momentOf('21:00', { day: 0, time: '19:30' })).toEqual({ day: 0, time: '21:00' })
  const dinner = { date: '2026-11-14', sitDown: { day: 0, time: '19:30' } }
  expect(notBeforeText({ day: 1, time: '00:30' }, dinner)).toBe('00:30')
  expect(notBeforeText({ day: 0, time: '00:30' }, dinner)).toBe('00:30')
  expect(notBeforeText({ day: 1, time: '12:00' }, dinner)).toBe('Sunday 12:00')
  expect(momentOf('05:00', { day: 0, time: '11:00' })).toEqual({ day: 0, time: '05:00' })
})

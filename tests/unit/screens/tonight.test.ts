import { expect, test } from 'vitest'
import { namesOf } from '#app/_words/names.ts'
import { alarmText, alarmToldText, guardHead, guardText } from '#app/_words/night-alarm.ts'
import { changesText, muchText } from '#app/_words/night-change.ts'
import { daysText, inText, lateText, wholeMinutes } from '#app/_words/night-time.ts'
import { toldText } from '#app/_words/night-told.ts'
import { beginWords, doneWords, verbOf } from '#app/_words/night-verb.ts'
import { overdueText, whereText } from '#app/_words/night-where.ts'
import type { Task } from '#lib/night/board.ts'
import { Said } from '#lib/plan/say.ts'
import { chores, cook, course, dish, dishWith, evening, oven, step } from '#tests/support/evening-builders.ts'

const AT = Date.parse('2026-12-05T19:00:00Z')
const MIN = 60_000

const dinner = evening(
  {
    zone: 'UTC',
    cooks: [cook('kim', ['home 12:00 23:30'], { name: 'Kim' }), cook('lou', ['home 12:00 23:30'], { name: 'Lou' })],
  },
  course('main', dish('roast', dishWith({ name: 'Roast potatoes' }), step('potatoes', 60, oven(190, 200)))),
  chores(step('lay', 15)),
)
const names = namesOf(dinner)
const ovenId = dinner.kitchens[0]?.kit.find(({ kind }) => kind === 'oven')?.id ?? ''

const task = (more: Partial<Task>): Task => ({
  step: 'potatoes',
  batch: 0,
  batches: 1,
  way: 0,
  dish: 'roast',
  course: 'main',
  does: 'Roast the potatoes',
  role: 'make',
  care: 'leave',
  where: 'kitchen',
  kitchen: dinner.host,
  kit: [{ id: ovenId, unit: 0 }],
  oven: { kit: ovenId, lowC: 190, highC: 200, setC: 195 },
  isBegun: false,
  start: AT,
  end: AT + 60 * MIN,
  touch: null,
  overdue: null,
  cooks: ['kim'],
  extraMinutes: 0,
  sign: null,
  coreC: null,
  guard: null,
  ...more,
})
const touch = (what: 'in' | 'out' | number, does: string | null = null): Task['touch'] => ({ what, at: AT, does })

test('U51 a step is one line that is read from afar; what it leaves out of the step’s words is said beside it', () => {
  const long = 'Whisk the eggs with the cream and the mustard, then stir in the leeks until they are all covered'
  const said = verbOf(task({ does: long, touch: null, care: 'hands-on' }), names)
  expect(said.line.length).toBeLessThanOrEqual(34)
  expect(said).toEqual({ line: 'Whisk eggs with cream and mustard', rest: `${long}.` })
  expect(verbOf(task({ touch: touch('in') }), names)).toEqual({ line: 'Roast the potatoes', rest: null })
  expect(verbOf(task({ touch: touch('out') }), names).line).toBe('Take the potatoes out')
  expect(verbOf(task({ touch: touch(1, 'turn') }), names).line).toBe('Turn the potatoes')
  expect(verbOf(task({ does: 'Fry the fritters', kit: [], batch: 1, batches: 3 }), names).line).toBe('Fry the fritters (2 of 3)')
  expect(verbOf(task({ does: '' }), names).line).toBe('A step without words')
})

test('U51 the main tap says what has happened, where it happened', () => {
  expect(doneWords(task({ touch: touch('in') }), names)).toBe('It is in')
  expect(doneWords(task({ touch: touch('out') }), names)).toBe('It is out')
  expect(doneWords(task({ touch: touch('out'), kit: [] }), names)).toBe('Ready')
  expect(doneWords(task({ touch: null }), names)).toBe('Done')
  expect([beginWords(task({})), doneWords(task({ role: 'carry', touch: null }), names)]).toEqual(['I’ve got it', 'Arrived'])
  expect(beginWords(task({ role: 'carry', touch: null }))).toBe('I have left')
})

test('U51 where and until when, without what is at hand anyway', () => {
  expect(whereText(task({ touch: touch('in'), cooks: ['kim', 'lou'] }), 'kim', dinner.host, names, 'UTC')).toBe(
    `In ${names.kitName(ovenId)} at 195°, with Lou. Then leave it until 20:00.`,
  )
  expect(whereText(task({ kit: [], oven: null, isBegun: true }), 'kim', dinner.host, names, 'UTC')).toBe('Until 20:00.')
  expect(overdueText({ what: 'end', since: AT - 6 * MIN, minutes: 6 }, 'UTC')).toBe('Should have been done 6 min ago, at 18:54.')
})

test('U52 how the next course stands is said in words, and late with what it is because of', () => {
  expect([inText(0), inText(8), inText(95), inText(-3)]).toEqual(['now', 'in 8 min', 'in 1 h 35', '3 min ago'])
  expect([wholeMinutes(0, 119_000), wholeMinutes(119_000, 0)]).toEqual([1, -1])
  expect([daysText(1), daysText(5)]).toEqual(['tomorrow', 'in 5 days'])
  expect(lateText(0, null, names)).toBe('on time')
  expect(lateText(6, null, names)).toBe('6 late')
  const potatoes = namesOf({ ...dinner, steps: dinner.steps.map((one) => ({ ...one, does: 'Roast the potatoes' })) })
  expect(lateText(6, 'potatoes', potatoes)).toBe('6 late, because of the potatoes')
})

/** One of each kind that can be told. */
const SAID: readonly Said[] = [
  { kind: 'begin' },
  { kind: 'close' },
  { kind: 'started', step: 'potatoes', ago: 5 },
  { kind: 'done', step: 'potatoes' },
  { kind: 'longer', step: 'potatoes', minutes: 10 },
  { kind: 'longer', step: 'potatoes', minutes: -5 },
  { kind: 'reading', step: 'potatoes', coreC: 61 },
  { kind: 'to-table', course: 'main' },
  { kind: 'nearly', course: 'main' },
  { kind: 'plates-off', course: 'main' },
  { kind: 'sit-down', to: '2026-12-05T19:40:00Z' },
  { kind: 'sit-down', to: null },
  { kind: 'gone', cook: 'kim' },
  { kind: 'back', cook: 'kim' },
  { kind: 'out', dish: 'roast', why: 'failed' },
  { kind: 'alarm', alarm: 'a1', dish: 'roast', need: 'nuts' },
  { kind: 'confirm', alarm: 'a1', cook: 'lou' },
]

test('U53 whatever can be told has words of its own for taking it back', () => {
  const kinds = Said.def.options.map((option) => option.shape.kind.def.values[0])
  expect(new Set(SAID.map(({ kind }) => kind))).toEqual(new Set(kinds))
  const told = SAID.map((said) => toldText(said, names, 'UTC'))
  expect(new Set(told).size).toBe(SAID.length)
  for (const text of told) expect(text).toMatch(/^[A-Z0-9].+\.$/)
  expect(told).toContain('Sit down at 19:40.')
})

test('U55 what a new order changes is one line, the rest is counted', () => {
  const moved = (from: number, to: number) =>
    ({ kind: 'moved', step: 'potatoes', batch: 0, from: AT + from * MIN, to: AT + to * MIN }) as const
  const later = { kind: 'course-moved', course: 'main', from: AT, to: AT + 12 * MIN } as const
  expect(changesText([moved(0, 5)], names, 'UTC')).toBe(`“${names.stepName('potatoes')}” at 19:05, not 19:00.`)
  expect(changesText([later, moved(0, 5), moved(0, 6)], names, 'UTC')).toMatch(/ to table 19:12, not 19:00\. .+ And 1 more\.$/)
  expect(changesText([], names, 'UTC')).toBe('')
  const most = [later, moved(0, 5), moved(0, 6), moved(0, 7)]
  expect(changesText(most, names, 'UTC')).toMatch(/ And 2 more\.$/)
  expect(changesText([...most, moved(0, 8)], names, 'UTC')).toBe('Most of your evening has changed: look at what is next.')
  expect(muchText(['kim', 'lou'], names)).toBe('Much has changed for Kim and Lou: look at what is next.')
})

test('U56 an alarm names the dish and the need, never a guest; a guarded plate says who does what', () => {
  expect(alarmText('roast', 'nuts', names)).toBe('Do not serve “Roast potatoes” to anyone who must not have nuts.')
  expect(alarmText('roast', 'coeliac', names)).toBe('Do not serve “Roast potatoes” to anyone who is coeliac.')
  expect(alarmText('roast', null, names)).toBe('Do not serve “Roast potatoes” to anyone.')
  expect(alarmToldText({ dish: 'roast', need: 'nuts', at: AT }, 'UTC', names)).toBe(
    'Do not serve “Roast potatoes” to anyone who must not have nuts, unless it was made anew from the start after 19:00.',
  )
  expect(guardHead('nuts')).toBe('The plate without nuts first')
  const guard = { dish: 'roast', need: 'nuts', step: 'g', does: 'plate', isDone: false, cooks: ['kim'] } as const
  expect(guardText([guard, { ...guard, does: 'carry', cooks: ['lou'] }], names)).toBe(
    'Roast potatoes: plated first by Kim and carried on its own by Lou.',
  )
})

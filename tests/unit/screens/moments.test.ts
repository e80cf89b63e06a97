import { beforeAll, expect, test } from 'vitest'
import * as Y from 'yjs'
import { closingToAdd, shareOut } from '#app/_tonight/afterwards/closing.ts'
import { learn } from '#app/_tonight/afterwards/learn.ts'
import { type Answer, editOf, tellsOf } from '#app/_tonight/moments/answer.ts'
import { replied, repliesTo } from '#app/_tonight/moments/caught-up.ts'
import {
  alarmDishes,
  failedAnswers,
  goneCooks,
  lateGuestAnswers,
  openSteps,
  rawAnswers,
} from '#app/_tonight/moments/happening.ts'
import { longerFor, probedSteps } from '#app/_tonight/moments/probed.ts'
import { leftoverText } from '#app/_words/afterwards.ts'
import { namesOf } from '#app/_words/names.ts'
import { alarmText } from '#app/_words/night-alarm.ts'
import { ALARM_TODO, answerWords } from '#app/_words/night-moment.ts'
import { estimatedText, readCelsius } from '#app/_words/thermometer.ts'
import { secondsOf } from '#lib/domain/duration.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { Dish, Step } from '#lib/domain/menu.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { epochMsOf, instantOfMs, msOfInstant } from '#lib/domain/time.ts'
import { carryOutTell } from '#lib/plan/carry-out-tell.ts'
import { readPlan } from '#lib/plan/read.ts'
import type { Say } from '#lib/plan/say.ts'
import { writeEvening } from '#lib/plan/write-evening.ts'
import { demoEvening } from '#prisma/demo/demo-evening.ts'
import { planned } from './planned.ts'

const MINUTE = 60_000
const HOST = { role: 'host', cook: 'salma' } as const

let base: Evening
let order: RunningOrder
let sitDown: number
beforeAll(() => {
  const demo = demoEvening('2027-02-20')
  const bread: Dish = {
    ...demo.dishes.filter(({ id }) => id === 'rice')[0],
    id: 'bread',
    name: 'Flat bread',
    state: 'spare',
  } as Dish
  const cheese: Dish = { ...bread, id: 'cheese', name: 'Cheese', course: 'pudding' }
  base = { ...demo, ingredients: [], drinks: [], dishes: [...demo.dishes, cheese, bread] }
  order = planned(demo, 60).order
  sitDown = epochMsOf(base, base.sitDown)
})

/** The evening after something was told of it, or an answer was taken, at a moment. */
const after = (evening: Evening, did: readonly (Say | Answer)[], atMs: number): Evening => {
  const doc = new Y.Doc()
  writeEvening(doc, evening, { epoch: 'one', minClient: 1 })
  for (const one of did) {
    const answer = isAnswer(one) ? one : null
    for (const say of answer ? tellsOf(answer) : [one as Say]) {
      const { kind } = carryOutTell(doc, HOST, { say }, atMs)
      if (kind === 'refused') throw new Error(`${say.kind} was refused`)
    }
    const made = answer ? editOf(readPlan(doc).evening, answer)?.(doc) : undefined
    if (made && !made.ok) throw new Error(JSON.stringify(made.error))
  }
  return readPlan(doc).evening
}
const KINDS: ReadonlySet<string> = new Set(['wait', 'later', 'follow', 'other-way', 'without', 'stand-in'])
const isAnswer = (one: Say | Answer): one is Answer => KINDS.has(one.kind)

const kinds = (answers: readonly Answer[]) => answers.map(({ kind }) => kind)
const only = <K extends Answer['kind']>(answers: readonly Answer[], kind: K): Extract<Answer, { kind: K }> => {
  const found = answers.find((answer): answer is Extract<Answer, { kind: K }> => answer.kind === kind)
  if (!found) throw new Error(`there is no answer “${kind}”`)
  return found
}

test('U60 guests late: all sit down that much later, or begin, or only the second course waits', () => {
  const answers = lateGuestAnswers(base, sitDown - 10 * MINUTE, 25)
  expect(kinds(answers)).toEqual(['wait', 'begin', 'later'])
  const wait = only(answers, 'wait')
  expect(msOfInstant(wait.sitDown)).toBe(sitDown + 25 * MINUTE)
  expect(answerWords(wait, base, namesOf(base))).toEqual({ title: 'Wait 25 min', about: 'Sit down 19:55.' })
  const waited = after(base, [wait], sitDown - 10 * MINUTE)
  expect(waited.night).toMatchObject([{ sitDown: instantOfMs(base, sitDown + 25 * MINUTE), by: 'salma' }])
  expect(tellsOf(only(answers, 'begin'))).toEqual([])
  expect(tellsOf(only(lateGuestAnswers(waited, sitDown, 25), 'begin'))).toEqual([{ kind: 'sit-down', to: null }])

  const later = only(answers, 'later')
  expect(later.course).toBe('main')
  const [was, is] = [base, after(base, [later], sitDown)].map(
    ({ courses }) => secondsOf(courses.find(({ id }) => id === 'main')?.wait.ideal[0] ?? 'PT0S') / 60,
  )
  expect(is).toBe((was ?? 0) + 25)
})

test('U60 guests late: from the moment when it is past sitting down; with a course out only the next one can wait; never with all out', () => {
  const late = only(lateGuestAnswers(base, sitDown + 12.4 * MINUTE, 10), 'wait')
  expect(msOfInstant(late.sitDown)).toBe(sitDown + 23 * MINUTE)
  const seated = after(base, [{ kind: 'to-table', course: 'starter' }], sitDown)
  expect(lateGuestAnswers(seated, sitDown, 15)).toEqual([{ kind: 'later', course: 'main', minutes: 15 }])
  const all = after(
    base,
    ['starter', 'main', 'pudding'].map((course): Say => ({ kind: 'to-table', course })),
    sitDown,
  )
  expect(lateGuestAnswers(all, sitDown, 15)).toEqual([])
})

test('U61 a side is raw: what is under way is asked for first; it gets longer, its dish follows, is made another way, or stays away', () => {
  const open = openSteps(base, order)
  expect(open.map(({ id }) => id)).not.toContain('main-plate')
  expect(open.map(({ dish }) => dish)).not.toContain(null)
  const last = open.at(-1)?.id ?? ''
  const under = after(
    base,
    [
      { kind: 'started', step: last },
      { kind: 'done', step: 'rice-rinse' },
    ],
    sitDown,
  )
  const now = openSteps(under, order)
  expect(open[0]?.id).not.toBe(last)
  expect(now[0]?.id).toBe(last)
  expect(now.map(({ id }) => id)).not.toContain('rice-rinse')

  const rice = open.find(({ id }) => id === 'rice-cook')
  if (!rice) throw new Error('the rice is not open')
  const answers = rawAnswers(base, order, rice, 10)
  expect(kinds(answers)).toEqual(['longer', 'follow', 'other-way', 'without'])
  const longer = after(base, [...tellsOf(only(answers, 'longer'))], sitDown)
  expect(longer.night).toMatchObject([{ step: 'rice-cook', extra: 'PT10M' }])
  const follows = after(base, [only(answers, 'follow')], sitDown)
  expect(follows.dishes.find(({ id }) => id === 'rice')?.toTable.late).toBe('PT10M')
  expect(follows.night).toMatchObject([{ step: 'rice-cook', extra: 'PT10M' }])
  const other = only(answers, 'other-way')
  expect(after(base, [other], sitDown).steps.find(({ id }) => id === 'rice-cook')?.ways).toEqual([rice.ways[other.way]])
  const without = after(base, [only(answers, 'without')], sitDown)
  expect(without.dishes.find(({ id }) => id === 'rice')?.state).toBe('dropped')

  const begun = after(base, [{ kind: 'started', step: 'rice-cook' }], sitDown)
  expect(kinds(rawAnswers(begun, order, rice, 10))).toEqual(['longer', 'follow', 'without'])
  const pears = open.find(({ id }) => id === 'twist-bake')
  expect(pears && kinds(rawAnswers(base, order, pears, 10))).toEqual(['longer', 'without'])
})

test('U62 a dish has failed: its own stand-in first, then what is spare in its course, then any other; or nothing', () => {
  const answers = failedAnswers(base, 'rice')
  expect(answers.map((answer) => (answer.kind === 'stand-in' ? answer.instead : answer.kind))).toEqual([
    'bread',
    'cheese',
    'without',
  ])
  const own = { ...base, dishes: base.dishes.map((dish) => (dish.id === 'rice' ? { ...dish, standIn: 'cheese' } : dish)) }
  expect(only(failedAnswers(own, 'rice'), 'stand-in').instead).toBe('cheese')
  const stood = after(base, [only(answers, 'stand-in')], sitDown)
  const stateOf = (id: string) => stood.dishes.find((dish) => dish.id === id)?.state
  expect([stateOf('rice'), stateOf('bread')]).toEqual(['dropped', 'on'])
  expect(stood.night).toMatchObject([{ dish: 'rice', why: 'failed', instead: 'bread' }])
  const without = after(base, [only(answers, 'without')], sitDown)
  expect(without.dishes.find(({ id }) => id === 'bread')?.state).toBe('spare')
  expect(without.night).toMatchObject([{ dish: 'rice', why: 'failed' }])
})

test('U63 a hand is missing: who has gone is known until they are back', () => {
  const gone = after(base, tellsOf({ kind: 'gone', cook: 'piet' }), sitDown)
  expect(goneCooks(gone)).toEqual(['piet'])
  expect(goneCooks(after(gone, tellsOf({ kind: 'back', cook: 'piet' }), sitDown + MINUTE))).toEqual([])
})

test('U64 an allergen got in: any dish may be named, the next ones first; what is not known counts for everybody, and nobody is named', () => {
  const seated = after(base, [{ kind: 'to-table', course: 'starter' }], sitDown)
  const dishes = alarmDishes(seated).map(({ id }) => id)
  expect(dishes.indexOf('rice')).toBeLessThan(dishes.indexOf('leaves'))
  expect(dishes).toContain('leaves')
  expect(dishes).not.toContain('bread')
  const told = after(base, [{ kind: 'alarm', alarm: 'a1', dish: 'rice', need: 'nuts' }], sitDown)
  expect(told.night).toMatchObject([{ alarm: 'a1', dish: 'rice', need: 'nuts' }])
  const names = namesOf(base)
  expect(alarmText('rice', null, names)).toContain('to anyone.')
  expect(ALARM_TODO.join(' ')).toContain('What is not known to be safe is not safe')
})

test('U65 where are we: each thing with when it happened, and what has not happened is not told', () => {
  const due = sitDown - 7 * MINUTE
  const begin = { kind: 'begin', step: 'rice-cook', batch: 0, due } as const
  expect(repliesTo(begin).flatMap((reply) => replied(begin, reply, sitDown))).toEqual([
    { kind: 'started', step: 'rice-cook', ago: 7 },
    { kind: 'started', step: 'rice-cook', ago: 0 },
    { kind: 'started', step: 'rice-cook', ago: 5 },
    { kind: 'started', step: 'rice-cook', ago: 10 },
    { kind: 'started', step: 'rice-cook', ago: 20 },
    { kind: 'done', step: 'rice-cook' },
  ])
  const served = { kind: 'to-table', course: 'starter', due } as const
  expect(repliesTo(served)).not.toContain('over')
  expect(replied(served, 'not-yet', sitDown)).toEqual([])
  expect(replied({ kind: 'plates-off', course: 'main', due: sitDown }, 'ago-20', sitDown)).toEqual([
    { kind: 'plates-off', course: 'main', ago: 20 },
  ])
  const says = [...replied(begin, 'planned', sitDown), ...replied(served, 'ago-5', sitDown)]
  const night = after(base, says, sitDown).night
  expect(night).toMatchObject([
    { course: 'starter', toTable: instantOfMs(base, sitDown - 5 * MINUTE) },
    { step: 'rice-cook', started: instantOfMs(base, due) },
  ])
  // Longer ago than can be told: as long ago as can be.
  expect(replied({ ...begin, due: sitDown - 400 * MINUTE }, 'planned', sitDown)).toMatchObject([{ ago: 180 }])
})

test('U66 a thermometer: what it says is read as it stands, begun steps are asked for, and the estimate offers the minutes that are missing', () => {
  expect(['58', '58.5', ' 58,5 °C', '-3', '150'].map(readCelsius)).toEqual([58, 58.5, 58.5, -3, 150])
  expect(['', 'hot', '151', '-21', '58.55', '5 8'].map(readCelsius)).toEqual([null, null, null, null, null, null])
  const begun = after(
    base,
    [
      { kind: 'started', step: 'thigh-braise' },
      { kind: 'started', step: 'leeks' },
    ],
    sitDown,
  )
  expect(probedSteps(base)).toEqual([])
  expect(probedSteps(begun)).toEqual(['thigh-braise'])
  expect(probedSteps(after(begun, [{ kind: 'done', step: 'thigh-braise' }], sitDown + MINUTE))).toEqual([])
  const at = (minutes: number) =>
    ({ kind: 'when', least: sitDown, likely: sitDown + minutes * MINUTE, most: sitDown + 90 * MINUTE }) as const
  expect(longerFor(at(12.2), sitDown, sitDown)).toBe(13)
  expect(longerFor(at(1), sitDown, sitDown)).toBe(null)
  expect(longerFor(at(-9), sitDown, sitDown)).toBe(null)
  expect(longerFor(at(85), sitDown, sitDown)).toBe(60)
  const told = after(begun, [{ kind: 'reading', step: 'thigh-braise', coreC: 61.5 }], sitDown + MINUTE)
  expect(told.night).toContainEqual(
    expect.objectContaining({ step: 'thigh-braise', readings: [{ at: instantOfMs(base, sitDown + MINUTE), coreC: 61.5 }] }),
  )
  expect(estimatedText(at(12), 74, base.zone)).toBe(
    '74° likely at 19:42, between 19:30 and 21:00: an estimate, the thermometer decides.',
  )
})

test('U67 afterwards: what was learnt is the usual from now on, of all of it or of none', () => {
  const doc = new Y.Doc()
  writeEvening(doc, base, { epoch: 'one', minClient: 1 })
  const wayOf = (step: string) => readPlan(doc).evening.steps.find(({ id }) => id === step)?.ways[0]
  const takes = { least: 'PT12M', likely: 'PT15M', most: 'PT20M' }
  const made = learn(doc, base, [
    { step: 'leeks', way: 0, takes },
    { step: 'syrup', way: 0, takes },
  ])
  expect(made.ok).toBe(true)
  expect(wayOf('leeks')?.takes).toEqual(takes)
  expect(wayOf('syrup')).toEqual({ ...base.steps.find(({ id }) => id === 'syrup')?.ways[0], takes })
  const left = base.steps.find(({ ways }) => ways[0]?.upTo !== undefined)
  const longest = { ...takes, most: 'P3D' }
  expect(left && learn(doc, base, [{ step: left.id, way: 0, takes: longest }]).ok).toBe(true)
  expect(wayOf(left?.id ?? '')?.upTo).toBe('P3D')
  expect(learn(doc, base, [{ step: 'leeks', way: 5, takes }]).ok).toBe(false)
})

test('U67 what is left has its by-when, and nothing known is not said to keep; chores go to each cook in turn, who missed least first', () => {
  const time = {
    dish: 'rice',
    since: sitDown,
    toTable: sitDown + 5 * MINUTE,
    minutes: 5,
    most: 120,
    leftoversBy: sitDown + 120 * MINUTE,
    unsure: false,
  }
  expect(leftoverText(time, sitDown, base)).toEqual({ says: 'in the fridge by 21:30', isLate: false })
  expect(leftoverText(time, sitDown + 121 * MINUTE, base)).toMatchObject({ isLate: true })
  expect(leftoverText({ ...time, minutes: 130 }, sitDown, base)).toMatchObject({ isLate: true })
  expect(leftoverText(undefined, sitDown, base).says).toContain('nothing is known')

  const chores = closingToAdd(base).map((chore): Step => ({ ...chore, order: 'a', dish: null, role: 'chore' }))
  const evening = { ...base, steps: [...base.steps, ...chores] }
  expect(closingToAdd(evening)).toEqual([])
  const shared = shareOut(evening, missing({ salma: 'PT30M', piet: 'PT10M' }), chores)
  expect(shared.map(({ cook }) => cook)).toEqual(['piet', 'salma', 'piet', 'salma', 'piet'])
  const claimed = { ...evening, claims: [{ target: chores[0]?.id ?? '', cook: 'piet' }] }
  expect(shareOut(claimed, missing({ salma: 'PT30M', piet: 'PT10M' }), chores).map(({ cook }) => cook)).toEqual([
    'salma',
    'piet',
    'salma',
    'piet',
  ])
  const gone = after(evening, [{ kind: 'gone', cook: 'piet' }], sitDown)
  expect(new Set(shareOut(gone, missing({}), chores).map(({ cook }) => cook))).toEqual(new Set(['salma']))
})

/** The order with what each cook missed at the table. */
const missing = (missed: Readonly<Record<string, string>>): RunningOrder => ({
  ...order,
  cooks: Object.entries(missed).map(([cook, of]) => ({ cook, missed: of, handsOn: 'PT0S', sits: [] })),
})

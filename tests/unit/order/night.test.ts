import { describe, expect, test } from 'vitest'
import type { Evening } from '#lib/domain/evening.ts'
import type { NightFact } from '#lib/domain/people.ts'
import { type Cue, ORDER_FORMAT, type RunningOrder } from '#lib/domain/running-order.ts'
import { instantOfTick, tickOf } from '#lib/domain/time.ts'
import { type ProblemOptions, toProblem } from '#lib/order/to-problem.ts'
import {
  at,
  batch,
  claim,
  cook,
  course,
  dish,
  evening,
  follows,
  min,
  or,
  oven,
  step,
  upTo,
} from '#tests/support/evening-builders.ts'

const tick = (of: Evening, time: string) => tickOf(of, at(time), 'up')
const activity = (of: Evening, id: string, options: ProblemOptions = {}) => {
  const found = toProblem(of, options).problem.activities.find((each) => each.id === id)
  if (!found) throw new Error(`no activity ${id}`)
  return found
}
const dinner = (night: NightFact[], fields: Partial<Evening> = {}) =>
  evening(
    course(
      'main',
      dish(
        'joint',
        step('salt', 10),
        step('roast', [50, 60, 70], oven(160, 170), follows('salt')),
        step('rest', 10, upTo(30), follows('roast')),
      ),
    ),
    { night, cooks: [cook('kim'), cook('lou', ['home 12:00 23:30'], { pace: 1.5 })], ...fields },
  )

describe('facts of steps', () => {
  test('O5 a step that is done keeps its time; begun down to a tick, over up to one', () => {
    const of = dinner([{ step: 'salt', started: '2026-11-14T16:00:40Z', done: '2026-11-14T16:12:10Z', by: 'kim' }])
    expect(activity(of, 'salt').fact).toEqual({
      kind: 'done',
      start: tick(of, '16:00') + 1,
      end: tick(of, '16:12') + 1,
      cooks: ['kim'],
    })
  })

  test('O5 a step done without having been started began one length before, at the pace of who did it', () => {
    const night: NightFact[] = [{ step: 'salt', done: '2026-11-14T16:12:00Z', by: 'lou' }]
    expect(activity(dinner(night), 'salt').fact).toMatchObject({
      kind: 'done',
      start: tick(dinner([]), '16:12') - 30,
      cooks: ['lou'],
    })
    const claimed = dinner(night, { claims: [claim('salt', 'kim')] })
    expect(activity(claimed, 'salt').fact).toMatchObject({ kind: 'done', start: tick(dinner([]), '16:12') - 20, cooks: ['kim'] })
  })

  test('O5 a step that was started is under way, and longer by what was said', () => {
    const of = dinner([
      { step: 'roast', started: '2026-11-14T16:30:00Z', by: 'kim' },
      { step: 'roast', extra: min(5), by: 'lou' },
      { step: 'roast', extra: min(10), by: 'lou' },
    ])
    expect(activity(of, 'roast').fact).toEqual({ kind: 'running', start: tick(of, '16:30'), atLeast: 150 })
    expect(activity(of, 'roast').modes[0]?.likely).toBe(120)
  })

  test('O5 a step still to come takes longer in every way by what was said', () => {
    const of = evening(course('main', dish('joint', step('roast', [50, 60, 70], oven(160, 170), or([20, 25, 30]), upTo(40)))), {
      night: [{ step: 'roast', extra: min(15), by: 'kim' }],
    })
    expect(activity(of, 'roast').fact).toBeUndefined()
    expect(activity(of, 'roast').modes).toMatchObject([
      { least: 130, likely: 150, most: 170 },
      { least: 70, likely: 80, most: 90, upTo: 90 },
    ])
  })

  test('O5 the later word replaces the earlier one', () => {
    const of = dinner([
      { step: 'salt', started: '2026-11-14T16:00:00Z', by: 'kim' },
      { step: 'salt', started: '2026-11-14T16:05:00Z', by: 'kim' },
    ])
    expect(activity(of, 'salt').fact).toMatchObject({ kind: 'running', start: tick(of, '16:05') })
  })

  test('O5 batches of a started step follow each other evenly', () => {
    const of = evening(course('main', dish('fish', step('fry', 6, batch(2)))), {
      covers: 8,
      night: [{ step: 'fry', started: '2026-11-14T19:00:00Z', by: 'kim' }],
    })
    const facts = (now?: string) =>
      toProblem(of, now === undefined ? {} : { now }).problem.activities.map(({ fact }) => [
        fact?.kind,
        fact && fact.start - tick(of, '19:00'),
      ])
    expect(facts()).toEqual([
      ['running', 0],
      [undefined, undefined],
      [undefined, undefined],
      [undefined, undefined],
    ])
    expect(facts('2026-11-14T19:07:00Z')).toEqual([
      ['done', 0],
      ['running', 12],
      [undefined, undefined],
      [undefined, undefined],
    ])
    expect(facts('2026-11-14T21:00:00Z')).toEqual([
      ['done', 0],
      ['done', 12],
      ['done', 24],
      ['running', 36],
    ])
  })

  test('O5 batches of a step that is done share its time', () => {
    const of = evening(course('main', dish('fish', step('fry', 6, batch(1, 2)))), {
      covers: 4,
      night: [{ step: 'fry', started: '2026-11-14T19:00:00Z', done: '2026-11-14T19:20:00Z', by: 'kim' }],
    })
    const from = tick(of, '19:00')
    expect(
      toProblem(of).problem.activities.map(({ fact }) => fact?.kind === 'done' && [fact.start - from, fact.end - from]),
    ).toEqual([
      [0, 20],
      [0, 20],
      [20, 40],
      [20, 40],
    ])
  })
})

describe('facts of courses', () => {
  const served = (night: NightFact[]) => toProblem(dinner(night)).problem.servings[0]

  test('O6 guests who sit down later move the first course', () => {
    const of = dinner([{ sitDown: '2026-11-14T19:50:10Z', by: 'kim' }])
    const moved = tick(of, '19:50') + 1
    expect(served([{ sitDown: '2026-11-14T19:50:10Z', by: 'kim' }])).toMatchObject({
      earliest: moved,
      role: { kind: 'first', sitDown: moved },
    })
  })

  test('O6 a served course is as it was, its plates too', () => {
    const of = dinner([])
    const night: NightFact[] = [
      { course: 'main', toTable: '2026-11-14T19:35:00Z', by: 'kim' },
      { course: 'main', platesOff: '2026-11-14T20:10:20Z', by: 'lou' },
    ]
    expect(served(night)?.fact).toEqual({ toTable: tick(of, '19:35'), platesOff: tick(of, '20:10') + 1 })
  })

  test('O6 plates off without a word of the serving: it was one meal before', () => {
    expect(served([{ course: 'main', platesOff: '2026-11-14T20:10:00Z', by: 'lou' }])?.fact).toEqual({
      toTable: tick(dinner([]), '19:45'),
      platesOff: tick(dinner([]), '20:10'),
    })
  })

  test('O6 guests who have nearly finished will be done eating then', () => {
    const night: NightFact[] = [
      { course: 'main', toTable: '2026-11-14T19:35:00Z', nearlyDone: '2026-11-14T19:50:00Z', by: 'kim' },
    ]
    expect(served(night)).toMatchObject({ eating: 30, clearing: 10 })
  })
})

describe('now and what was told', () => {
  const of = dinner([])
  const cue = (id: string, start: string, more: Partial<Cue> = {}): Cue => ({
    step: id,
    batch: 0,
    way: 0,
    start: instantOfTick(of, tick(of, start)),
    end: instantOfTick(of, tick(of, start) + 20),
    cooks: ['kim'],
    kit: [],
    kitchen: 'home',
    touches: [],
    state: 'planned',
    slack: min(0),
    because: [],
    ...more,
  })
  const order = (cues: Cue[]): RunningOrder => ({
    format: ORDER_FORMAT,
    evening: of.id,
    of: { hash: '', engine: '', seed: 1, budget: 1 },
    origin: instantOfTick(of, 0),
    zone: of.zone,
    cues,
    keeping: [],
    courses: [],
    ovens: [],
    cooks: [],
    allHostsAway: min(0),
    goals: [],
    total: 0,
    clashes: [],
    proof: { kind: 'none' },
  })

  test('O7 now is a tick, rounded up; before the first thing that may happen it is nothing', () => {
    expect(toProblem(of, { now: '2026-11-14T17:00:01Z' }).problem.now).toBe(tick(of, '17:00') + 1)
    expect(toProblem(of, { now: '2026-10-01T17:00:00Z' }).problem.now).toBeUndefined()
  })

  test('O7 long after the evening there is still room to plan', () => {
    const { now, horizon } = toProblem(of, { now: '2026-11-15T09:00:00Z' }).problem
    expect(now).toBeDefined()
    expect(horizon.to).toBeGreaterThan((now ?? 0) + 240)
  })

  test('O7 what starts within three minutes is frozen, the rest is only remembered', () => {
    const previous = order([cue('salt', '17:02'), cue('roast', '17:03', { cooks: [] })])
    expect(toProblem(of, { now: '2026-11-14T17:00:00Z', previous }).problem.previous).toEqual([
      { activity: 'roast', start: tick(of, '17:03'), mode: 0, cooks: [], frozen: false },
      { activity: 'salt', start: tick(of, '17:02'), mode: 0, cooks: ['kim'], frozen: true },
    ])
    expect(toProblem(of, { previous }).problem.previous?.map(({ frozen }) => frozen)).toEqual([false, false])
  })

  test('O7 what was told of steps that are gone, of ways that are gone or of another date is forgotten', () => {
    const previous = order([cue('gone', '17:02'), cue('salt', '17:02', { way: 1 })])
    expect(toProblem(of, { previous }).problem.previous).toBeUndefined()
    const told = order([cue('salt', '17:02')])
    expect(toProblem(of, { previous: told }).problem.previous).toHaveLength(1)
    expect(toProblem({ ...of, date: '2026-11-15' }, { previous: told }).problem.previous).toBeUndefined()
    expect(toProblem({ ...of, id: 'other' }, { previous: told }).problem.previous).toBeUndefined()
  })

  test('O5 a batch of a step under way begins when it was told to, or as soon as the one before it is over', () => {
    const fish = evening(course('main', dish('fish', step('fry', 6, batch(2)))), {
      covers: 6,
      night: [{ step: 'fry', started: '2026-11-14T19:01:00Z', by: 'kim' }],
    })
    const previous = order([cue('fry', '19:00'), cue('fry', '19:05', { batch: 1 }), cue('fry', '19:20', { batch: 2 })])
    const facts = (now: string) =>
      toProblem(fish, { now, previous }).problem.activities.map(({ fact }) => [
        fact?.kind,
        fact && fact.start - tick(fish, '19:00'),
      ])
    expect(facts('2026-11-14T19:10:00Z')).toEqual([
      ['done', 2],
      ['running', 14],
      [undefined, undefined],
    ])
    expect(facts('2026-11-14T19:21:00Z')).toEqual([
      ['done', 2],
      ['done', 14],
      ['running', 40],
    ])
  })

  test('O7 on the night a move costs ten times what it costs while planning ahead', () => {
    const ahead = toProblem(of).problem.weights
    expect(toProblem(of, { now: '2026-11-14T17:00:00Z' }).problem.weights).toEqual({ ...ahead, moved: ahead.moved * 10 })
  })

  test('O5 a step under way has the cook and the way it was told to', () => {
    const night: NightFact[] = [{ step: 'salt', started: '2026-11-14T17:00:00Z', by: 'kim' }]
    const previous = order([cue('salt', '17:02', { cooks: ['lou'] })])
    expect(activity(dinner(night), 'salt', { previous }).fact).toEqual({
      kind: 'running',
      start: tick(of, '17:00'),
      atLeast: 30,
      cooks: ['lou'],
    })
    expect(toProblem(dinner(night), { previous, now: '2026-11-14T17:01:00Z' }).problem.previous).toMatchObject([
      { activity: 'salt', mode: 0, frozen: false },
    ])
  })
})

import { describe, expect, test } from 'vitest'
import type { Evening } from '#lib/domain/evening.ts'
import { parseEvening } from '#lib/domain/parse.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { epochMsOf } from '#lib/domain/time.ts'
import { actualsOf, closingOf, leftoversOf } from '#lib/night/afterwards.ts'
import { changesFor } from '#lib/night/changes.ts'
import { coreEstimate, coreOfStep, type Reading } from '#lib/night/core-estimate.ts'
import { jobsOf } from '#lib/night/jobs.ts'
import { platingOf } from '#lib/night/plating.ts'
import { planEvening } from '#lib/order/engine.ts'
import { dice } from '#tests/support/dice.ts'
import {
  at,
  batch,
  chores,
  claim,
  cook,
  cooks,
  course,
  courseWith,
  dish,
  dishWith,
  evening,
  follows,
  fridge,
  leave,
  min,
  notBefore,
  oven,
  ring,
  role,
  step,
  tool,
  upTo,
} from '#tests/support/evening-builders.ts'
import { msAt, nightOf } from '#tests/support/night-of.ts'
import { readEvening } from '#tests/support/read-evening.ts'
import { tonightEvening } from '#tests/support/tonight-evening.ts'

const MINUTE = 60_000

const planned = (of: Evening, now?: string, previous?: RunningOrder): RunningOrder =>
  planEvening(of, {
    budget: { steps: 20, seed: 1 },
    quick: true,
    ...(now === undefined ? {} : { now: new Date(msAt(of, now)).toISOString() }),
    ...(previous ? { previous } : {}),
  })

const base = evening(
  course(
    'main',
    dish(
      'joint',
      step('salt', [8, 10, 14]),
      step('roast', [50, 60, 75], oven(160, 170), follows('salt', 0, 0)),
      step('rest', 10, upTo(15), follows('roast', 0, 0)),
      step('plate', 5, role('plate'), cooks(2), follows('rest', 0, 0)),
    ),
    dish('greens', dishWith({ toTable: { early: min(5), late: min(0) } }), step('wilt', 6, ring('medium'))),
  ),
  course(
    'sweet',
    dish(
      'tart',
      dishWith({ keeps: { how: 'cold', most: min(60), kind: 'quality', uses: [] } }),
      step('chill', 120, leave, upTo(600), fridge()),
      step('cut', 4, role('plate'), follows('chill')),
    ),
  ),
  chores(
    step('lay', 10, notBefore('17:00')),
    step('light', 2, notBefore('17:00')),
    step('dishwasher', 5, notBefore('22:00'), tool('sink')),
  ),
  { cooks: [cook('kim'), cook('lou', ['home 12:00 23:30'], { pace: 1.2 })] },
)
const order = planned(base)

describe('what a new order changes', () => {
  test('BO12 a move of a minute or more is one line of whose it is, and a course that moves one of everybody', () => {
    expect(changesFor(order, order, base, null)).toEqual([])
    const later = nightOf(base, { sitDown: '19:45' })
    const made = planned(later, '17:30', order)
    const all = changesFor(order, made, later, null)
    expect(all.slice(0, 2)).toMatchObject([
      { kind: 'course-moved', course: 'main', from: msAt(base, '19:30'), to: msAt(base, '19:45') },
      { kind: 'course-moved', course: 'sweet' },
    ])
    const roast = made.cues.find((cue) => cue.step === 'roast')
    const whose = roast?.touches[0]?.cook ?? ''
    const moved = {
      kind: 'moved',
      step: 'roast',
      from: Date.parse(order.cues.find((cue) => cue.step === 'roast')?.start ?? ''),
      to: Date.parse(roast?.start ?? ''),
    }
    expect(moved.to - moved.from).toBeGreaterThanOrEqual(MINUTE)
    expect(all.filter((change) => 'step' in change && change.step === 'roast')).toMatchObject([moved])
    expect(changesFor(order, made, later, whose).filter((change) => 'step' in change && change.step === 'roast')).toHaveLength(1)
    const done = nightOf(later, { step: 'roast', started: '18:10', done: '19:12' })
    expect(changesFor(order, made, done, null).some((change) => 'step' in change && change.step === 'roast')).toBe(false)
    const served = nightOf(later, { course: 'main', toTable: '19:31' })
    expect(changesFor(order, made, served, null).some((change) => 'course' in change && change.course === 'main')).toBe(false)
  })

  test('BO12 what another cook takes over is given to one and taken from the other; what is not made any more is gone', () => {
    const hers = { ...base, claims: [claim('salt', 'kim')] }
    const theirs = { ...base, claims: [claim('salt', 'lou')] }
    const [before, after] = [planned(hers), planned(theirs)]
    const of = (whose: string) =>
      changesFor(before, after, theirs, whose).filter((change) => 'step' in change && change.step === 'salt')
    expect(of('lou')).toMatchObject([{ kind: 'given', by: ['kim'] }])
    expect(of('kim')).toMatchObject([{ kind: 'taken', to: ['lou'] }])
    const dropped: Evening = {
      ...base,
      dishes: base.dishes.map((each) => (each.id === 'greens' ? { ...each, state: 'dropped' } : each)),
    }
    expect(changesFor(order, planned(dropped), dropped, null)).toContainEqual({ kind: 'gone', step: 'wilt', batch: 0 })
  })

  test('BO12 what is under way keeps its beginning; taking it out later is a line of who does', () => {
    const roasting = nightOf(base, { step: 'salt', done: '18:10' }, { step: 'roast', started: '18:15' })
    const before = planned(roasting, '18:20', order)
    const longer = nightOf(roasting, { step: 'roast', extra: min(10) })
    const after = planned(longer, '18:21', before)
    const whose = after.cues.find((cue) => cue.step === 'roast')?.touches.at(-1)?.cook ?? ''
    const lines = changesFor(before, after, longer, whose)
    expect(lines).toContainEqual(
      expect.objectContaining({ kind: 'touch-moved', step: 'roast', touch: 'out', to: msAt(base, '19:24') }),
    )
    expect(lines.some((change) => change.kind === 'moved' && change.step === 'roast')).toBe(false)
  })
})

describe('plating', () => {
  const guarded: Evening = {
    ...base,
    covers: 6,
    steps: base.steps.map((each) => (each.id === 'salt' ? { ...each, guard: { for: 'milk', does: 'begin' as const } } : each)),
  }
  test('BO13 plates are as many as covers; guarded ones are filled first, then what may stand longest', () => {
    const made = planned(guarded)
    expect(platingOf(guarded, made, 'main', msAt(base, '19:20'))).toMatchObject({
      count: 6,
      service: 'plated',
      toTable: msAt(base, '19:30'),
      from: Date.parse(made.cues.find((cue) => cue.step === 'plate')?.start ?? ''),
      fill: [
        { dish: 'joint', portions: 6, guardedFor: ['milk'] },
        { dish: 'greens', portions: 6, guardedFor: [] },
      ],
      guards: [{ step: 'salt', does: 'begin' }],
      hands: ['kim', 'lou'],
    })
    const plain = platingOf(base, order, 'main', msAt(base, '19:20'))
    expect(plain?.fill.map((one) => one.dish)).toEqual(['greens', 'joint'])
    expect(plain?.waitsFor).toEqual(['salt', 'roast', 'rest', 'wilt'])
    const ready = nightOf(base, ...['salt', 'roast', 'rest', 'wilt'].map((id) => ({ step: id, done: '19:22' })), {
      cook: 'lou',
      gone: '19:00',
    })
    expect(platingOf(ready, order, 'main', msAt(base, '19:35'))).toMatchObject({
      waitsFor: [],
      hands: ['kim'],
      toTable: msAt(base, '19:35'),
    })
    expect(platingOf(base, order, 'nothing', 0)).toBeNull()
  })

  test('BO13 who gets a variant does not get the dish it is made of; platters count by dish', () => {
    const shared = evening(
      course(
        'main',
        courseWith({ service: 'platters' }),
        dish('pie', step('bake', 10)),
        dish('pie-b', dishWith({ variant: { of: 'pie', fork: 'bake', portions: 1 } }), step('top', 3)),
      ),
    )
    expect(platingOf(shared, planned(shared), 'main', 0)).toMatchObject({
      count: 2,
      from: null,
      fill: [
        { dish: 'pie', portions: 3, insteadOf: null },
        { dish: 'pie-b', portions: 1, insteadOf: 'pie' },
      ],
    })
  })
})

describe('the thermometer', () => {
  const celsius = (f: number) => ((f - 32) * 5) / 9
  const minutes = (ms: number) => ms / MINUTE

  test('BO14 a published example of warming: 40 °F, after an hour 45 °F, in 70 °F: 60 °F after 6.026 hours', () => {
    // OpenStax, College Algebra 2e, "Exponential and Logarithmic Models", Try It.
    const found = coreEstimate(
      [
        { at: 0, coreC: celsius(40) },
        { at: 60 * MINUTE, coreC: celsius(45) },
      ],
      celsius(60),
      celsius(70),
    )
    if (found?.kind !== 'when') throw new Error('no estimate')
    expect(minutes(found.likely) / 60).toBeCloseTo(6.026, 3)
    expect(found.least).toBeLessThan(found.likely)
    expect(found.most === null || found.most > found.likely).toBe(true)
  })

  /** The centre of a ball whose surface is at `around` from 0 on: Carslaw and Jaeger, "Conduction of Heat in Solids", 9.3, from memory. */
  const centre = (start: number, around: number, fourier: number): number => {
    let share = 0
    for (let n = 1; n <= 60; n++) share += 2 * (n % 2 === 1 ? 1 : -1) * Math.exp(-(n * n) * Math.PI * Math.PI * fourier)
    return around + (start - around) * share
  }

  test('BO14 a probe in a ball of roast, read 1 °C off, is done within the range', () => {
    const d = dice(7)
    for (let run = 0; run < 300; run++) {
      const around = d.int(90, 120)
      const start = d.int(2, 18)
      const targetC = d.int(62, 74)
      // A fourth of a ball's time is some 40 min for 8 cm across, with the diffusivity of water (1.4e-7 m²/s, from memory).
      const scale = d.int(100, 400) * MINUTE
      const coreAt = (ms: number) => centre(start, around, ms / scale)
      let [low, high] = [0, scale * 2]
      for (let i = 0; i < 60; i++) {
        const middle = (low + high) / 2
        if (coreAt(middle) < targetC) low = middle
        else high = middle
      }
      const second = low - (d.int(5, 12) * scale) / 400
      const first = second - (d.int(10, 20) * scale) / 400
      const read = (ms: number, off: number): Reading => ({ at: ms, coreC: coreAt(ms) + off })
      const exact = coreEstimate([read(first, 0), read(second, 0)], targetC, around)
      const off = coreEstimate([read(first, d.int(-10, 10) / 10), read(second, d.int(-10, 10) / 10)], targetC, around)
      if (exact?.kind === 'reached' || off?.kind === 'reached') continue
      if (exact?.kind !== 'when' || off?.kind !== 'when') throw new Error(`no estimate in run ${run}`)
      expect(Math.abs(exact.likely - low), `run ${run}`).toBeLessThan((low - second) * 0.2 + MINUTE)
      const slack = (low - second) * 0.2 + MINUTE
      expect(off.least - slack).toBeLessThanOrEqual(low)
      expect(off.most === null || off.most + slack >= low).toBe(true)
    }
  })

  test('BO14 nothing is said of one reading, of two within two minutes, of a core that cools, or of what it can never reach', () => {
    const readings = (...pairs: [number, number][]) => pairs.map(([at, coreC]) => ({ at: at * MINUTE, coreC }))
    expect(coreEstimate([], 60, 160)).toBeNull()
    expect(coreEstimate(readings([0, 30]), 60, 160)).toBeNull()
    expect(coreEstimate(readings([0, 30], [1, 31]), 60, 160)).toBeNull()
    expect(coreEstimate(readings([0, 40], [10, 38]), 60, 160)).toBeNull()
    expect(coreEstimate(readings([0, 40], [10, 45]), 60, 58)).toBeNull()
    expect(coreEstimate(readings([0, 40], [10, 61]), 60, 160)).toEqual({ kind: 'reached', at: 10 * MINUTE })
    const straight = coreEstimate(readings([0, 40], [10, 50], [11, 50.4]), 60, null)
    expect(straight?.kind === 'when' && straight.likely / MINUTE).toBeCloseTo(11 + (9.6 / 10.4) * 11, 3)
    expect(coreEstimate(readings([0, 40], [10, 40.5]), 60, null)).toMatchObject({ most: null })
  })

  test('BO14 on the night the surroundings are what the order has the oven at', () => {
    const roasting = nightOf(
      { ...base, steps: base.steps.map((each) => (each.id === 'roast' ? { ...each, until: { coreC: 60 } } : each)) },
      { step: 'roast', started: '18:15' },
    )
    const readings = [
      { at: new Date(msAt(base, '18:45')).toISOString(), coreC: 30 },
      { at: new Date(msAt(base, '18:55')).toISOString(), coreC: 40 },
    ]
    const of: Evening = { ...roasting, night: [...roasting.night, { step: 'roast', readings, by: 'kim' }] }
    const found = coreOfStep(of, planned(of, '18:55', order), 'roast')
    // By hand: k = ln(130/120)/10 min; ln(120/100)/k = 22.78 min after the second.
    expect(found?.kind === 'when' && minutes(found.likely - msAt(base, '18:55'))).toBeCloseTo(22.78, 1)
    expect(coreOfStep(of, order, 'salt')).toBeNull()
    expect(coreOfStep(roasting, order, 'roast')).toBeNull()
  })
})

describe('what a guest could do', () => {
  test('BO15 chores without knives and heat, clearing, pouring and cold plates, when they are due; nothing else', () => {
    const wet: Evening = {
      ...base,
      drinks: [{ id: 'w', course: 'sweet', order: 'a', name: 'Wine', role: 'with', mlEach: 100, abv: 12 }],
    }
    const lay = order.cues.find((cue) => cue.step === 'lay')
    const early = jobsOf(wet, order, Date.parse(lay?.start ?? '') - 10 * MINUTE)
    expect(early.filter(({ kind }) => kind === 'chore')).toMatchObject([{ kind: 'chore', step: 'lay' }])
    const eating = nightOf(wet, { step: 'chill', started: '12:00', done: '17:00' }, { course: 'main', toTable: '19:30' })
    const kinds = jobsOf(eating, planned(eating, '19:40', order), msAt(base, '19:40')).map((job) => job.kind)
    expect(kinds).toEqual(['clear', 'pour', 'carry'])
    const hot: Evening = {
      ...eating,
      dishes: eating.dishes.map((each) => (each.id === 'tart' ? { ...each, keeps: { ...each.keeps, how: 'hot' } } : each)),
    }
    expect(jobsOf(hot, planned(hot, '19:40', order), msAt(base, '19:40')).map((job) => job.kind)).toEqual(['clear', 'pour'])
    const kept: Evening = {
      ...eating,
      steps: eating.steps.map((each) => (each.id === 'cut' ? { ...each, guard: { for: 'nuts', does: 'plate' } } : each)),
    }
    expect(jobsOf(kept, planned(kept, '19:40', order), msAt(base, '19:40')).map((job) => job.kind)).not.toContain('carry')
  })
})

describe('afterwards', () => {
  const told = nightOf(
    base,
    { step: 'salt', started: '18:00', done: '18:13', by: 'lou' },
    { step: 'wilt', done: '18:20', by: 'lou' },
    { step: 'roast', started: '18:15', done: '19:30' },
    { step: 'rest', started: '19:30', done: '19:50' },
    { step: 'plate', done: '20:20' },
    { step: 'chill', done: '15:00', by: 'kim' },
  )
  const claimed = { ...base, claims: [claim('salt', 'lou'), claim('wilt', 'lou')] }
  const before = planned(claimed)
  const actual = (of: Evening, id: string) => actualsOf({ ...of, claims: claimed.claims }, before).find((one) => one.step === id)

  test('BO16 a step told to begin and to be done, or told in turn by the same cook, has its minutes; nothing is guessed of others', () => {
    expect(actual(told, 'salt')).toMatchObject({
      plannedMinutes: 12,
      actualMinutes: 13,
      how: 'both-told',
      suggests: null,
      cooks: ['lou'],
    })
    expect(actual(told, 'wilt')).toMatchObject({ plannedMinutes: 7, actualMinutes: 7, how: 'in-turn', suggests: null })
    expect(actual(told, 'plate')).toBeUndefined()
    expect(actual(told, 'chill')).toBeUndefined()
    expect(actual(nightOf(base, { step: 'salt', started: '18:00' }), 'salt')).toBeUndefined()
  })

  test('BO16 off by two minutes and 15 % or more, the next usual minutes are offered, at a usual pace; what rests by choice is not', () => {
    expect(actual(told, 'roast')).toMatchObject({
      plannedMinutes: 60,
      actualMinutes: 75,
      suggests: { least: min(50), likely: min(75), most: min(75) },
    })
    expect(actual(told, 'rest')).toMatchObject({ actualMinutes: 20, suggests: null })
    const slow = nightOf(base, { step: 'salt', started: '18:00', done: '18:24' })
    // 24 min at a pace of 1.2 are 20 of a usual cook, which is outside 8 to 14: a new span, here the usual share around it.
    expect(actual(slow, 'salt')?.suggests).toEqual({ least: min(18), likely: min(20), most: min(24) })
    const forgotten = nightOf(base, { step: 'salt', started: '18:00', done: '19:30' })
    expect(actual(forgotten, 'salt')).toMatchObject({ actualMinutes: 90, suggests: null })
  })

  test('BO16 the minutes of a step in batches are those of one', () => {
    const of = evening(course('main', dish('fish', step('fry', 6, ring('medium'), batch(2)))))
    const night = nightOf(of, { step: 'fry', started: '19:00', done: '19:18' })
    expect(actualsOf(night, planned(of))).toMatchObject([{ plannedMinutes: 6, actualMinutes: 9, suggests: { likely: min(9) } }])
  })

  test('BO17 leftovers are the dishes that were served, out since the last that was told of heat or fridge', () => {
    const served = nightOf(told, { course: 'main', toTable: '19:58' })
    expect(leftoversOf(served, before)).toEqual([
      { dish: 'joint', course: 'main', toTable: msAt(base, '19:58'), out: { from: 'heat', at: msAt(base, '19:30') } },
      { dish: 'greens', course: 'main', toTable: msAt(base, '19:58'), out: { from: 'heat', at: msAt(base, '18:20') } },
      { dish: 'tart', course: 'sweet', toTable: null, out: { from: 'cold', at: msAt(base, '15:00') } },
    ])
  })

  test('BO17 closing is the chores that are left, with who has them', () => {
    const [first, ...rest] = closingOf(nightOf(base, { step: 'lay', done: '17:10' }), order, msAt(base, '22:00'))
    expect(rest.map(({ step: id }) => id)).toEqual(['dishwasher'])
    expect(first).toMatchObject({ step: 'light' })
    expect(rest[0]?.cooks).toHaveLength(1)
    expect(closingOf(base, order, msAt(base, '18:00')).map(({ step: id }) => id)).toEqual(['dishwasher'])
  })
})

test.each(['00:00', '09:30', '23:59'])('an evening of tonight at %s sits down when it is asked to', (time) => {
  const lamb = readEvening('a-lamb')
  const now = Date.parse(`2026-03-28T${time}:40Z`)
  const sinceFirst = (of: Evening) => epochMsOf(of, of.sitDown) - epochMsOf(of, of.cooks[0]?.presence[0]?.from ?? at('00:00'))
  for (const minutes of [-90, 20]) {
    const made = tonightEvening(lamb, now, minutes)
    expect(parseEvening(JSON.parse(JSON.stringify(made)))).toMatchObject({ ok: true })
    expect(Math.abs(epochMsOf(made, made.sitDown) - (now + minutes * MINUTE))).toBeLessThanOrEqual(MINUTE / 2)
    expect(sinceFirst(made)).toBe(sinceFirst({ ...lamb, zone: 'UTC' }))
  }
})

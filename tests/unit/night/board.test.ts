import { describe, expect, test } from 'vitest'
import type { Evening } from '#lib/domain/evening.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { openAlarms } from '#lib/night/alarms.ts'
import { alertsOf } from '#lib/night/alerts.ts'
import { boardOf } from '#lib/night/board-of.ts'
import { catchUpOf } from '#lib/night/catch-up.ts'
import { isFromBefore } from '#lib/night/from-before.ts'
import { planEvening } from '#lib/order/engine.ts'
import {
  cook,
  cooks,
  course,
  courseWith,
  dish,
  dishWith,
  evening,
  eye,
  follows,
  leave,
  min,
  oven,
  role,
  step,
  touch,
  upTo,
} from '#tests/support/evening-builders.ts'
import { clockAt, msAt, nightOf } from '#tests/support/night-of.ts'

/** One cook, one roast, plated by two: 19:30 to table. */
const dinner = (fields: Partial<Evening> = {}): Evening =>
  evening(
    course(
      'main',
      dish(
        'joint',
        step('salt', 10),
        step('roast', 60, oven(160, 170), follows('salt', 0, 0)),
        step('rest', 10, upTo(15), follows('roast', 0, 0)),
        step('plate', 5, role('plate'), cooks(2), follows('rest', 0, 0)),
      ),
    ),
    course('sweet', courseWith({ clears: 'lou' }), dish('tart', step('cut', 4, role('plate')))),
    { cooks: [cook('kim'), cook('lou')], ...fields },
  )

const planned = (of: Evening, now?: string, previous?: RunningOrder): RunningOrder =>
  planEvening(of, {
    budget: { steps: 20, seed: 1 },
    quick: true,
    ...(now === undefined ? {} : { now: new Date(msAt(of, now)).toISOString() }),
    ...(previous ? { previous } : {}),
  })

const rings = (of: Evening, order: RunningOrder): string[] =>
  alertsOf(of, order).map(({ id, at: due, cooks: whom }) => `${clockAt(of, due)} ${id} ${[...whom].sort().join('+')}`)

const base = dinner()
const order = planned(base)
const board = (of: Evening, time: string, whose: string | null = null, by = order) =>
  boardOf(of, by, msAt(of, time), { cook: whose })
const ofCook = (of: Evening, time: string, whose: string, by = order) => {
  const [one] = board(of, time, whose, by).now
  if (!one) throw new Error(`no ${whose}`)
  return one
}

describe('who is called when', () => {
  test('BO1 beginning, taking out, plating by several, getting up and serving call those whom the order has at it, at its times', () => {
    expect(rings(base, order)).toEqual([
      '18:05 begin:salt:0 kim',
      '18:07 overdue:salt:0:begin kim',
      '18:15 begin:roast:0 lou',
      '18:17 overdue:roast:0:begin lou',
      '19:14 touch:roast:0:out lou',
      '19:22 plate:main kim+lou',
      '19:25 begin:plate:0 kim+lou',
      '19:27 overdue:plate:0:begin kim+lou',
      '19:30 serve:main kim+lou',
      '19:50 get-up:kim:cut:0 kim',
      '19:51 begin:cut:0 kim',
      '19:53 overdue:cut:0:begin kim',
      '19:55 serve:sweet kim',
    ])
  })

  test('BO1 what has begun calls for its end, what is done for nothing, and no one calls a cook who has gone', () => {
    const of = nightOf(
      base,
      { begun: '17:00' },
      { step: 'salt', started: '18:05', done: '18:16' },
      { step: 'roast', started: '18:16' },
    )
    expect(rings(of, order).slice(0, 2)).toEqual(['19:15 touch:roast:0:out lou', '19:18 overdue:roast:0:end lou'])
    const out = nightOf(of, { step: 'roast', done: '19:16' })
    // It begins by itself as that is told; where it has not, somebody is to say so.
    expect(rings(out, order)[0]).toBe('19:15 begin:rest:0 lou')
    const gone = nightOf(of, { cook: 'lou', gone: '18:30' })
    expect(rings(gone, order)).toContain('19:15 touch:roast:0:out ')
    expect(rings(gone, order).some((ring) => ring.endsWith('lou'))).toBe(false)
    expect(rings(gone, order).some((ring) => ring.includes('plate:main'))).toBe(false)
    expect(rings(nightOf(of, { cook: 'lou', gone: '18:30', back: '18:40' }), order)).toEqual(rings(of, order))
  })

  test('BO2 what is to be rung for again has another id when it was told to need longer, and the same one when an order moves it', () => {
    const of = nightOf(base, { step: 'roast', started: '18:15' })
    const later = nightOf(of, { step: 'roast', extra: min(10) })
    const known = planned(later, '18:20', order)
    const ids = (rung: readonly string[]) => rung.filter((ring) => ring.includes('roast'))
    expect(ids(rings(of, order))).toEqual(['19:14 touch:roast:0:out lou', '19:17 overdue:roast:0:end lou'])
    expect(ids(rings(later, known))).toEqual([
      expect.stringMatching(/^19:24 touch:roast:0:out:longer-10 /),
      expect.stringMatching(/^19:27 overdue:roast:0:end:longer-10 /),
    ])
    const put = (by: RunningOrder, of: Evening) => alertsOf(of, by).find(({ id }) => id === 'serve:main')?.at
    const seated = nightOf(base, { sitDown: '19:50' })
    expect(put(planned(seated, '18:00', order), seated)).toBe(msAt(base, '19:50'))
    expect(put(order, base)).toBe(msAt(base, '19:30'))
  })

  test('BO1 what is watched or left without being taken out is looked at when its usual minutes are over, unless what follows rings then', () => {
    const of = evening(
      course(
        'main',
        dish('sauce', step('reduce', 12, eye), step('whisk', 3, follows('reduce', 0, 0))),
        dish(
          'rice',
          dishWith({ toTable: { early: min(10), late: min(0) } }),
          step('steam', 18, leave, touch('in', 1)),
          step('fluff', 2, follows('steam', 4, 5)),
        ),
      ),
      { cooks: [cook('kim')] },
    )
    const made = rings(of, planned(of))
    expect(made.filter((ring) => ring.includes('look'))).toEqual([expect.stringMatching(/ look:steam:0 kim$/)])
    expect(made.filter((ring) => ring.includes('reduce'))).toHaveLength(2)
  })

  test('BO3 a night that is closed calls nobody', () => {
    expect(alertsOf(nightOf(base, { begun: '17:00', closed: '22:00' }), order)).toEqual([])
  })
})

describe('what the board shows', () => {
  test('BO4 the one thing for the hands is what is overdue before what is under way before what begins within a minute', () => {
    const kim = (of: Evening, time: string) => ofCook(of, time, 'kim')
    expect(kim(base, '18:03').hands).toBeNull()
    expect(kim(base, '18:04').hands).toMatchObject({ step: 'salt', isBegun: false, overdue: null })
    expect(kim(base, '18:09').hands).toMatchObject({ step: 'salt', overdue: { what: 'begin', minutes: 4 } })
    const salting = nightOf(base, { step: 'salt', started: '18:06' })
    expect(kim(salting, '18:08').hands).toMatchObject({ step: 'salt', isBegun: true, overdue: null, does: 'Do salt' })
    expect(clockAt(base, kim(salting, '18:08').hands?.end ?? 0)).toBe('18:16')
    expect(kim(salting, '18:18').hands?.overdue).toBeNull()
    expect(kim(salting, '18:19').hands?.overdue).toMatchObject({ what: 'end', minutes: 3 })
    const both = nightOf(
      base,
      { step: 'salt', started: '19:20' },
      { step: 'roast', done: '19:14' },
      { step: 'rest', started: '19:15' },
    )
    expect(kim(both, '19:25')).toMatchObject({ hands: { step: 'salt' }, waiting: [{ step: 'plate' }] })
    expect(kim(both, '19:28')).toMatchObject({ hands: { step: 'plate', overdue: { minutes: 3 } }, waiting: [{ step: 'salt' }] })
  })

  test('BO4 a touch calls its cook, and taking out stays until it is done', () => {
    const of = nightOf(base, { step: 'salt', done: '18:15' }, { step: 'roast', started: '18:15' })
    const lou = (time: string) => ofCook(of, time, 'lou')
    expect(lou('18:30')).toMatchObject({
      hands: null,
      left: [{ step: 'roast', oven: { kit: 'oven', lowC: 160, highC: 170, setC: 160 } }],
    })
    expect(lou('18:30').next).toMatchObject({ at: msAt(base, '19:14'), task: { step: 'roast', touch: { what: 'out' } } })
    expect(lou('19:14').hands).toMatchObject({ step: 'roast', touch: { what: 'out' }, overdue: null })
    expect(lou('19:20').hands).toMatchObject({ step: 'roast', overdue: { what: 'touch', minutes: 6 } })
    // An order made anew has it end no earlier than it was made, which does not make it less overdue.
    expect(ofCook(of, '19:20', 'lou', planned(of, '19:20', order)).hands).toMatchObject({
      overdue: { what: 'touch', minutes: 5 },
    })
  })

  test('BO5 what was rung for is due since then, however far new orders push it', () => {
    const at10 = planned(base, '18:15', order)
    const fired = new Map([['begin:salt:0', msAt(base, '18:05')]])
    const [kim] = boardOf(base, at10, msAt(base, '18:16'), { cook: 'kim', fired }).now
    expect(kim?.hands).toMatchObject({ step: 'salt', overdue: { minutes: 11 } })
    expect(catchUpOf(base, at10, msAt(base, '18:16'), { fired })).toMatchObject([
      { kind: 'begin', step: 'salt', due: msAt(base, '18:05') },
    ])
    expect(catchUpOf(base, at10, msAt(base, '18:16'), { before: order })[0]?.due).toBe(msAt(base, '18:05'))
  })

  test('BO6 a cook sits until the next moment that wants them, at the table once the guests eat', () => {
    expect(ofCook(base, '18:00', 'kim')).toMatchObject({ free: { until: msAt(base, '18:05') }, isAtTable: false })
    const served = nightOf(
      base,
      { begun: '17:00' },
      ...['salt', 'roast', 'rest', 'plate'].map((id) => ({ step: id, done: '19:30' })),
      { course: 'main', toTable: '19:30' },
    )
    expect(ofCook(served, '19:40', 'kim')).toMatchObject({ free: { until: msAt(base, '19:51') }, isAtTable: true, hands: null })
    expect(ofCook(served, '19:40', 'lou')).toMatchObject({ free: { until: null }, isAtTable: true })
    expect(ofCook(nightOf(served, { cook: 'lou', gone: '19:35' }), '19:40', 'lou')).toMatchObject({ free: null, isHere: false })
  })

  test('BO7 the next course is late by what it is behind when it is wanted, beyond two minutes of grace, and because of a step that is not done', () => {
    expect(board(base, '18:00').course).toMatchObject({ course: 'main', inMinutes: 90, lateBy: 0, because: null, isReady: false })
    const slow = nightOf(base, { step: 'salt', done: '18:15' }, { step: 'roast', started: '18:21' })
    const made = planned(slow, '18:21', order)
    expect(board(slow, '18:30', null, made).course).toMatchObject({ inMinutes: 66, lateBy: 6, because: 'roast' })
    const little = nightOf(base, { step: 'salt', done: '18:15' }, { step: 'roast', started: '18:17' })
    expect(board(little, '18:30', null, planned(little, '18:21', order)).course).toMatchObject({
      inMinutes: 62,
      lateBy: 0,
      because: null,
    })
    const ready = nightOf(base, ...['salt', 'roast', 'rest', 'plate'].map((id) => ({ step: id, done: '19:30' })))
    expect(board(ready, '19:36').course).toMatchObject({ isReady: true, lateBy: 6, inMinutes: 0 })
    const seated = nightOf(base, { sitDown: '19:50' })
    expect(board(seated, '18:00', null, planned(seated, '18:00', order)).course).toMatchObject({ inMinutes: 110, lateBy: 0 })
  })

  test('BO8 the guests are where they were told to be, and who has nearly finished brings the plates forward', () => {
    const eating = nightOf(base, { begun: '17:00' }, { course: 'main', toTable: '19:32' })
    expect(board(base, '18:00')).toMatchObject({ phase: 'before', guests: { kind: 'to-come', covers: 4 } })
    expect(board(nightOf(base, { begun: '17:00' }), '19:10')).toMatchObject({ phase: 'cooking', guests: { kind: 'arriving' } })
    expect(board(base, '19:31').guests).toMatchObject({ kind: 'waiting', course: 'main', since: msAt(base, '19:30') })
    expect(board(eating, '19:40')).toMatchObject({
      phase: 'table',
      guests: { kind: 'eating', course: 'main', since: msAt(base, '19:32'), platesOff: msAt(base, '19:57'), isNearlyDone: false },
    })
    const nearly = nightOf(eating, { course: 'main', nearlyDone: '19:44' })
    expect(board(nearly, '19:45').guests).toMatchObject({ isNearlyDone: true, platesOff: msAt(base, '19:49') })
    expect(board(nearly, '19:45', null, planned(nearly, '19:45', order)).course).toMatchObject({
      course: 'sweet',
      wanted: { from: msAt(base, '19:49'), to: msAt(base, '19:59') },
      lateBy: 0,
    })
    const off = nightOf(eating, { course: 'main', platesOff: '19:55' })
    expect(board(off, '19:56').guests).toMatchObject({ kind: 'waiting', course: 'sweet', since: msAt(base, '19:55') })
    const over = nightOf(off, { course: 'sweet', toTable: '20:00', platesOff: '20:20' })
    expect(board(over, '20:30')).toMatchObject({ phase: 'after', guests: { kind: 'done' }, course: null })
  })

  test('BO9 the oven says how hot the order has it, what it does next, and what is in it', () => {
    const roasting = nightOf(base, { step: 'roast', started: '18:15' })
    expect(board(base, '17:30').ovens).toMatchObject([
      { kit: 'oven', c: 20, trend: 'off', next: { kind: 'up', toC: 160 }, inside: [] },
    ])
    expect(board(base, '18:10').ovens).toMatchObject([{ trend: 'up', toC: 160 }])
    expect(board(roasting, '18:30').ovens).toMatchObject([
      {
        c: 160,
        trend: 'level',
        next: { at: msAt(base, '19:15'), kind: 'off', toC: 20 },
        inside: [{ step: 'roast', dish: 'joint', out: msAt(base, '19:14') }],
      },
    ])
    expect(board(roasting, '19:20').ovens).toMatchObject([{ trend: 'off', next: null }])
  })

  test('BO10 silence is said after twenty minutes in which something should have happened', () => {
    const begun = nightOf(base, { begun: '17:30' })
    expect(board(begun, '18:00').silent).toBeNull()
    expect(board(begun, '18:12').silent).toMatchObject({ minutes: 42 })
    expect(board(nightOf(begun, { step: 'salt', started: '18:05' }), '18:20').silent).toBeNull()
    expect(board(nightOf(begun, { step: 'salt', started: '18:05' }), '18:26').silent).toMatchObject({ minutes: 21 })
    expect(board(base, '18:40').silent).toBeNull()
  })

  test('BO10 what was not told is listed by how long it is due', () => {
    const of = nightOf(base, { begun: '17:30' }, { step: 'salt', started: '18:05' })
    expect(
      catchUpOf(of, order, msAt(base, '19:40')).map((one) => [
        one.kind,
        'step' in one ? one.step : one.course,
        clockAt(of, one.due),
      ]),
    ).toEqual([
      ['end', 'salt', '18:15'],
      ['begin', 'roast', '18:15'],
      ['begin', 'plate', '19:25'],
      ['to-table', 'main', '19:30'],
    ])
  })

  test('BO11 what got into a dish is shown until every cook who is there has confirmed it, and at plating after that too', () => {
    const alarm = { alarm: 'a1', dish: 'joint', need: 'nuts', at: new Date(msAt(base, '19:20')).toISOString(), by: 'kim' }
    const by = (...confirmed: string[]): Evening => ({
      ...base,
      night: [{ ...alarm, confirmed: confirmed.map((id) => ({ cook: id, at: alarm.at })) }],
    })
    expect(board(by(), '19:21').alarms).toMatchObject([{ dish: 'joint', need: 'nuts', missing: ['kim', 'lou'] }])
    expect(board(by('kim'), '19:21').alarms).toMatchObject([{ confirmed: ['kim'], missing: ['lou'] }])
    // Without a running order too.
    expect(openAlarms(by('kim'), msAt(base, '19:21'))).toMatchObject([{ dish: 'joint', missing: ['lou'] }])
    expect(board(nightOf(by('kim'), { cook: 'lou', gone: '19:00' }), '19:21').alarms).toEqual([])
    expect(board(by('kim', 'lou'), '19:21')).toMatchObject({
      alarms: [],
      plateNear: { course: 'main', alarms: [{ dish: 'joint' }] },
    })
  })

  test('BO11 the allergy lines come a quarter of an hour before their course, in the order in which they are done', () => {
    const guarded: Evening = {
      ...base,
      steps: base.steps.map((each) =>
        each.id === 'plate'
          ? { ...each, guard: { for: 'nuts', does: 'plate' as const } }
          : each.id === 'salt'
            ? { ...each, guard: { for: 'nuts', does: 'begin' as const } }
            : each,
      ),
    }
    expect(board(guarded, '19:14').plateNear).toBeNull()
    const of = nightOf(guarded, { step: 'salt', done: '18:15' })
    expect(board(of, '19:15').plateNear).toMatchObject({
      course: 'main',
      guards: [
        { step: 'salt', does: 'begin', need: 'nuts', isDone: true },
        { step: 'plate', does: 'plate', isDone: false },
      ],
    })
  })
})

test('BO19 an order whose untold steps lie before the evening began is from before; one planned from its beginning is not', () => {
  const late = nightOf(base, { begun: '19:20' })
  expect(isFromBefore(base, order), 'not begun').toBe(false)
  expect(isFromBefore(late, order)).toBe(true)
  expect(isFromBefore(late, planned(late, '19:20'))).toBe(false)
  expect(isFromBefore(nightOf(base, { begun: '17:00' }), order), 'begun in time').toBe(false)
})

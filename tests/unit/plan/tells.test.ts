import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import * as Y from 'yjs'
import { checkEvening } from '#lib/domain/check.ts'
import type { Evening } from '#lib/domain/evening.ts'
import { type NightFact, nightKey } from '#lib/domain/people.ts'
import { instantOfMs } from '#lib/domain/time.ts'
import { afterWrites, writeTold } from '#lib/plan/carry-out-tell.ts'
import { remove } from '#lib/plan/commands/remove.ts'
import type { Asker } from '#lib/plan/decide-claim.ts'
import { decideTell, type Earlier } from '#lib/plan/decide-tell.ts'
import { toldAt } from '#lib/plan/may-tell.ts'
import { readPlan } from '#lib/plan/read.ts'
import { inReadingOrder } from '#lib/plan/reading-order.ts'
import type { Said, Say } from '#lib/plan/say.ts'
import type { TellDecision } from '#lib/plan/tell-decision.ts'
import { writeEvening } from '#lib/plan/write-evening.ts'
import { cook, course, dish, dishWith, evening, follows, leave, step, worktop } from '#tests/support/evening-builders.ts'

/** Three cooks, of whom Ann is at home, two courses, and a spare soup. */
const DINNER: Evening = inReadingOrder(
  evening(
    {
      cooks: [
        cook('ann', undefined, { host: true }),
        cook('ben', undefined, { host: false }),
        cook('cas', undefined, { host: false }),
      ],
    },
    course('first', dish('salad', step('wash', 10), step('dress', 5, follows('wash')))),
    course(
      'main',
      dish('joint', step('roast', 60), step('rest', 20, leave, worktop(), follows('roast')), step('carve', 10, follows('rest'))),
      dish('pie', step('fill', 10)),
      dish('soup', step('heat', 10), dishWith({ state: 'spare' })),
    ),
  ),
)

const HOST: Asker = { role: 'host', cook: 'ann' }
const COOK: Asker = { role: 'cook', cook: 'ben' }
const EIGHT = Date.parse('2026-11-14T20:00:00Z')
const MINUTE = 60_000
const at = (minutes: number) => EIGHT + minutes * MINUTE
const instant = (minutes: number) => instantOfMs(DINNER, at(minutes))

const told = (of: Evening, say: Say, minutes = 0, asker: Asker = HOST, earlier?: Earlier): TellDecision =>
  decideTell(of, asker, { say }, at(minutes), earlier)

/** The plan after these words, each some minutes after eight; refused ones and those that change nothing leave it. */
const having = (of: Evening, ...words: readonly (readonly [say: Say, minutes?: number])[]): Evening =>
  words.reduce((plan, [say, minutes = 0]) => {
    const decision = told(plan, say, minutes)
    return decision.kind === 'write' ? afterWrites(plan, decision.writes) : plan
  }, of)

const factOf = (of: Evening, key: string): NightFact | undefined => of.night.find((fact) => nightKey(fact) === key)
const why = (decision: TellDecision) => (decision.kind === 'refused' ? decision.why.kind : decision.kind)

const done: Say = { kind: 'done', step: 'wash' }
const started: Say = { kind: 'started', step: 'wash' }

describe('what is told on the night', () => {
  test('K4 it is told by the member’s own cook, by whom they say where they have none, or by the first host, and by nobody else', () => {
    const by = (asker: Asker, as?: string) => {
      const decision = decideTell(DINNER, asker, { say: done, as }, at(0))
      return decision.kind === 'write'
        ? decision.writes.flatMap((one) => (one.root === 'night' ? [one.fact?.by] : []))
        : why(decision)
    }
    expect(by(COOK)).toEqual(['ben'])
    expect(by(COOK, 'cas')).toEqual(['ben'])
    expect(by({ role: 'cook', cook: null }, 'cas')).toEqual(['cas'])
    expect(by({ role: 'host', cook: 'somebody removed' })).toEqual(['ann'])
    expect(by({ role: 'host', cook: null }, 'nobody')).toBe('unknown-cook')
    expect(by({ role: 'cook', cook: null })).toBe('no-seat')
  })

  test('K5 done twice is once, done late is told as it was, done before started is fine, and a start after the end is none', () => {
    const once = having(DINNER, [done, 0])
    expect(told(once, done, 5, COOK)).toEqual({ kind: 'nothing' })
    expect(factOf(having(DINNER, [{ ...done, ago: 20 }, 0]), 'step:wash')).toEqual({
      step: 'wash',
      done: instant(-20),
      by: 'ann',
    })
    const late = having(once, [{ ...started, ago: 10 }, 1])
    expect(factOf(late, 'step:wash')).toEqual({ step: 'wash', started: instant(-9), done: instant(0), by: 'ann' })
    expect(told(once, started, 3)).toEqual({ kind: 'nothing' })
    expect(factOf(having(DINNER, [started, 3], [{ ...done, ago: 10 }, 5]), 'step:wash')).toEqual({
      step: 'wash',
      done: instant(-5),
      by: 'ann',
    })
  })

  test('K5 minutes more add up, never to less than none nor to more than twelve hours; a course goes out and comes off once', () => {
    const longer = (minutes: number): Say => ({ kind: 'longer', step: 'wash', minutes })
    const extra = (of: Evening) => Object.entries(factOf(of, 'step:wash') ?? {}).find(([name]) => name === 'extra')?.[1]
    expect(extra(having(DINNER, [longer(10)], [longer(5)]))).toBe('PT15M')
    expect(extra(having(DINNER, [longer(10)], [longer(-60)]))).toBeUndefined()
    expect(told(DINNER, longer(-5))).toEqual({ kind: 'nothing' })
    const most = having(DINNER, ...Array.from({ length: 12 }, () => [longer(60)] as const))
    expect(extra(most)).toBe('PT12H')
    expect(why(told(most, longer(1)))).toBe('too-long')
    const served = having(DINNER, [{ kind: 'to-table', course: 'first' }, 0], [{ kind: 'nearly', course: 'first' }, 9])
    expect(told(served, { kind: 'to-table', course: 'first' }, 10)).toEqual({ kind: 'nothing' })
    expect(factOf(having(served, [{ kind: 'plates-off', course: 'first' }, 12]), 'course:first')).toEqual({
      course: 'first',
      toTable: instant(0),
      nearlyDone: instant(9),
      platesOff: instant(12),
      by: 'ann',
    })
  })

  test('K5 of thermometer readings the twelve newest are kept, the same one so soon again is one', () => {
    const reading = (coreC: number): Say => ({ kind: 'reading', step: 'roast', coreC })
    expect(told(having(DINNER, [reading(50), 0]), reading(50), 0.4)).toEqual({ kind: 'nothing' })
    const many = having(DINNER, ...Array.from({ length: 14 }, (_, n) => [reading(40 + n), n] as const))
    const fact = factOf(many, 'step:roast')
    expect(fact && 'readings' in fact ? fact.readings?.map(({ coreC }) => coreC) : []).toEqual(
      Array.from({ length: 12 }, (_, n) => 42 + n),
    )
  })

  test('K6 it happened as long ago as the device’s own clock says, whatever that clock shows, and at most twelve hours', () => {
    const skew = 7 * MINUTE
    expect(toldAt(at(0) + skew, at(0) + skew, at(1))).toBe(at(1))
    expect(toldAt(at(0) - skew, at(30) - skew, at(31))).toBe(at(1))
    expect(toldAt(at(10), at(0), at(1))).toBe(at(1))
    expect(toldAt(at(10), null, at(1))).toBe(at(1))
    expect(toldAt(0, at(0), at(1))).toBe(at(1 - 12 * 60))
  })

  test('K8 the night begins from the day before on, nothing is told of a day a week before or two days after, and closing is always heard', () => {
    const day = 24 * 60
    expect(why(told(DINNER, { kind: 'begin' }, -2 * day))).toBe('not-tonight')
    expect(why(told(DINNER, { kind: 'begin' }, -20 * 60))).toBe('write')
    expect(why(told(DINNER, done, -8 * day))).toBe('not-tonight')
    expect(why(told(DINNER, done, -3 * day))).toBe('write')
    expect(why(told(DINNER, done, 2 * day))).toBe('not-tonight')
    expect(why(told(DINNER, { kind: 'sit-down', to: '2027-01-01T20:00:00Z' }))).toBe('not-tonight')
    const begun = having(DINNER, [{ kind: 'begin' }, 0])
    expect(why(told(begun, { kind: 'close' }, 3 * day))).toBe('write')
    const again = having(begun, [{ kind: 'close' }, 60], [{ kind: 'begin' }, 61])
    expect(factOf(again, 'night')).toEqual({ night: 'begun', begun: instant(0), by: 'ann' })
  })

  test('K9 a dish that is out is off, what stands in for it is on, and only a dish that is on can go', () => {
    const out: Say = { kind: 'out', dish: 'pie', why: 'failed', instead: 'soup' }
    const states = (of: Evening) => Object.fromEntries(of.dishes.map(({ id, state }) => [id, state]))
    const gone = having(DINNER, [out, 0])
    expect(states(gone)).toEqual({ salad: 'on', joint: 'on', pie: 'dropped', soup: 'on' })
    expect(factOf(gone, 'dish:pie')).toEqual({ dish: 'pie', out: instant(0), why: 'failed', instead: 'soup', by: 'ann' })
    expect(told(gone, { ...out, why: 'dropped' }, 1)).toEqual({ kind: 'nothing' })
    expect(why(told(DINNER, { ...out, instead: 'nothing' }))).toBe('unknown-target')
  })

  test('K10 an alarm is told once and confirmed once by each cook', () => {
    const alarm: Say = { kind: 'alarm', alarm: 'a1', dish: 'pie', need: 'nuts' }
    const confirm = (who: string): Say => ({ kind: 'confirm', alarm: 'a1', cook: who })
    expect(why(told(DINNER, confirm('ben')))).toBe('unknown-target')
    const loud = having(DINNER, [alarm, 0], [confirm('ben'), 1], [confirm('ben'), 2], [alarm, 3])
    expect(factOf(loud, 'alarm:a1')).toEqual({
      alarm: 'a1',
      dish: 'pie',
      need: 'nuts',
      at: instant(0),
      confirmed: [{ cook: 'ben', at: instant(1) }],
      by: 'ann',
    })
  })

  test('K11 a cook who is back is not made to be gone by a word from before, and can go again', () => {
    const gone: Say = { kind: 'gone', cook: 'ben' }
    const back = having(DINNER, [gone, 0], [{ kind: 'back', cook: 'ben' }, 10])
    expect(factOf(back, 'cook:ben')).toEqual({ cook: 'ben', gone: instant(0), back: instant(10), by: 'ann' })
    expect(told(back, gone, 5)).toEqual({ kind: 'nothing' })
    expect(factOf(having(back, [gone, 20]), 'cook:ben')).toEqual({ cook: 'ben', gone: instant(20), by: 'ann' })
    expect(told(DINNER, { kind: 'back', cook: 'ben' })).toEqual({ kind: 'nothing' })
  })

  test('K12 what only stands from then on begins with the end of the step before it, and with taking that back it does not', () => {
    const roast: Said = { kind: 'done', step: 'roast' }
    const rests = having(DINNER, [roast, 0])
    expect(factOf(rests, 'step:rest')).toEqual({ step: 'rest', started: instant(0), by: 'ann' })
    expect(factOf(rests, 'step:carve')).toBeUndefined()
    const back = told(rests, { kind: 'take-back', of: 'op-12345', said: roast }, 0.5, HOST, () => ({ told: instant(0) }))
    expect(back.kind === 'write' ? afterWrites(rests, back.writes).night : []).toEqual([])
    const early = having(DINNER, [{ kind: 'started', step: 'rest' }, -5], [roast, 0])
    expect(factOf(early, 'step:rest')).toMatchObject({ started: instant(-5) })
  })

  test('K13 facts stay when the cook who told them is removed, and those about what is removed are not read', () => {
    const doc = new Y.Doc()
    const told = having(
      DINNER,
      [{ kind: 'out', dish: 'pie', why: 'failed', instead: 'soup' }],
      [{ kind: 'gone', cook: 'cas' }],
      [{ kind: 'alarm', alarm: 'a1', dish: 'joint', need: null }],
      [{ kind: 'confirm', alarm: 'a1', cook: 'cas' }],
      [done],
    )
    writeEvening(doc, { ...told, night: told.night.map((fact) => ({ ...fact, by: 'cas' })) }, { epoch: 'e', minClient: 1 })
    remove(doc, 'cooks', 'cas')
    remove(doc, 'dishes', 'soup')
    const { evening: read } = readPlan(doc)
    expect(checkEvening(read)).toEqual([])
    expect(read.night.map(nightKey)).toEqual(['alarm:a1', 'dish:pie', 'step:wash'])
    expect(read.night.every(({ by }) => by === 'ann')).toBe(true)
    expect(factOf(read, 'alarm:a1')).toMatchObject({ confirmed: [] })
    expect(factOf(read, 'dish:pie')).not.toHaveProperty('instead')
  })
})

const STEPS = ['wash', 'dress', 'roast', 'carve', 'fill'] as const
const someStep = fc.constantFrom(...STEPS)
const someCourse = fc.constantFrom('first', 'main')
const someCook = fc.constantFrom('ann', 'ben', 'cas')
const ago = fc.option(fc.integer({ min: 0, max: 30 }), { nil: undefined })

const anySaid: fc.Arbitrary<Said> = fc.oneof(
  fc.constant({ kind: 'begin' } as const),
  fc.constant({ kind: 'close' } as const),
  fc.record({ kind: fc.constant('started' as const), step: someStep, ago }),
  fc.record({ kind: fc.constant('done' as const), step: someStep, ago }),
  fc.record({ kind: fc.constant('longer' as const), step: someStep, minutes: fc.constantFrom(-10, 5, 10, 20) }),
  fc.record({ kind: fc.constant('reading' as const), step: someStep, coreC: fc.integer({ min: 20, max: 90 }) }),
  fc.record({ kind: fc.constant('to-table' as const), course: someCourse, ago }),
  fc.record({ kind: fc.constantFrom('nearly' as const, 'plates-off' as const), course: someCourse }),
  fc.record({
    kind: fc.constant('sit-down' as const),
    to: fc.constantFrom(null, '2026-11-14T20:10:00Z', '2026-11-14T20:30:00+01:00'),
  }),
  fc.record({ kind: fc.constantFrom('gone' as const, 'back' as const), cook: someCook }),
  fc.record({
    kind: fc.constant('out' as const),
    dish: fc.constantFrom('salad', 'pie', 'soup'),
    why: fc.constant('failed' as const),
    instead: fc.constantFrom(undefined, 'soup', 'joint'),
  }),
  fc.record({
    kind: fc.constant('alarm' as const),
    alarm: fc.constantFrom('a1', 'a2'),
    dish: fc.constant('pie'),
    need: fc.constantFrom(null, 'nuts'),
  }),
  fc.record({ kind: fc.constant('confirm' as const), alarm: fc.constantFrom('a1', 'a2'), cook: someCook }),
)

/** Some words, each some seconds after the one before. */
const someWords = fc.array(fc.tuple(anySaid, fc.integer({ min: 1, max: 600 })), { maxLength: 14 })
const RUNS = Number(process.env.SEEDS ?? 40)

describe('the laws of it', () => {
  test('K14 what a device lays over the plan is what the server writes, word for word, and it is a sound evening', () => {
    let written = 0
    fc.assert(
      fc.property(someWords, (words) => {
        const doc = new Y.Doc()
        writeEvening(doc, DINNER, { epoch: 'e', minClient: 1 })
        let there = readPlan(doc).evening
        let shown = there
        let ms = EIGHT
        for (const [say, seconds] of words) {
          ms += seconds * 1000
          const decision = decideTell(there, COOK, { say }, ms)
          expect(decideTell(shown, COOK, { say }, ms)).toEqual(decision)
          if (decision.kind !== 'write') continue
          written += 1
          shown = afterWrites(shown, decision.writes)
          writeTold(doc, decision.writes)
          there = readPlan(doc).evening
          expect(shown).toEqual(there)
        }
        expect(checkEvening(shown)).toEqual([])
      }),
      { numRuns: RUNS },
    )
    expect(written).toBeGreaterThan(RUNS)
  })

  test('K7 what is taken back in time leaves the plan as it was, but for who spoke last', () => {
    const without = (of: Evening) => ({ ...of, night: of.night.map(({ by: _by, ...fact }) => fact) })
    const kinds = new Set<string>()
    fc.assert(
      fc.property(someWords, anySaid, (words, said) => {
        let ms = EIGHT
        let before = DINNER
        for (const [say, seconds] of words) {
          ms += seconds * 1000
          const decision = decideTell(before, COOK, { say }, ms)
          if (decision.kind === 'write') before = afterWrites(before, decision.writes)
        }
        ms += 60_000
        // A start after the end is dropped for good, the oldest of twelve readings too, and so is that somebody had been gone before.
        fc.pre(!('ago' in said && said.ago !== undefined) && !(said.kind === 'gone' && factOf(before, `cook:${said.cook}`)))
        const decision = decideTell(before, HOST, { say: said }, ms)
        if (decision.kind !== 'write' || said.kind === 'alarm') return
        kinds.add(said.kind)
        const now = afterWrites(before, decision.writes)
        const back: Say = { kind: 'take-back', of: 'op-12345', said }
        const taken = decideTell(now, HOST, { say: back }, ms + 59_000, () => decision)
        expect(taken.kind).toBe('write')
        expect(without(taken.kind === 'write' ? afterWrites(now, taken.writes) : now)).toEqual(without(before))
        expect(decideTell(now, HOST, { say: back }, ms + 62_000, () => decision)).toMatchObject({ why: { kind: 'too-late' } })
        expect(decideTell(now, HOST, { say: back }, ms + 1000)).toMatchObject({ why: { kind: 'stays' } })
      }),
      { numRuns: RUNS * 5 },
    )
    expect(kinds.size).toBeGreaterThan(10)
  })

  test('K7 what another has told since stays, and an alarm is never taken back', () => {
    const back = (said: Said, before: { told: string; was?: string }): [Say, Earlier] => [
      { kind: 'take-back', of: 'op-12345', said },
      () => before,
    ]
    const away = having(DINNER, [{ kind: 'gone', cook: 'ben' }, 0], [{ kind: 'back', cook: 'ben' }, 0.2])
    const [gone, ofGone] = back({ kind: 'gone', cook: 'ben' }, { told: instant(0) })
    expect(told(away, gone, 0.5, HOST, ofGone)).toEqual({ kind: 'nothing' })
    const later = having(DINNER, [{ kind: 'sit-down', to: instant(10) }, 0], [{ kind: 'sit-down', to: instant(20) }, 0.2])
    const [sit, ofSit] = back({ kind: 'sit-down', to: instant(10) }, { told: instant(0) })
    expect(told(later, sit, 0.5, HOST, ofSit)).toEqual({ kind: 'nothing' })
    const more = having(
      DINNER,
      [{ kind: 'longer', step: 'wash', minutes: 10 }, 0],
      [{ kind: 'longer', step: 'wash', minutes: 5 }, 0.2],
    )
    const [longer, ofLonger] = back({ kind: 'longer', step: 'wash', minutes: 10 }, { told: instant(0) })
    const less = told(more, longer, 0.5, HOST, ofLonger)
    expect(less.kind === 'write' ? factOf(afterWrites(more, less.writes), 'step:wash') : null).toMatchObject({ extra: 'PT5M' })
    const [alarm, ofAlarm] = back({ kind: 'alarm', alarm: 'a1', dish: 'pie', need: null }, { told: instant(0) })
    expect(why(told(DINNER, alarm, 0.5, HOST, ofAlarm))).toBe('stays')
  })

  test('K15 the same words of two devices in any order come to the same, but for which of two same words was first', () => {
    const word: fc.Arbitrary<readonly [Said, number]> = fc.oneof(
      fc.tuple(fc.record({ kind: fc.constant('started' as const), step: someStep }), fc.integer({ min: 0, max: 20 })),
      fc.tuple(fc.record({ kind: fc.constant('done' as const), step: someStep }), fc.integer({ min: 30, max: 50 })),
      fc.tuple(
        fc.record({ kind: fc.constant('longer' as const), step: someStep, minutes: fc.constantFrom(5, 10, 20) }),
        fc.integer({ min: 0, max: 50 }),
      ),
      fc.tuple(
        fc.record({ kind: fc.constantFrom('to-table' as const, 'nearly' as const, 'plates-off' as const), course: someCourse }),
        fc.integer({ min: 0, max: 50 }),
      ),
      fc.tuple(
        fc.record({
          kind: fc.constant('out' as const),
          dish: fc.constantFrom('salad', 'pie'),
          why: fc.constant('failed' as const),
        }),
        fc.constant(40),
      ),
    )
    const shape = (of: Evening) => ({
      states: of.dishes.map(({ state }) => state),
      night: of.night.map((fact) => [nightKey(fact), ...Object.keys(fact).toSorted(), 'extra' in fact ? fact.extra : '']),
    })
    // Every moment differs, so that the same facts in both orders mean that nothing was lost.
    const distinct = (of: Evening) => of.night.map(({ by: _by, ...fact }) => fact)
    let same = 0
    fc.assert(
      fc.property(
        fc.array(word, { maxLength: 8 }),
        fc.array(word, { maxLength: 8 }),
        fc.infiniteStream(fc.boolean()),
        (a, b, coins) => {
          const mixed: (readonly [Said, number])[] = []
          const [left, right] = [[...a], [...b]]
          while (left.length + right.length > 0) {
            const next = coins.next().value ? (left.shift() ?? right.shift()) : (right.shift() ?? left.shift())
            if (next) mixed.push(next)
          }
          const [one, other] = [having(DINNER, ...a, ...b), having(DINNER, ...mixed)]
          expect(shape(other)).toEqual(shape(one))
          const keys = [...a, ...b].map(([{ kind, ...about }]) =>
            kind === 'longer' ? '' : `${kind} ${Object.values(about).join(' ')}`,
          )
          const once = keys.every((key, n) => key === '' || keys.indexOf(key) === n)
          if (!once) return
          same += 1
          expect(distinct(other)).toEqual(distinct(one))
        },
      ),
      { numRuns: RUNS * 3 },
    )
    expect(same).toBeGreaterThan(RUNS / 4)
  })
})

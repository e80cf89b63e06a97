import { describe, expect, test } from 'vitest'
import { toProblem } from '#lib/order/to-problem.ts'
import { chances } from '#lib/scheduling/chance/chances.ts'
import { networkOf } from '#lib/scheduling/chance/network.ts'
import { pass, walkOf } from '#lib/scheduling/chance/walk.ts'
import type { Mode, Problem } from '#lib/scheduling/problem.ts'
import type { Placement, Schedule } from '#lib/scheduling/schedule.ts'
import { solve } from '#lib/scheduling/solve.ts'
import { demoEvening } from '#prisma/demo/demo-evening.ts'
import { type Dice, dice } from '#tests/support/dice.ts'
import { loadEvening } from '#tests/support/load-evening.ts'
import { type Placed, sceneOf } from '#tests/support/night-scene.ts'
import { lag } from '#tests/support/problem-builders.ts'
import { randomEvening } from '#tests/support/random-evening.ts'
import { oneNight, simulateNights, type Unit } from '#tests/support/simulate-night.ts'
import { activity, cook, delivery, mode, placed, problem, schedule, serving } from '#tests/support/small-problem.ts'

const varying = (care: Mode['care'], least: number, likely: number, most: number, parts: Partial<Mode> = {}): Mode =>
  mode(care, likely, { least, most, ...parts })
const dish = (id: string) => ({ delivery: id })
const first = serving('first', { role: { kind: 'first', sitDown: 100 } })
const at = (...moments: [string, number][]) => ({ servings: moments.map(([id, toTable]) => ({ serving: id, toTable })) })

/** One course at 100 with one dish. */
const dinner = (parts: Partial<Problem>): Problem =>
  problem({ cooks: [cook('ann'), cook('bo')], servings: [first], deliveries: [delivery('pie', 'first')], ...parts })

const onTime = (of: Problem, good: Schedule, samples = 40_000): number[] =>
  chances(of, good, { samples, seed: 1 }).servings.map((one) => one.onTime)

/** 20/30/60 by hand: P(X ≤ 30) = 10²/(40·10) = 0.25; above 30, 1 − (60 − x)²/(40·30). */
const bake = varying('leave', 20, 30, 60)

describe('M1-M5 by hand', () => {
  test('M5 a serving is on time up to 2 min after its moment', () => {
    const of = dinner({ activities: [activity('bake', bake, dish('pie'))] })
    const [chance] = onTime(of, schedule([placed('bake', 70, 100)], at(['first', 100])))
    expect(chance).toBeCloseTo(1 - 26 ** 2 / 1200, 2)
  })

  test('M2 what begins early waits for its planned moment, so that room in between helps', () => {
    const of = dinner({
      activities: [activity('bake', bake, dish('pie')), activity('plate', mode('hands-on', 5), dish('pie'))],
      lags: [lag('bake', 'plate')],
    })
    const from = (start: number) =>
      onTime(
        of,
        schedule([placed('bake', start, start + 30), placed('plate', 95, 100, { cooks: ['ann'] })], at(['first', 100])),
      )[0]
    expect(from(65)).toBeCloseTo(1 - 26 ** 2 / 1200, 2)
    expect(from(45)).toBeCloseTo(1 - 6 ** 2 / 1200, 2)
    expect(from(35)).toBe(1)
  })

  test('M2 a lag’s most brings the next step forward when the one before is early', () => {
    const [of, make] = [
      (most?: number) =>
        dinner({
          activities: [
            activity('bake', bake, dish('pie')),
            activity('turn', mode('hands-on', 4), dish('pie')),
            activity('brown', varying('leave', 20, 30, 60), dish('pie')),
          ],
          lags: [lag('bake', 'turn', most === undefined ? {} : { most }), lag('turn', 'brown', { most: 0 })],
        }),
      schedule(
        [placed('bake', 40, 70), placed('turn', 70, 74, { cooks: ['ann'] }), placed('brown', 74, 104)],
        at(['first', 120]),
      ),
    ]
    const [held] = onTime(of(), make)
    const [pulled] = onTime(of(0), make)
    expect(held).toBeDefined()
    expect(pulled).toBeGreaterThan((held ?? 1) + 0.005)
  })

  test('M3 a cook who is still busy lets the next dish wait, another cook does not', () => {
    const of = dinner({
      activities: [activity('knead', varying('hands-on', 20, 30, 60)), activity('plate', mode('hands-on', 10), dish('pie'))],
    })
    const by = (who: string) =>
      onTime(
        of,
        schedule([placed('knead', 60, 90, { cooks: ['ann'] }), placed('plate', 90, 100, { cooks: [who] })], at(['first', 100])),
      )[0]
    expect(by('bo')).toBe(1)
    expect(by('ann')).toBeCloseTo(1 - 26 ** 2 / 1200, 2)
  })

  test('M3 an oven that must cool first lets the next dish wait that much longer', () => {
    const uses = (lowC: number, highC: number) => ({
      uses: [{ kind: 'oven' as const, shelves: 1, lowC, highC, preheated: true }],
    })
    const of = dinner({
      kit: [{ kind: 'oven', id: 'oven', place: 'home', shelves: 2, maxC: 250, up: 4, down: 2 }],
      activities: [
        activity('bread', varying('leave', 20, 30, 60, uses(220, 230))),
        activity('pie', mode('leave', 10, uses(160, 200)), dish('pie')),
      ],
    })
    const kit = [{ id: 'oven', unit: 0 }]
    const made = (gap: number) =>
      schedule([placed('bread', 60 - gap, 90 - gap, { kit }), placed('pie', 100, 110, { kit })], at(['first', 110]))
    // Cooling by 20 °C takes 10 ticks.
    expect(onTime(of, made(0))[0]).toBeCloseTo(1 - 26 ** 2 / 1200, 2)
    expect(onTime(of, made(20))[0]).toBeCloseTo(1 - 6 ** 2 / 1200, 2)
  })

  test('M3 of two shelves either will do: the third dish waits for the first that is out', () => {
    const uses = { uses: [{ kind: 'oven' as const, shelves: 1, lowC: 160, highC: 200, preheated: false }] }
    const of = dinner({
      kit: [{ kind: 'oven', id: 'oven', place: 'home', shelves: 2, maxC: 250, up: 4, down: 2 }],
      activities: [
        activity('one', varying('leave', 20, 30, 60, uses)),
        activity('two', varying('leave', 20, 30, 60, uses)),
        activity('pie', mode('leave', 10, uses), dish('pie')),
      ],
    })
    const kit = [{ id: 'oven', unit: 0 }]
    const good = schedule(
      [placed('one', 60, 90, { kit }), placed('two', 60, 90, { kit }), placed('pie', 90, 100, { kit })],
      at(['first', 100]),
    )
    const late = 26 ** 2 / 1200
    expect(onTime(of, good)[0]).toBeCloseTo(1 - late * late, 2)
  })

  test('M4 a course that is late makes the next one late by its meal', () => {
    const of = problem({
      servings: [first, serving('second')],
      deliveries: [delivery('pie', 'first'), delivery('ice', 'second')],
      activities: [activity('bake', bake, dish('pie'))],
    })
    const second = (moment: number) => onTime(of, schedule([placed('bake', 70, 100)], at(['first', 100], ['second', moment])))[1]
    expect(second(112)).toBeCloseTo(1 - 26 ** 2 / 1200, 2)
    expect(second(132)).toBeCloseTo(1 - 6 ** 2 / 1200, 2)
  })

  test('M5 what waits past its lag’s most, or for the table, by more than 2 min is not as it should be', () => {
    const of = (most: number) =>
      dinner({
        deliveries: [delivery('pie', 'first', { keeps: { most: 40, bound: 'quality', place: 'home', uses: [] } })],
        activities: [
          activity('chill', mode('hands-on', 10), dish('pie')),
          activity('rest', varying('leave', 20, 30, 60)),
          activity('serve', mode('hands-on', 5), dish('pie')),
        ],
        lags: [lag('chill', 'serve', { most }), lag('rest', 'serve')],
      })
    const good = schedule(
      [placed('chill', 20, 30, { cooks: ['ann'] }), placed('rest', 30, 60), placed('serve', 60, 65, { cooks: ['ann'] })],
      at(['first', 100]),
    )
    expect(onTime(of(60), good)[0]).toBe(1)
    // 5 ticks of play and 4 of grace: P(X ≤ 39) = 1 − 21²/1200.
    expect(onTime(of(35), good)[0]).toBeCloseTo(1 - 21 ** 2 / 1200, 2)
  })

  test('M5 a dish that is ready much too early has waited past its keeping', () => {
    const keeps = { most: 10, bound: 'quality' as const, place: 'home', uses: [] }
    const of = dinner({
      deliveries: [delivery('pie', 'first', { early: 0, keeps })],
      activities: [activity('bake', varying('leave', 20, 50, 60), dish('pie'))],
    })
    const good = schedule([placed('bake', 45, 95)], at(['first', 100]))
    // Ready before 100 − 10 − 4 = 86, so in less than 41: P(X ≤ 41) = 21²/(40·30); later than 104 it is late: 1²/(40·10).
    expect(onTime(of, good)[0]).toBeCloseTo(1 - 21 ** 2 / 1200 - 1 / 400, 2)
    expect(chances(of, good, { samples: 1000, seed: 1 }).servings[0]?.decidedBy).toBe('bake')
  })

  test('M6 the step that goes furthest over its plan decides', () => {
    const of = dinner({
      activities: [activity('bake', bake, dish('pie')), activity('plate', varying('hands-on', 4, 5, 6), dish('pie'))],
      lags: [lag('bake', 'plate')],
    })
    const good = schedule([placed('bake', 65, 95), placed('plate', 95, 100, { cooks: ['ann'] })], at(['first', 100]))
    expect(chances(of, good, { samples: 1000, seed: 1 }).servings[0]?.decidedBy).toBe('bake')
    const early = schedule([placed('bake', 20, 50), placed('plate', 80, 85, { cooks: ['ann'] })], at(['first', 100]))
    expect(chances(of, early, { samples: 1000, seed: 1 }).servings[0]).toEqual({ serving: 'first', onTime: 1, decidedBy: null })
  })

  test('M1 what is done is not drawn, and what is under way has lasted as long as it has', () => {
    const running = (now: number) =>
      dinner({ now, activities: [activity('bake', bake, { ...dish('pie'), fact: { kind: 'running', start: 60, atLeast: 30 } })] })
    const end = (now: number) => schedule([placed('bake', 60, Math.max(90, now))], at(['first', 100]))
    // P(X ≤ 44) = 1 − 16²/1200, and given X > 35: (P(44) − P(35)) / (1 − P(35)) with 1 − P(35) = 25²/1200.
    expect(onTime(running(60), end(60))[0]).toBeCloseTo(1 - 16 ** 2 / 1200, 2)
    expect(onTime(running(95), end(95))[0]).toBeCloseTo(1 - 16 ** 2 / 25 ** 2, 2)
    const done = dinner({
      now: 95,
      activities: [activity('bake', bake, { ...dish('pie'), fact: { kind: 'done', start: 60, end: 95 } })],
    })
    expect(onTime(done, schedule([placed('bake', 60, 95)], at(['first', 100])))[0]).toBe(1)
  })
})

describe('M7 a whole project', () => {
  test('M7 seven steps of mean 24 and variance 5 are done by 28 with chance 0.9633', () => {
    // The PERT example of Taylor, "Introduction to Management Science": seven activities, a critical path of mean 24 and
    // variance 5, and by the normal distribution P(x ≤ 28) = 0.9633. Here seven triangles in a row: each of mean 24/7 and
    // variance h²/6 = 5/7 for half a base of h, so that their sum is near the normal one.
    const half = Math.sqrt((6 * 5) / 7)
    const likely = 24 / 7
    const steps = Array.from({ length: 7 }, (_, i) => `step-${i}`)
    const of = dinner({
      activities: steps.map((id) => activity(id, varying('leave', likely - half, likely, likely + half), dish('pie'))),
      lags: steps.slice(1).map((id, i) => lag(steps[i] ?? '', id)),
    })
    const good = schedule(
      steps.map((id) => placed(id, 0, likely)),
      at(['first', 24]),
    )
    // The grace is the 4 ticks from 24 to 28.
    const [chance] = chances(of, good, { samples: 60_000, seed: 1 }).servings
    expect(Math.abs((chance?.onTime ?? 0) - 0.9633)).toBeLessThan(0.005)
  })
})

const unitOf =
  ({ int }: Dice): Unit =>
  () =>
    int(0, 999_999_999) / 1e9

const triangle = (least: number, likely: number, most: number, unit: Unit): number => {
  for (;;) {
    const x = least + (most - least) * unit()
    const height = x < likely ? (x - least) / (likely - least) : (most - x) / (most - likely)
    if (unit() < height) return x
  }
}

describe('M7 an independent simulation', () => {
  const evenings = [
    ['evening A', loadEvening('a-lamb')],
    ['the demo', demoEvening('2026-12-05')],
    ...[1, 2, 3, 4].map((seed) => [`random ${seed}`, randomEvening(seed)] as const),
  ] as const

  test.each(evenings)(
    'M3 M7 %s: with the same lengths every step begins and every course comes at the same time',
    (_, evening) => {
      const { problem: of } = toProblem(evening)
      const good = solve(of, { steps: 300, seed: 1 })
      const network = networkOf(of, good)
      const walk = walkOf(network)
      const scene = sceneOf(of, good)
      const d = dice(5)
      for (let night = 0; night < 5; night++) {
        const lengths = new Map<Placed, number>()
        for (const one of scene.placed) {
          const { least, likely, most } = one.mode
          const length = least < most ? triangle(least, likely, most, unitOf(d)) : likely
          lengths.set(one, length * one.pace)
        }
        for (const [i, { activity: number }] of network.draws.entries()) {
          const one = scene.placed.find(({ id }) => id === of.activities[number]?.id)
          walk.lag[walk.arcOf[i] ?? -1] = (one && lengths.get(one)) ?? Number.NaN
        }
        pass(walk)
        const clock = oneNight(of, scene, lengths)
        for (const { serving: id, event } of network.servings)
          expect(walk.time[walk.at[event] ?? -1], id).toBeCloseTo(clock.served.get(id) ?? Number.NaN, 6)
        for (const { draw, from } of network.arcs) {
          const one = scene.placed.find(
            ({ id }) => draw !== undefined && id === of.activities[network.draws[draw]?.activity ?? -1]?.id,
          )
          if (one) expect(walk.time[walk.at[from] ?? -1], one.id).toBeCloseTo(clock.begun.get(one) ?? Number.NaN, 6)
        }
      }
    },
  )

  test('M3 with planned lengths nothing is later than planned', () => {
    for (const [, evening] of evenings) {
      const { problem: of } = toProblem(evening)
      const good = solve(of, { steps: 300, seed: 1 })
      const network = networkOf(of, good)
      const walk = walkOf(network)
      for (const [i, { planned }] of network.draws.entries()) walk.lag[walk.arcOf[i] ?? -1] = planned
      pass(walk)
      for (const { event, due } of network.servings) expect(walk.time[walk.at[event] ?? -1]).toBe(due)
      const begins = new Map<string, Placement>(good.placements.map((one) => [one.activity, one]))
      for (const { draw, from } of network.arcs) {
        const of_ = of.activities[(draw === undefined ? undefined : network.draws[draw]?.activity) ?? -1]
        if (of_) expect(walk.time[walk.at[from] ?? -1], of_.id).toBeLessThanOrEqual(begins.get(of_.id)?.start ?? -1)
      }
    }
  })

  test('M7 its chances are within 2 points', () => {
    const of = problem({
      horizon: { from: 0, to: 400 },
      cooks: [cook('ann'), cook('bo')],
      kit: [
        { kind: 'oven', id: 'oven', place: 'home', shelves: 1, maxC: 250, up: 4, down: 1.5 },
        { kind: 'ring', id: 'ring', place: 'home', size: 2, count: 1 },
      ],
      servings: [first, serving('second')],
      deliveries: [delivery('soup', 'first'), delivery('roast', 'second')],
      activities: [
        activity('peel', varying('hands-on', 8, 10, 14), dish('soup')),
        activity('simmer', varying('eye', 20, 24, 34, { uses: [{ kind: 'ring', size: 1 }] }), dish('soup')),
        activity('ladle', varying('hands-on', 3, 4, 6, { cooks: 2 }), dish('soup')),
        activity(
          'roast',
          varying('leave', 40, 50, 75, {
            touches: [{ when: 'out', takes: 2, lateBy: 2 }],
            uses: [{ kind: 'oven', shelves: 1, lowC: 200, highC: 210, preheated: true }],
          }),
          dish('roast'),
        ),
        activity('carve', varying('hands-on', 6, 8, 12), dish('roast')),
        activity('gravy', varying('eye', 4, 6, 8, { uses: [{ kind: 'ring', size: 1 }] }), dish('roast')),
      ],
      lags: [lag('peel', 'simmer'), lag('simmer', 'ladle'), lag('roast', 'carve', { least: 6 }), lag('carve', 'gravy')],
    })
    const kit = [{ id: 'ring', unit: 0 }]
    const good = schedule(
      [
        placed('peel', 56, 66, { cooks: ['ann'] }),
        placed('simmer', 68, 92, { cooks: ['ann'], kit }),
        placed('ladle', 96, 100, { cooks: ['ann', 'bo'] }),
        placed('roast', 44, 94, { kit: [{ id: 'oven', unit: 0 }], touches: [{ touch: 0, at: 92, cook: 'bo' }] }),
        placed('carve', 102, 110, { cooks: ['bo'] }),
        placed('gravy', 110, 116, { cooks: ['bo'], kit }),
      ],
      at(['first', 100], ['second', 116]),
    )
    const fast = chances(of, good, { samples: 40_000, seed: 3 })
    const slow = simulateNights(of, good, 8_000, unitOf(dice(11)), triangle)
    for (const [i, { onTime: chance }] of fast.servings.entries()) {
      expect(chance).toBeGreaterThan(0.2)
      expect(chance).toBeLessThan(0.98)
      expect(Math.abs(chance - (slow.onTime[i] ?? -1))).toBeLessThan(0.02)
    }
    expect(Math.abs(fast.all - slow.all)).toBeLessThan(0.02)
  })

  test('M7 the same schedule, seed and samples give the same', () => {
    const { problem: of } = toProblem(loadEvening('a-lamb'))
    const good = solve(of, { steps: 200, seed: 1 })
    const once = (seed: number) => chances(of, good, { samples: 500, seed })
    expect(once(4)).toEqual(once(4))
    expect(once(5)).not.toEqual(once(4))
    expect(Math.abs(once(5).all - once(4).all)).toBeLessThan(0.1)
  })
})

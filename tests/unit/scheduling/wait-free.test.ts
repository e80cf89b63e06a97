import { describe, expect, test } from 'vitest'
import { toProblem } from '#lib/order/to-problem.ts'
import type { Problem } from '#lib/scheduling/problem.ts'
import type { Schedule } from '#lib/scheduling/schedule.ts'
import { solve } from '#lib/scheduling/solve.ts'
import { verify } from '#lib/scheduling/verify/verify.ts'
import { waitBeyond, waitFree, waitPrices } from '#lib/scheduling/wait-free.ts'
import { loadEvening } from '#tests/support/load-evening.ts'
import { lag } from '#tests/support/problem-builders.ts'
import { randomProblem } from '#tests/support/random-problem.ts'
import { activity, cook, delivery, mode, placed, problem, schedule, serving } from '#tests/support/small-problem.ts'

const first = serving('first', { role: { kind: 'first', sitDown: 100 }, eating: 20, clearing: 4 })
const second = serving('second')

/** Soup at 100 and a roast at 130: the roast is in the oven from 60, the soup is warmed before it is plated. */
const dinner = (parts: Partial<Problem> = {}): Problem =>
  problem({
    cooks: [cook('ann'), cook('bo')],
    servings: [first, second],
    deliveries: [
      delivery('soup', 'first', { early: 0, keeps: { most: 6, bound: 'quality', place: 'home', uses: [] } }),
      delivery('roast', 'second', { early: 0, keeps: { most: 30, bound: 'quality', place: 'home', uses: [] } }),
    ],
    activities: [
      activity('warm', mode('hands-on', 10), { delivery: 'soup' }),
      activity('ladle', mode('hands-on', 4), { delivery: 'soup', plating: true }),
      activity('bake', mode('leave', 50), { delivery: 'roast' }),
      activity('carve', mode('hands-on', 10), { delivery: 'roast' }),
    ],
    lags: [lag('warm', 'ladle', { most: 12 }), lag('bake', 'carve', { least: 5, most: 40 })],
    ...parts,
  })
const made = schedule(
  [
    placed('warm', 80, 90, { cooks: ['ann'] }),
    placed('ladle', 96, 100, { cooks: ['ann'] }),
    placed('bake', 60, 110),
    placed('carve', 120, 130, { cooks: ['bo'] }),
  ],
  {
    servings: [
      { serving: 'first', toTable: 100 },
      { serving: 'second', toTable: 130 },
    ],
  },
)
const free = (of: Problem, good: Schedule = made) => waitFree(of, good).map(({ by }) => by)

describe('V2 how long a serving can wait for nothing', () => {
  test('V1 V2 what is warm waits as long as its lag allows, what bakes is not put off', () => {
    // warm ended at 90, ladle may begin until 102; bake ends at 110, carve may begin until 150: 30 later.
    expect(free(dinner())).toEqual([6, 30])
  })

  test('V1 once the plates are filled only their keeping counts', () => {
    const served = dinner({ activities: dinner().activities.map((one) => ({ ...one, plating: false })) })
    expect(free(served)[0]).toBe(6)
    const keeps = { most: 2, bound: 'quality' as const, place: 'home', uses: [] }
    expect(
      free({ ...served, deliveries: [delivery('soup', 'first', { early: 0, keeps }), delivery('roast', 'second')] })[0],
    ).toBe(2)
  })

  test('V2 beyond it is told what gives first, and until when nothing else does', () => {
    const beyond = (of: Problem) => waitBeyond(of, made).map(({ beyond }) => beyond)
    // The soup's lag gives at 7 and is alone until the roast is carved more than 40 after baking. Once carved it keeps for 30.
    expect(beyond(dinner())).toEqual([
      { hurts: [{ kind: 'lag', lag: 0, safety: false }], by: 30 },
      { hurts: [{ kind: 'keeps', delivery: 'roast', safety: false }], by: 480 },
    ])
    const goes = dinner({ cooks: [cook('ann'), cook('bo', { presence: [{ place: 'home', from: 0, to: 133 }] })] })
    expect(beyond(goes)[0]).toEqual({ hurts: [{ kind: 'presence', activity: 'carve', cook: 'bo', safety: true }], by: null })
    expect(beyond(dinner({ servings: [{ ...first, fact: { toTable: 100 } }, second] }))[0]).toBeNull()
  })

  test('V2 on random problems nothing but what is named gives until then, and one tick later something else does', () => {
    let seen = 0
    for (let seed = 1; seed <= 30; seed += 1) {
      const of = randomProblem(seed)
      const good = solve(of, { steps: 60, seed })
      for (const { serving: id, beyond } of waitBeyond(of, good)) {
        const by = waitFree(of, good).find((one) => one.serving === id)?.by ?? null
        if (beyond === null || by === null) continue
        seen += 1
        const named = (later: number) => (waitPrices(of, good, id, [later])[0]?.hurts ?? []).map(({ by: _, ...hurt }) => hurt)
        expect(named(by)).toEqual([])
        expect(named(by + 1)).toEqual(beyond.hurts)
        expect(beyond.by === null).toBe(beyond.hurts.some(({ safety }) => safety))
        if (beyond.by === null) continue
        expect(named(beyond.by)).toEqual(beyond.hurts)
        if (beyond.by < 480) expect(named(beyond.by + 1).length).toBeGreaterThan(beyond.hurts.length)
      }
    }
    expect(seen).toBeGreaterThan(10)
  })

  test('V2 a cook who must go and a step that must be over end it', () => {
    const goes = (to: number) => dinner({ cooks: [cook('ann'), cook('bo', { presence: [{ place: 'home', from: 0, to }] })] })
    expect(free(goes(133))).toEqual([3, 30])
    const until = dinner().activities.map((one) => (one.id === 'carve' ? { ...one, to: 134 } : one))
    expect(free(dinner({ activities: until }))).toEqual([4, 30])
  })

  test('V2 what has been served waits no more, and what is past its keeping already is not free to wait', () => {
    const past = dinner({
      servings: [{ ...first, fact: { toTable: 100 } }, second],
      now: 101,
      activities: dinner().activities.map((one) => (one.id === 'carve' ? { ...one, plating: true } : one)),
      lags: [lag('bake', 'carve', { most: 8 })],
    })
    expect(free(past)).toEqual([null, 0])
  })

  test('V2 after that it costs the ticks of each broken wish, and says what suffers', () => {
    expect(waitPrices(dinner(), made, 'first', [5, 6, 8, 40])).toEqual([
      { later: 5, price: 0, hurts: [] },
      { later: 6, price: 0, hurts: [] },
      { later: 8, price: 2 * 300, hurts: [{ kind: 'lag', lag: 0, safety: false, by: 2 }] },
      {
        later: 40,
        price: (34 + 10) * 300,
        hurts: [
          { kind: 'lag', lag: 0, safety: false, by: 34 },
          { kind: 'lag', lag: 1, safety: false, by: 10 },
        ],
      },
    ])
    const safe = dinner({ lags: [lag('warm', 'ladle', { most: 12, bound: 'safety' })] })
    expect(waitPrices(safe, made, 'first', [10])).toEqual([
      { later: 10, price: 0, hurts: [{ kind: 'lag', lag: 0, safety: true, by: 4 }] },
    ])
  })
})

/** The schedule with a serving so much later, moved by hand: all that begins at the word or after it, and the servings. */
const moved = (of: Problem, good: Schedule, index: number, later: number): Schedule => {
  const due = good.servings[index]?.toTable ?? 0
  const own = of.deliveries.filter((one) => one.serving === of.servings[index]?.id).map(({ id }) => id)
  const plating = good.placements.filter((one) => {
    const of_ = of.activities.find(({ id }) => id === one.activity)
    return of_?.plating && !of_.fact && own.includes(of_.delivery ?? '')
  })
  const word = Math.max(of.now ?? Number.NEGATIVE_INFINITY, Math.min(due, ...plating.map(({ start }) => start)))
  const before = new Set(of.servings.flatMap(({ id, fact }, i) => (i < index || fact ? [id] : [])))
  const earlier = new Set(of.deliveries.flatMap((one) => (before.has(one.serving) ? [one.id] : [])))
  return {
    ...good,
    placements: good.placements.map((one) => {
      const act = of.activities.find(({ id }) => id === one.activity)
      if (act?.fact || earlier.has(act?.delivery ?? '') || one.start < word) return one
      const touches = one.touches.map((touch) => ({ ...touch, at: touch.at + later }))
      return { ...one, start: one.start + later, end: one.end + later, touches }
    }),
    servings: good.servings.map((one, i) => (i < index || of.servings[i]?.fact ? one : { ...one, toTable: one.toTable + later })),
    keeping: [],
  }
}

/** Ticks of broken W1-W3 and the number of steps out of their window or their cook's stay, as the verifier sees them. */
const harm = (of: Problem, schedule: Schedule) => {
  const verdict = verify(of, schedule)
  const bent = verdict.breaches.reduce(
    (sum, { kind, by }) => (kind === 'lag' || kind === 'keeps' || kind === 'carry' ? sum + by : sum),
    0,
  )
  return bent + verdict.violations.filter(({ rule }) => rule === 'H2' || rule === 'H9' || rule === 'H4').length * 1e6
}

test('V2 brute force on random problems: no tick less is dearer, and one more is', () => {
  let seen = 0
  for (let seed = 1; seed <= 60; seed++) {
    const of = randomProblem(seed)
    const good = solve(of, { steps: 60, seed })
    for (const [index, { serving: id, by }] of waitFree(of, good).entries()) {
      if (by === null) continue
      const now = harm(of, moved(of, good, index, 0))
      expect(harm(of, moved(of, good, index, by)), `seed ${seed}, ${id}, ${by} later`).toBe(now)
      if (by >= 480) continue
      expect(harm(of, moved(of, good, index, by + 1)), `seed ${seed}, ${id}, ${by + 1} later`).toBeGreaterThan(now)
      seen++
    }
  }
  expect(seen).toBeGreaterThan(30)
})

test('V2 evening A: brute force agrees, and the lamb is what cannot wait', () => {
  const { problem: of } = toProblem(loadEvening('a-lamb'))
  const good = solve(of, { steps: 1500, seed: 1 })
  const found = waitFree(of, good)
  expect(found.map(({ serving: id }) => id)).toEqual(['course-1', 'course-2', 'course-3', 'course-4'])
  for (const [index, { by }] of found.entries()) {
    const harmless = Array.from({ length: 120 }, (_, later) => harm(of, moved(of, good, index, later)))
    const brute = harmless.findIndex((one) => one > (harmless[0] ?? 0))
    if (brute < 0) expect(by).toBeGreaterThanOrEqual(119)
    else expect(by).toBe(brute - 1)
  }
})

import { describe, expect, test } from 'vitest'
import { toProblem } from '#lib/order/to-problem.ts'
import { chances } from '#lib/scheduling/chance/chances.ts'
import { lengthened, shortened } from '#lib/scheduling/chance/lengthen.ts'
import { sturdier } from '#lib/scheduling/chance/sturdier.ts'
import type { Problem } from '#lib/scheduling/problem.ts'
import type { Schedule } from '#lib/scheduling/schedule.ts'
import { solve } from '#lib/scheduling/solve.ts'
import { verify } from '#lib/scheduling/verify/verify.ts'
import { demoEvening } from '#prisma/demo/demo-evening.ts'
import { lag } from '#tests/support/problem-builders.ts'
import { randomEvening } from '#tests/support/random-evening.ts'
import { activity, cook, delivery, mode, placed, problem, schedule, serving } from '#tests/support/small-problem.ts'

const judgeOf = (of: Problem) => (made: Schedule) => {
  const verdict = verify(of, made)
  return verdict.violations.length > 0 ? null : verdict
}
const broken = (of: Problem, made: Schedule) => verify(of, made).breaches.reduce((sum, { by }) => sum + by, 0)
const worst = (of: Problem, made: Schedule) =>
  Math.min(...chances(of, made, { samples: 2000, seed: 77 }).servings.map(({ onTime }) => onTime))

const slow = { least: 20, likely: 30, most: 60 }
const tight = problem({
  cooks: [cook('ann')],
  servings: [serving('first', { role: { kind: 'first', sitDown: 150 }, earliest: 150 })],
  deliveries: [delivery('pie', 'first', { keeps: { most: 60, bound: 'quality', place: 'home', uses: [] } })],
  activities: [
    activity('bake', { ...mode('leave', 30), ...slow }, { delivery: 'pie' }),
    activity('plate', mode('hands-on', 5), { delivery: 'pie' }),
  ],
  lags: [lag('bake', 'plate', { most: 60 })],
})
const justInTime = schedule([placed('bake', 115, 145), placed('plate', 145, 150, { cooks: ['ann'] })], {
  servings: [{ serving: 'first', toTable: 150 }],
})

describe('M8 planning for a better chance', () => {
  test('M8 what holds a course back begins as much earlier as it may need, and no more', () => {
    expect(worst(tight, justInTime)).toBeLessThan(0.5)
    const made = sturdier(tight, justInTime, { steps: 600, seed: 1 }, judgeOf(tight))
    expect(worst(tight, made)).toBeGreaterThan(0.94)
    const bake = made.placements.find((one) => one.activity === 'bake')
    // 145 + 4 of grace − 60 at the longest.
    expect(bake?.start).toBeGreaterThanOrEqual(85)
    expect(bake?.start).toBeLessThanOrEqual(97)
  })

  test.each([
    ['the demo', demoEvening('2026-12-05')],
    ['random 1', randomEvening(1)],
    ['random 7', randomEvening(7)],
  ] as const)('M8 M9 S2 %s: likelier, at a price that it is worth, and the same again', (_, evening) => {
    const { problem: of } = toProblem(evening)
    const first = solve(of, { steps: 300, seed: 1 })
    const make = () => sturdier(of, first, { steps: 400, seed: 1 }, judgeOf(of))
    const made = make()
    expect(make()).toEqual(made)
    const [before, after] = [verify(of, first), verify(of, made)]
    expect(after.violations).toEqual([])
    expect(worst(of, made)).toBeGreaterThanOrEqual(worst(of, first) - 0.03)
    const short = (plan: Schedule) =>
      chances(of, plan, { samples: 2000, seed: 77 }).servings.reduce((sum, { onTime }) => sum + Math.max(0, 0.96 - onTime), 0)
    if (short(first) > 0.1) expect(short(made)).toBeLessThan(short(first))
    expect(broken(of, made)).toBeLessThanOrEqual(broken(of, first))
    expect(made.left.length).toBeLessThanOrEqual(first.left.length)
    expect(after.cost.goals['on-time']).toBeLessThanOrEqual(before.cost.goals['on-time'])
    expect(after.cost.total).toBeLessThanOrEqual(before.cost.total + 200)
  })

  test('M9 a plan that the judge refuses is not touched', () => {
    expect(sturdier(tight, justInTime, { steps: 100, seed: 1 }, () => null)).toBe(justInTime)
  })

  test('M8 more time for a step leaves room behind it, so that the shorter plan keeps its wishes', () => {
    const longer = lengthened(tight, new Map([['bake', 0.97]]))
    const more = (longer.activities[0]?.modes[0]?.likely ?? 0) - 30
    // 97 of 100 cases: 60 − √(0.03·40·30) = 54.
    expect(more).toBe(24)
    expect(longer.lags[0]?.most).toBe(60 - 24)
    const plan = schedule([placed('bake', 60, 114), placed('plate', 145, 150, { cooks: ['ann'] })], {
      servings: [{ serving: 'first', toTable: 150 }],
    })
    const made = shortened(tight, plan)
    expect(made.placements.map(({ start, end }) => [start, end])).toEqual([
      [60, 90],
      [145, 150],
    ])
    expect(broken(tight, made)).toBe(0)
  })
})

import { expect, test } from 'vitest'
import { verify } from '#lib/scheduling/verify/verify.ts'
import { activity, cook, mode, placed, problem, schedule } from '#tests/support/small-problem.ts'
import { expectRule } from './broken.ts'

const touches = [
  { when: 'in', takes: 1, lateBy: 0 },
  { when: { every: 10 }, takes: 2, lateBy: 3 },
  { when: 'out', takes: 2, lateBy: 4 },
] as const
const listed = (at: readonly [touch: number, at: number][], by = 'ann') =>
  at.map(([touch, moment]) => ({ touch, at: moment, cook: by }))
const cooks = [cook('ann')]

test('H10 touches are where the mode says, each as often as it occurs, by a known cook', () => {
  const evening = problem({ cooks, activities: [activity('roast', mode('leave', 30, { touches }))] })
  const at = (...moments: [number, number][]) => schedule([placed('roast', 5, 35, { touches: listed(moments) })])
  expectRule(evening, at([0, 5], [1, 18], [1, 25], [2, 37]), [
    [at([0, 6], [1, 18], [1, 25], [2, 37]), 'H10 late roast'],
    [at([0, 5], [1, 14], [1, 25], [2, 37]), 'H10 early roast'],
    [at([0, 5], [1, 19], [1, 25], [2, 37]), 'H10 late roast'],
    [at([0, 5], [1, 18], [1, 25], [2, 38]), 'H10 late roast'],
    [at([0, 5], [1, 18], [1, 25], [2, 32]), 'H10 early roast'],
    [at([0, 5], [1, 18], [1, 25]), 'H10 missing roast'],
    [at([0, 5], [1, 18], [1, 25], [2, 33], [2, 36]), 'H10 unknown roast'],
    [
      schedule([
        placed('roast', 5, 35, {
          touches: [
            ...listed([
              [0, 5],
              [1, 18],
              [1, 25],
            ]),
            { touch: 2, at: 36, cook: 'dee' },
          ],
        }),
      ]),
      'H10 unknown roast',
    ],
  ])
})

test('H10 of what is running only the touches to come are planned, and a missed one costs as much as a step left out', () => {
  const fact = { kind: 'running', start: 5, atLeast: 30 } as const
  const at = (now: number, ...moments: [number, number][]) => {
    const evening = problem({ cooks, now, activities: [activity('roast', mode('leave', 30, { touches }), { fact })] })
    return [evening, schedule([placed('roast', 5, Math.max(35, now), { touches: listed(moments) })])] as const
  }
  const [evening, good] = at(16, [1, 25], [2, 33])
  expectRule(evening, good, [
    [at(16, [1, 15], [1, 25], [2, 33])[1], 'H10 unknown roast'],
    [at(16, [1, 25], [2, 38])[1], 'H10 unknown roast'],
  ])
  expectRule(...at(50, [2, 50]), [[at(50, [2, 53])[1], 'H10 unknown roast']])
  expect(verify(...at(16, [1, 25], [2, 33])).cost.goals.safe).toBe(0)
  expectRule(...at(16, [2, 33]), [])
  expect(verify(...at(16, [2, 33])).cost.goals.safe).toBe(1_000_000)
})

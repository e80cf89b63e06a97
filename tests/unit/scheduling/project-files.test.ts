import { expect, test } from 'vitest'
import { readJobShop } from '#tests/bench/job-shop.ts'
import { readBest, readProject } from '#tests/bench/psplib.ts'
import { readOptima, readProjectMax } from '#tests/bench/rcpsp-max.ts'

/** Small files of our own in the published formats. */
const SM = `************************************************************************
jobs (incl. supersource/sink ):  4
horizon                       :  7
RESOURCES
  - renewable                 :  2   R
  - nonrenewable              :  0   N
************************************************************************
PRECEDENCE RELATIONS:
jobnr.    #modes  #successors   successors
   1        1          2           2   3
   2        1          1           3
   3        1          1           4
   4        1          0
************************************************************************
REQUESTS/DURATIONS:
jobnr. mode duration  R 1  R 2
------------------------------------------------------------------------
  1      1     0       0    0
  2      1     3       2    0
  3      1     4       1    5
  4      1     0       0    0
************************************************************************
RESOURCEAVAILABILITIES:
  R 1  R 2
    2    6
************************************************************************
`

test('J5 a project of PSPLIB is read without its dummies', () => {
  expect(readProject(SM, 'small.sm')).toEqual({
    lengths: Int32Array.of(3, 4),
    from: Int32Array.of(0, 0),
    to: Int32Array.of(7, 7),
    lags: [{ from: 0, to: 1, least: 3 }],
    stores: [
      { capacity: 2, needs: Int32Array.of(2, 1) },
      { capacity: 6, needs: Int32Array.of(0, 5) },
    ],
  })
  expect(readBest('Par Inst Makespan\n1\t1\t77\t\tTue Apr  2 1996\n 2  10  65')).toEqual(
    new Map([
      ['1_1', { unsat: false, best: 77 }],
      ['2_10', { unsat: false, best: 65 }],
    ]),
  )
})

const SCH = `2 1 0 0
0 1 2 1 2 [0] [4]
1 1 3 3 0 2 [5] [-9] [6]
2 1 2 3 1 [2] [-7]
3 1 0
0 1 0 0
1 1 5 1
2 1 2 3
3 1 0 0
3
`

test('J5 a project with maximum lags is read without its dummies, their lags as windows', () => {
  expect(readProjectMax(SCH, 'small.sch')).toEqual({
    lengths: Int32Array.of(5, 2),
    from: Int32Array.of(0, 4),
    to: Int32Array.of(14, 14),
    lags: [
      { from: 0, to: 1, least: 6 },
      { from: 1, to: 0, least: -7 },
    ],
    stores: [{ capacity: 3, needs: Int32Array.of(1, 3) }],
  })
  expect(readOptima('problem,optimum\na.sch,unsat\nb.sch,12\nc.sch,10..15')).toEqual(
    new Map([
      ['a.sch', { unsat: true }],
      ['b.sch', { unsat: false, least: 12, best: 12 }],
      ['c.sch', { unsat: false, least: 10, best: 15 }],
    ]),
  )
})

test('J5 a job shop is read: operations in order, machines as stores of one', () => {
  expect(readJobShop('# ours\n2 2\n0 3 1 2\n1 4 0 1\n', 'small.jss')).toEqual({
    lengths: Int32Array.of(3, 2, 4, 1),
    from: new Int32Array(4),
    to: new Int32Array(4).fill(10),
    lags: [
      { from: 0, to: 1, least: 3 },
      { from: 2, to: 3, least: 4 },
    ],
    stores: [
      { capacity: 1, needs: Int32Array.of(1, 0, 0, 1) },
      { capacity: 1, needs: Int32Array.of(0, 1, 1, 0) },
    ],
  })
})

test.each([
  ['not of this format', () => readProject('hello', 'x.sm'), /^x\.sm: no line is like/],
  [
    'cut short',
    () => readProject(SM.slice(0, SM.indexOf('  3      1     4')), 'x.sm'),
    /^x\.sm: REQUESTS\/DURATIONS ends after 2/,
  ],
  ['with words among its numbers', () => readProject(SM.replace('2    6', '2    x'), 'x.sm'), /^x\.sm: "2 {4}x" is not a line/],
  [
    'with two modes',
    () => readProject(SM.replace('2        1          1 ', '2        2          1 '), 'x.sm'),
    /job 2 has not one mode/,
  ],
  [
    'with a successor missing',
    () => readProject(SM.replace('2           2   3', '2           2'), 'x.sm'),
    /job 1 does not have 2 successors/,
  ],
  [
    'with stores that empty',
    () => readProjectMax(SCH.replace('2 1 0', '2 1 1'), 'x.sch'),
    /^x\.sch: has stores that do not fill again/,
  ],
  ['with a lag missing', () => readProjectMax(SCH.replace(' [-9]', ''), 'x.sch'), /is not activity 1 in one mode with its lags/],
  ['with an end that lags behind', () => readProjectMax(SCH.replace('[2]', '[3]'), 'x.sch'), /the lag 2 to 3 is more than/],
  ['with a capacity missing', () => readProjectMax(SCH.replace('2 1 0 0', '2 2 0 0'), 'x.sch'), /1 capacities for 2 stores/],
  ['with a job missing', () => readJobShop('3 1\n0 3\n0 2', 'x.jss'), /^x\.jss: 2 lines for 3 jobs/],
  ['with an operation missing', () => readJobShop('1 2\n0 3', 'x.jss'), /job 0 does not have 2 operations/],
  ['with a machine that is not there', () => readJobShop('1 1\n1 3', 'x.jss'), /job 0 wants machine 1/],
])('J5 a file %s is refused by name', (_, read, message) => {
  expect(read).toThrow(message)
})

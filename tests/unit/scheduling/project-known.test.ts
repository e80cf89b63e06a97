import { expect, test } from 'vitest'
import { isProject, projectOf, scheduleOf } from '#lib/scheduling/project/of-problem.ts'
import { type Project, spanOf } from '#lib/scheduling/project/project.ts'
import { type ProjectAnswer, solveProject } from '#lib/scheduling/project/solve-project.ts'
import { verify } from '#lib/scheduling/verify/verify.ts'
import { readJobShop } from '#tests/bench/job-shop.ts'
import { projectProblem } from '#tests/support/project-problem.ts'

/** Published projects, their figures typed in, planned as problems of the engine; the referee looks at every schedule. */
const answer = (project: Project, steps = 20_000): ProjectAnswer => {
  const problem = projectProblem(project)
  expect(isProject(problem)).toBe(true)
  const found = solveProject(projectOf(problem), { steps, seed: 1 })
  if (found.starts) expect(verify(problem, scheduleOf(problem, found.starts)).violations).toEqual([])
  return found
}

const lengthOf = (project: Project, { starts }: ProjectAnswer): number | null => starts && spanOf(project, starts)

/** Activities as length, needs, who waits for its end. */
const precedences = (
  activities: readonly [number, readonly number[], readonly number[]][],
  capacities: readonly number[],
): Project => {
  const lengths = Int32Array.from(activities, ([length]) => length)
  return {
    lengths,
    from: new Int32Array(lengths.length),
    to: new Int32Array(lengths.length).fill(lengths.reduce((sum, length) => sum + length, 0)),
    lags: activities.flatMap(([least, , after], from) => after.map((to) => ({ from, to, least }))),
    stores: capacities.map((capacity, store) => ({
      capacity,
      needs: Int32Array.from(activities, ([, needs]) => needs[store] ?? 0),
    })),
  }
}

/**
 * The six-activity network of a course handout (Cal Poly, CSC 308, critical path with people): A5 2p; B4 3p; C3(A) 1p; D7(B) 3p;
 * E2(C) 3p; F1(D,E) 1p. Unlimited it takes 12; with 5, 4 and 3 people 14, 19 and 22, computed by full enumeration.
 */
test.each([
  [6, 12],
  [5, 14],
  [4, 19],
  [3, 22],
])('J4 six activities with %i people take %i', (people, least) => {
  const project = precedences(
    [
      [5, [2], [2]],
      [4, [3], [3]],
      [3, [1], [4]],
      [7, [3], [5]],
      [2, [3], [5]],
      [1, [1], []],
    ],
    [people],
  )
  const found = answer(project)
  expect([lengthOf(project, found), found.proof]).toEqual([least, 'optimal'])
})

/** j301_1.sm of PSPLIB: Kolisch & Sprecher 1996, EJOR 96:205-216; its optimum: Demeulemeester & Herroelen 1995 (j30opt). */
test('J4 the first project of PSPLIB j30 takes 43', () => {
  const project = precedences(
    [
      [8, [4, 0, 0, 0], [4, 9, 13]],
      [4, [10, 0, 0, 0], [5, 6, 11]],
      [6, [0, 0, 0, 3], [3, 7, 8]],
      [3, [3, 0, 0, 0], [18]],
      [8, [0, 0, 0, 8], [28]],
      [5, [4, 0, 0, 0], [25]],
      [9, [0, 1, 0, 0], [10, 17, 25]],
      [2, [6, 0, 0, 0], [12]],
      [7, [0, 0, 0, 1], [14, 23]],
      [9, [0, 5, 0, 0], [18, 24]],
      [2, [0, 7, 0, 0], [12]],
      [6, [4, 0, 0, 0], [15, 16]],
      [3, [0, 8, 0, 0], [15]],
      [9, [3, 0, 0, 0], [23]],
      [10, [0, 0, 0, 5], [19, 20]],
      [6, [0, 0, 0, 8], [20]],
      [5, [0, 0, 0, 7], [18, 20]],
      [3, [0, 1, 0, 0], [22, 27]],
      [7, [0, 10, 0, 0], [21, 23]],
      [2, [0, 0, 0, 6], [26]],
      [7, [2, 0, 0, 0], [21]],
      [2, [3, 0, 0, 0], [22]],
      [3, [0, 9, 0, 0], [28]],
      [3, [4, 0, 0, 0], [28]],
      [7, [0, 0, 4, 0], [29]],
      [8, [0, 0, 0, 7], [26]],
      [3, [0, 8, 0, 0], [29]],
      [7, [0, 7, 0, 0], []],
      [2, [0, 7, 0, 0], []],
      [2, [0, 0, 2, 0], []],
    ],
    [12, 13, 4, 12],
  )
  const found = answer(project)
  expect([lengthOf(project, found), found.proof]).toEqual([43, 'optimal'])
})

/** Fisher & Thompson 1963, in Muth & Thompson, "Industrial Scheduling": machine and length of each operation. */
const FT06 = `6 6
2 1 0 3 1 6 3 7 5 3 4 6
1 8 2 5 4 10 5 10 0 10 3 4
2 5 3 4 5 8 0 9 1 1 4 7
1 5 0 5 2 5 3 3 4 8 5 9
2 9 1 3 4 5 5 4 0 3 3 1
1 3 3 3 5 9 0 10 4 4 2 1`

/** Lawrence 1984, "Resource constrained project scheduling" (supplement), instance 1 of 40. */
const LA01 = `10 5
1 21 0 53 4 95 3 55 2 34
0 21 3 52 4 16 2 26 1 71
3 39 4 98 1 42 2 31 0 12
1 77 0 55 4 79 2 66 3 77
0 83 3 34 2 64 1 19 4 37
1 54 2 43 4 79 0 92 3 62
3 69 4 77 1 87 2 87 0 93
2 38 0 60 1 41 3 24 4 83
3 17 1 49 4 25 0 44 2 98
4 77 3 79 2 43 1 75 0 96`

test.each([
  { name: 'FT06', text: FT06, least: 55 },
  { name: 'LA01', text: LA01, least: 666 },
])('J4 the job shop $name takes $least', ({ name, text, least }) => {
  const project = readJobShop(text, name)
  const found = answer(project)
  expect([lengthOf(project, found), found.proof]).toEqual([least, 'optimal'])
})

/** psp19 of the set ubo10 (ProGen/max: Kolisch, Schwindt, Sprecher 1999); its published optimum is 38. Lags as from, to, least. */
const PSP19: Project = {
  lengths: Int32Array.of(6, 3, 9, 8, 4, 9, 1, 4, 6, 4),
  from: new Int32Array(10),
  to: new Int32Array(10).fill(79),
  lags: [
    [0, 9, 4],
    [1, 5, 9],
    [2, 7, 5],
    [3, 6, 20],
    [4, 6, 3],
    [4, 1, -19],
    [4, 8, 5],
    [5, 4, 6],
    [6, 3, -25],
    [7, 2, -9],
  ].map(([from = 0, to = 0, least = 0]) => ({ from, to, least })),
  stores: [
    { capacity: 16, needs: Int32Array.of(5, 3, 2, 10, 0, 0, 6, 6, 3, 10) },
    { capacity: 11, needs: Int32Array.of(3, 6, 0, 6, 4, 3, 3, 1, 4, 1) },
    { capacity: 10, needs: Int32Array.of(5, 2, 0, 0, 2, 9, 8, 0, 2, 0) },
    { capacity: 11, needs: Int32Array.of(8, 4, 0, 0, 0, 7, 9, 3, 1, 1) },
    { capacity: 12, needs: Int32Array.of(0, 8, 8, 0, 7, 10, 8, 1, 5, 5) },
  ],
}

test('J4 a project with maximum lags takes its published 38', () => {
  const found = answer(PSP19)
  expect([lengthOf(PSP19, found), found.proof]).toEqual([38, 'optimal'])
})

/** psp37 of ubo10, published as unsatisfiable: its lags alone can be kept, with its stores they cannot. */
const PSP37: Project = {
  lengths: Int32Array.of(4, 8, 3, 4, 10, 3, 3, 7, 7, 8),
  from: new Int32Array(10),
  to: new Int32Array(10).fill(91),
  lags: [
    [0, 6, 10],
    [1, 2, -2],
    [2, 9, 1],
    [2, 4, 5],
    [2, 8, 6],
    [3, 5, -2],
    [3, 7, -1],
    [4, 6, 6],
    [4, 5, 25],
    [5, 7, 1],
    [5, 3, 2],
    [6, 4, -12],
    [9, 2, -3],
  ].map(([from = 0, to = 0, least = 0]) => ({ from, to, least })),
  stores: [
    { capacity: 9, needs: Int32Array.of(3, 3, 0, 9, 2, 3, 6, 5, 0, 0) },
    { capacity: 10, needs: Int32Array.of(0, 7, 10, 9, 1, 0, 0, 1, 2, 1) },
    { capacity: 10, needs: Int32Array.of(0, 6, 3, 7, 2, 0, 4, 8, 0, 0) },
    { capacity: 10, needs: Int32Array.of(7, 5, 2, 3, 5, 4, 6, 1, 6, 3) },
    { capacity: 10, needs: Int32Array.of(8, 2, 0, 7, 3, 1, 7, 3, 0, 7) },
  ],
}

test('J4 a project published as unsatisfiable is, and is not without its stores', () => {
  expect(answer(PSP37)).toMatchObject({ starts: null, proof: 'infeasible' })
  expect(answer({ ...PSP37, stores: [] }).proof).toBe('optimal')
})

test('J2 lags that wait for each other in a circle are named', () => {
  const circle = (least: number): Project => ({
    ...PSP19,
    stores: [],
    lags: [
      { from: 4, to: 7, least: 5 },
      { from: 7, to: 2, least: 1 },
      { from: 2, to: 4, least },
    ],
  })
  expect(answer(circle(-6)).proof).toBe('optimal')
  const found = answer(circle(-5))
  expect(found).toMatchObject({ starts: null, proof: 'infeasible' })
  expect(found.circle?.toSorted((a, b) => a - b)).toEqual([2, 4, 7])
})

test('J2 what needs more than a store holds is infeasible', () => {
  expect(answer(precedences([[2, [3], []]], [2])).proof).toBe('infeasible')
})

import type { Problem, Serving } from '#lib/scheduling/problem.ts'
import type { Schedule } from '#lib/scheduling/schedule.ts'
import { earliestEnd } from '#lib/scheduling/verify/scene.ts'
import { verify } from '#lib/scheduling/verify/verify.ts'
import { range } from './brute-options.ts'

/** One choice of all serving moments, with what it costs by itself (lateness and waits). */
export interface Moments {
  readonly servings: Schedule['servings']
  readonly cost: number
}

/**
 * Every choice of moments worth trying, the cheapest first. No serving gains by being later than both the last moment at
 * which anything can be ready and the shortest ideal wait after it could first come: being earlier only saves.
 */
export const momentsOf = (problem: Problem): Moments[] => {
  const bare: Problem = { ...problem, activities: [], deliveries: [] }
  return choices(problem)
    .map((moments) => moments.map((toTable, index) => ({ serving: problem.servings[index]?.id ?? '', toTable })))
    .filter((servings) => isAllowed(problem, servings))
    .map((servings) => ({
      servings,
      cost: verify(bare, { placements: [], servings, keeping: [], left: [] }).cost.total,
    }))
    .sort((a, b) => a.cost - b.cost)
}

/** H16, with the activities for what a welcome may wait for. */
const isAllowed = (problem: Problem, servings: Schedule['servings']): boolean =>
  verify(problem, { placements: [], servings, keeping: [], left: [] }).violations.every(({ rule }) => rule !== 'H16')

const choices = (problem: Problem): number[][] => {
  const lastReady = Math.max(
    problem.horizon.to,
    ...problem.activities.map(({ fact }) => {
      if (!fact) return problem.horizon.to
      return fact.kind === 'done' ? fact.end : earliestEnd(problem, fact)
    }),
  )
  return problem.servings.reduce<number[][]>(
    (all, serving, index) =>
      all.flatMap((before) =>
        momentsAfter(problem, serving, problem.servings[index - 1], before.at(-1), lastReady).map((moment) => [
          ...before,
          moment,
        ]),
      ),
    [[]],
  )
}

const momentsAfter = (
  problem: Problem,
  serving: Serving,
  previous: Serving | undefined,
  previousMoment: number | undefined,
  lastReady: number,
): number[] => {
  if (serving.fact) return [serving.fact.toTable]
  const off =
    previous && previousMoment !== undefined
      ? (previous.fact?.platesOff ?? previousMoment + previous.eating + previous.clearing) + serving.pouring
      : 0
  const least = Math.max(serving.earliest ?? 0, problem.now ?? 0, off)
  return range(least, Math.max(least, lastReady) + serving.wait.ideal[0])
}

import type { Problem } from '#lib/scheduling/problem.ts'
import type { Budget, Schedule } from '#lib/scheduling/schedule.ts'
import { isProject, projectOf, scheduleOf } from './of-problem.ts'
import { solveProject } from './solve-project.ts'

/** A schedule of a problem that is a pure project; nothing for every other problem, and when none was found. */
export const planProject = (problem: Problem, budget: Budget): Schedule | undefined => {
  if (!isProject(problem)) return undefined
  const { starts } = solveProject(projectOf(problem), budget)
  return starts ? scheduleOf(problem, starts) : undefined
}

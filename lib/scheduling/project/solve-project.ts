import { randomFrom } from '#lib/scheduling/random.ts'
import type { Budget } from '#lib/scheduling/schedule.ts'
import { direction } from './direction.ts'
import { desk } from './generate.ts'
import { advance, forwardBest, join, type ListSearch, listSearch } from './list-search.ts'
import { endBefore, endOf, type Net, newNet } from './net.ts'
import { pack } from './packed.ts'
import { type Circle, type Project, spanOf } from './project.ts'
import { propagate } from './propagate.ts'
import { grow, leave, newTree, type Tree } from './tree.ts'

export interface ProjectAnswer {
  /** The shortest schedule found; null when none was. */
  readonly starts: Int32Array | null
  /** optimal: nothing is shorter; infeasible: there is no schedule; none: the budget ended before either was known. */
  readonly proof: 'optimal' | 'infeasible' | 'none'
  /** No schedule is shorter than this; 0 when there is none at all. */
  readonly bound: number
  /** When lags alone leave no schedule: who waits for whom. */
  readonly circle?: Circle
  /** Schedules generated and nodes of the tree. */
  readonly steps: number
}

/**
 * The tree's part of the steps, times the number of activities: at first, for each generated schedule while it is young, until
 * this many, and for each one after that. A node costs more the more activities there are. Tuned on the _1 files of PSPLIB.
 */
const TREE = { first: 6_000, young: 30, youth: 120_000, later: 4 }

/** Two searches that help each other: lists find short schedules soon, the tree finds the rest and proves that there is no more. */
interface Race {
  readonly project: Project
  readonly tree: Tree
  /** None when lags have a circle or activities a latest end of their own: lists keep neither. */
  readonly lists: ListSearch | undefined
  best: Int32Array | null
  span: number
}

/**
 * The shortest schedule of a project, with a proof when the budget allows. The same project, seed and steps give the same;
 * more steps are never worse. A step is a schedule generated or a node of the tree; up to 80 more may be taken.
 */
export const solveProject = (project: Project, budget: Budget): ProjectAnswer => {
  const made = newNet(project)
  if (made.kind === 'circle') return none(made.circle)
  if (made.kind === 'infeasible' || !propagate(made.net)) return none()
  const tree = newTree(made.net)
  const race: Race = { project, tree, lists: listsOf(project, budget.seed), best: null, span: Number.MAX_SAFE_INTEGER }
  const stop = budget.stop ?? (() => false)
  do {
    if (runLists(race) || runTree(race, Math.min(share(race), budget.steps - spent(race)), stop)) {
      if (!race.best) return { ...none(), steps: spent(race) }
      return { starts: race.best, proof: 'optimal', bound: race.span, steps: spent(race) }
    }
  } while (spent(race) < budget.steps && !stop())
  return { starts: race.best, proof: 'none', bound: endOf(made.net), steps: spent(race) }
}

const none = (circle?: Circle): ProjectAnswer => ({
  starts: null,
  proof: 'infeasible',
  bound: 0,
  ...(circle && { circle }),
  steps: 0,
})

const spent = ({ tree, lists }: Race): number => tree.steps + (lists?.steps ?? 0)

/** How many nodes the tree may have now. Where choices settle everything it is much the better of the two. */
const share = ({ tree, lists, project }: Race): number => {
  if (!lists || tree.net.tables.length === 0) return Number.MAX_SAFE_INTEGER
  const part = Math.min(TREE.youth, TREE.first + TREE.young * lists.steps) + TREE.later * lists.steps
  return Math.ceil(part / project.lengths.length) - tree.steps
}

/** True when that proved what is best. */
const runLists = (race: Race): boolean => {
  const { lists, project } = race
  if (!lists) return false
  advance(lists)
  if (lists.span >= race.span || lists.span > (project.to[0] as number)) return false
  return !adopt(race, forwardBest(lists))
}

/** True when nothing better than the best is left. */
const runTree = (race: Race, steps: number, stop: () => boolean): boolean => {
  const { tree, lists, project } = race
  const last = tree.steps + steps
  while (tree.steps < last) {
    const outcome = grow(tree, last - tree.steps, stop)
    if (outcome === 'steps') return false
    if (outcome === 'none') return true
    const starts = project.lengths.map((_, i) => tree.net.trail.bound[2 * i] as number)
    leave(tree.net)
    if (!adopt(race, starts)) return true
    if (lists) join(lists, starts, race.span)
  }
  return false
}

/** From now on only what is shorter counts. False when nothing is. */
const adopt = (race: Race, starts: Int32Array): boolean => {
  const { net, wish } = race.tree
  race.best = starts
  race.span = spanOf(race.project, starts)
  wish.set(starts)
  wish[net.times - 1] = race.span
  for (let choice = net.times; choice < net.variables; choice++) wish[choice] = comesFirst(net, choice, starts) ? 1 : 0
  return endBefore(net, race.span) && propagate(net)
}

const comesFirst = ({ pairs }: Net, choice: number, starts: Int32Array): boolean => {
  const first = starts[(pairs[6 * choice] as number) >> 1] as number
  const second = starts[(pairs[6 * choice + 1] as number) >> 1] as number
  return first <= second
}

const listsOf = (project: Project, seed: number): ListSearch | undefined => {
  const last = Math.max(...project.to)
  if (project.to.some((end) => end < last)) return undefined
  const forth = direction(project, false)
  const back = direction(project, true)
  if (!forth || !back) return undefined
  const { lengths, stores } = project
  const weight = Float64Array.from(lengths, (_, i) =>
    stores.reduce((sum, { capacity, needs }) => sum + (needs[i] ? (needs[i] as number) / capacity : 0), 0),
  )
  const room = desk(pack(stores, lengths.length), lengths.length, Math.max(forth.longest, back.longest))
  return listSearch([forth, back], room, weight, randomFrom(seed))
}

import { analyse, type Notes, newNotes } from './analyse.ts'
import { addClause, forget } from './clauses.ts'
import type { Net } from './net.ts'
import { chosen, propagate } from './propagate.ts'
import { backTo, NO_REASON, openLevel, raise } from './trail.ts'

/** Clauses kept after the first restarts, conflicts in the shortest run, and how fast old conflicts are forgotten. */
const CLAUSES = 1000
const SHORTEST_RUN = 50
const COOLING = 0.95

/** A tree search over a net that can be left and gone on with. */
export interface Tree {
  readonly net: Net
  readonly notes: Notes
  /** How often a variable was part of recent conflicts. */
  readonly heat: Float64Array
  warm: number
  /** The value that each variable is tried at first, when there is one. */
  readonly wish: Int32Array
  /** Nodes: how often it propagated. */
  steps: number
  /** Conflicts since the last restart, and how many are allowed. */
  conflicts: number
  allowed: number
  restarts: number
  clauses: number
  mostClauses: number
}

export const newTree = (net: Net): Tree => ({
  net,
  notes: newNotes(net.variables),
  heat: new Float64Array(net.variables),
  warm: 1,
  wish: new Int32Array(net.variables).fill(1, net.times),
  steps: 0,
  conflicts: 0,
  allowed: SHORTEST_RUN,
  restarts: 0,
  clauses: 0,
  mostClauses: CLAUSES,
})

/** found: the lower bounds of all starts are a schedule. */
export type Outcome = 'found' | 'none' | 'steps'

/** Takes up to `steps` nodes (or until `stop`) to find a schedule or that there is none. What it learned stays for the next time. */
export const grow = (tree: Tree, steps: number, stop: () => boolean): Outcome => {
  const { net } = tree
  const last = tree.steps + steps
  for (;;) {
    if (tree.steps >= last || (tree.steps % 32 === 31 && stop())) {
      leave(net)
      return 'steps'
    }
    tree.steps += 1
    if (!propagate(net)) {
      if (!learn(tree)) return 'none'
    } else if (tree.conflicts >= tree.allowed) restart(tree)
    else if (!decide(tree)) return 'found'
  }
}

/** Takes back every decision. */
export const leave = ({ trail, dirty }: Net): void => {
  backTo(trail, 0)
  dirty.fill(1)
}

/** Goes back to where the last conflict could have been foreseen. False when it holds whatever is decided. */
const learn = (tree: Tree): boolean => {
  const { net, notes, heat } = tree
  const { trail } = net
  const met = (variable: number): void => {
    heat[variable] = (heat[variable] as number) + tree.warm
  }
  if (!analyse(trail, notes, met)) return false
  tree.warm /= COOLING
  if (tree.warm > 1e100) cool(tree)
  tree.conflicts += 1
  backTo(trail, notes.level)
  net.dirty.fill(1)
  let reason = NO_REASON
  if (notes.size > 2) {
    reason = addClause(trail, net.watches, notes.learned, notes.size, notes.levels)
    tree.clauses += 1
  }
  return raise(trail, notes.learned[0] as number, notes.learned[1] as number, reason)
}

const restart = (tree: Tree): void => {
  const { net } = tree
  leave(net)
  tree.conflicts = 0
  tree.restarts += 1
  tree.allowed = SHORTEST_RUN * luby(tree.restarts + 1)
  if (tree.clauses <= tree.mostClauses) return
  tree.clauses = forget(net.trail, net.watches)
  tree.mostClauses += CLAUSES / 8
}

/** 1 1 2 1 1 2 4 … (Luby, Sinclair, Zuckerman 1993). */
const luby = (at: number): number => {
  let size = 1
  while (size < at + 1) size *= 2
  if (size === at + 1) return size / 2
  return luby(at - size / 2 + 1)
}

const cool = (tree: Tree): void => {
  for (let v = 0; v < tree.heat.length; v++) tree.heat[v] = (tree.heat[v] as number) * 1e-100
  tree.warm *= 1e-100
}

/**
 * Decides one variable, or says that none is left to decide. The first run takes the earliest start and keeps it there; later
 * ones the variable of the most recent conflicts, near its wish (phase saving and solution-guided search: Beck 2007, J. Artif.
 * Intell. Res. 29:49-77). Without tables the choices settle everything.
 */
const decide = (tree: Tree): boolean => {
  const { net, wish } = tree
  const { trail, times } = net
  const first = tree.restarts === 0
  const pick = first ? earliest(net) : hottest(tree)
  if (pick < 0) return false
  openLevel(trail)
  if (pick >= times) {
    const side = 2 * pick + (wish[pick] === 0 ? 1 : 0)
    return raise(trail, side, chosen(side), NO_REASON)
  }
  const lo = trail.bound[2 * pick] as number
  const hi = -(trail.bound[2 * pick + 1] as number)
  const to = first ? lo : Math.min(Math.max(wish[pick] as number, lo), hi)
  return to > lo ? raise(trail, 2 * pick, to, NO_REASON) : raise(trail, 2 * pick + 1, -lo, NO_REASON)
}

/** The start (or the end of all) that may be the earliest, the more pressing one of two; −1 when all are fixed. */
const earliest = ({ trail: { bound }, times }: Net): number => {
  let pick = -1
  let least = Number.MAX_SAFE_INTEGER
  for (let v = 0; v < times; v++) {
    const lo = bound[2 * v] as number
    const hi = -(bound[2 * v + 1] as number)
    if (lo === hi || lo > least || (lo === least && hi >= -(bound[2 * pick + 1] as number))) continue
    least = lo
    pick = v
  }
  return pick
}

const hottest = ({ net: { trail, tables, times, variables }, heat }: Tree): number => {
  const { bound } = trail
  let pick = -1
  let most = -1
  for (let v = tables.length > 0 ? 0 : times; v < variables; v++) {
    if ((heat[v] as number) <= most || (bound[2 * v] as number) + (bound[2 * v + 1] as number) === 0) continue
    most = heat[v] as number
    pick = v
  }
  return pick
}

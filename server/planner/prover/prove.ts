import type { Problem } from '#lib/scheduling/problem.ts'
import type { Schedule } from '#lib/scheduling/schedule.ts'
import { solve } from '#lib/scheduling/solve.ts'
import { verify } from '#lib/scheduling/verify/verify.ts'
import { HUNDREDTHS } from './price.ts'
import type { Answer, ModelProto } from './proto.ts'
import { readAnswer } from './read-answer.ts'
import { writeModel } from './write-model.ts'

/** Solves a model with so much work (the solver's own deterministic seconds); null when it could not. */
export type Ask = (model: ModelProto, work: number) => Promise<Answer | null>

export interface Proof {
  /** The cheapest schedule known, accepted by the verifier. */
  readonly schedule: Schedule
  readonly cost: number
  /** No schedule costs less. */
  readonly bound: number
}

/**
 * The work of each question in turn. With who does what left open the model is small, its bound good, and what it finds is
 * then given to cooks; what is left of the gap is for the whole model. A better known schedule makes the next one smaller.
 */
const QUESTIONS = [
  { open: true, work: 0.05 },
  { open: true, work: 0.25 },
  { open: false, work: 0.8 },
] as const

export interface Patience {
  /** A gap of so much of the cost is near enough. */
  readonly near?: number
  /** When the model with cooks left open still has a gap of so much after its last question, or thrice that after its first, that is the end. */
  readonly hopeless?: number
  /** Times the work of the whole model. */
  readonly whole?: number
}

/** Work of giving what starts when to cooks. */
const GIVING = 0.1
/** The quick tier's steps on what the solver found, for what its model leaves out. */
const POLISH = 3_000
/** Costs are whole hundredths; the rest is what adding them up in binary leaves. */
const NO_LESS = 1 / HUNDREDTHS - 1e-4

export const isBest = ({ cost, bound }: Pick<Proof, 'cost' | 'bound'>): boolean => cost - bound < NO_LESS

/** Whether the model says all there is to say of this problem but for what can only add to the cost. */
export const canProve = (problem: Problem): boolean =>
  problem.activities.every(({ fact, modes }) => !fact && modes.length > 0) && problem.servings.every(({ fact }) => !fact)

/**
 * The best schedule, or how much cheaper one may be: the solver's bound is of a model that allows everything the rules
 * allow at no higher price, its schedule counts for what the verifier says it costs.
 */
export const prove = async (problem: Problem, known: Schedule, ask: Ask, patience: Patience = {}): Promise<Proof> => {
  const { near = 0, hopeless = Number.POSITIVE_INFINITY, whole = 1 } = patience
  let best = { schedule: known, cost: verify(problem, known).cost.total }
  let bound = 0
  const adopt = (found: Schedule | null) => {
    for (const schedule of found ? [found, solve(problem, { steps: POLISH, seed: 1 }, found)] : []) {
      const { violations, cost } = verify(problem, schedule)
      if (violations.length === 0 && cost.total < best.cost) best = { schedule, cost: cost.total }
    }
  }
  for (const [index, { open, work }] of QUESTIONS.entries()) {
    const isWhole = best.schedule.left.length === 0
    const most = isWhole ? best.cost : problem.weights.left
    const { proto, written } = writeModel(problem, { known: isWhole ? best.schedule : undefined, most, least: bound, open })
    const answer = await ask(proto, open ? work : work * whole)
    if (!answer) break
    if (isWhole && answer.status === 'INFEASIBLE') throw new Error('the model forbids what the rules allow')
    bound = Math.max(bound, Math.min(boundOf(answer, most), problem.weights.left))
    const found = answer.solution.length > 0 ? readAnswer(problem, written, answer.solution) : null
    if (found && open) {
      const giving = writeModel(problem, { most: problem.weights.left, pinned: found })
      const given = await ask(giving.proto, GIVING)
      if (!given) break
      if (given.solution.length > 0) adopt(readAnswer(problem, giving.written, given.solution))
    } else adopt(found)
    if (isBest({ cost: best.cost, bound }) || best.cost - bound <= near * best.cost) break
    if (open && answer.cost / HUNDREDTHS - bound > hopeless * bound * (index === 0 ? 3 : 1)) break
  }
  return { ...best, bound: Math.min(bound, best.cost) }
}

const boundOf = ({ status, bound }: Answer, most: number): number => {
  if (status === 'MODEL_INVALID') throw new Error('the solver refuses the model')
  // Nothing costs as little as what is known: the model is cut off there.
  if (status === 'INFEASIBLE') return most
  return Number.isFinite(bound) ? Math.ceil(bound - 1e-6) / HUNDREDTHS : 0
}

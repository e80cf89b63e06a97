import { type Demand, demandsOf, relaxed, type Wish, wishesOf, wishKey } from '#lib/scheduling/fight-relax.ts'
import type { Problem } from '#lib/scheduling/problem.ts'
import type { Schedule } from '#lib/scheduling/schedule.ts'
import { verify } from '#lib/scheduling/verify/verify.ts'
import { type Ask, canProve } from './prove.ts'
import { writeModel } from './write-model.ts'

/** Work of the first question, and of each of those that look for fewer. */
const WHETHER = 0.25
const FEWER = 0.05

/**
 * Wishes that no schedule keeps all of, with all kit, cooks and times as they are: none can be spared as far as the solver
 * can tell. Null when that is not proved, or the known schedule leaves something out or breaks nothing. Sound, as the model
 * allows whatever the rules allow (N1); that without wishes there is a schedule, the known one shows.
 */
export const proveFight = async (problem: Problem, known: Schedule, ask: Ask): Promise<readonly Wish[] | null> => {
  if (!canProve(problem) || known.left.length > 0) return null
  const broken = new Set(verify(problem, known).breaches.map(wishKey))
  if (broken.size === 0) return null
  const given = demandsOf(problem, new Set()).filter(({ kind }) => kind !== 'wish')
  const cannotBe = async (wishes: readonly Wish[], work: number): Promise<boolean> => {
    const asked = relaxed(problem, [...given, ...wishes.map((wish): Demand => ({ kind: 'wish', wish }))], new Set())
    const answer = await ask(writeModel(asked, { most: 0, open: true }).proto, work)
    return answer?.status === 'INFEASIBLE'
  }
  const isBroken = (wish: Wish): boolean => broken.has(wishKey(wish))
  // What is spared first is what the known schedule keeps.
  const all = wishesOf(problem)
  let fight: readonly Wish[] = [...all.filter((wish) => !isBroken(wish)), ...all.filter(isBroken)]
  if (!(await cannotBe(fight, WHETHER))) return null
  for (let size = Math.ceil(fight.length / 2); size >= 1; size = size === 1 ? 0 : Math.ceil(size / 2))
    for (let from = 0; from < fight.length; ) {
      const fewer = [...fight.slice(0, from), ...fight.slice(from + size)]
      if (fewer.length > 0 && (await cannotBe(fewer, FEWER))) fight = fewer
      else from += size
    }
  return fight
}

import type { Problem, Serving } from '#lib/scheduling/problem.ts'
import { earliestEnd, type Scene } from './scene.ts'
import { type Violation, violation } from './violation.ts'

/** H16: every serving once, in order, each when the one before is eaten, cleared and poured for; served ones as they were. */
export const h16 = ({ problem, schedule, served }: Scene): Violation[] => {
  const wanted = problem.servings.map(({ id }) => id)
  const found = schedule.servings.map(({ serving }) => serving)
  if (wanted.length !== found.length || wanted.some((id, index) => id !== found[index]))
    return [violation('H16', 0, { what: 'order', wanted: wanted.length, found: found.length }, { servings: found })]
  return served.flatMap(({ serving, moment }, index) => {
    const tell = (what: 'early' | 'late' | 'moved', limit: number) =>
      violation('H16', moment, { what, wanted: limit, found: moment }, { servings: [serving.id] })
    if (serving.fact) return moment === serving.fact.toTable ? [] : [tell('moved', serving.fact.toTable)]
    const before = served[index - 1]
    const earliest = Math.max(
      serving.earliest ?? Number.NEGATIVE_INFINITY,
      problem.now ?? Number.NEGATIVE_INFINITY,
      before ? before.platesOff + serving.pouring : Number.NEGATIVE_INFINITY,
    )
    const latest = latestOf(problem, serving)
    return [...(moment < earliest ? [tell('early', earliest)] : []), ...(moment > latest ? [tell('late', latest)] : [])]
  })
}

/** A welcome ends with sit-down, unless its earliest moment, the clock or what is already cooking for it are past that. */
const latestOf = (problem: Problem, serving: Serving): number => {
  if (serving.role.kind !== 'welcome') return Number.POSITIVE_INFINITY
  const cooking = problem.deliveries
    .filter((delivery) => delivery.serving === serving.id)
    .flatMap(({ id, late }) =>
      problem.activities
        .filter((activity) => activity.delivery === id)
        .flatMap(({ fact }) => (fact?.kind === 'running' ? [earliestEnd(problem, fact) - late] : [])),
    )
  return Math.max(
    serving.role.latest,
    serving.earliest ?? Number.NEGATIVE_INFINITY,
    problem.now ?? Number.NEGATIVE_INFINITY,
    ...cooking,
  )
}

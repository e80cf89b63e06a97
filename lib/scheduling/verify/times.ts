import type { Problem } from '#lib/scheduling/problem.ts'
import { earliestEnd, type Placed, type Scene } from './scene.ts'
import { roundUp } from './span.ts'
import { type Violation, violation } from './violation.ts'

/** H1: every activity is placed once or left out, nothing else, in order; facts are placed, in the mode last told. */
export const h1 = ({ problem, schedule }: Scene): Violation[] => {
  const found: Violation[] = []
  const tell = (activity: string, what: 'missing' | 'unknown' | 'twice' | 'order' | 'moved', at = 0) =>
    found.push(violation('H1', at, { what }, { activities: [activity] }))
  const listed = [...schedule.placements.map((placement) => placement.activity), ...schedule.left.map((left) => left.activity)]
  for (const activity of problem.activities) {
    const times = listed.filter((id) => id === activity.id).length
    if (times === 0) tell(activity.id, 'missing')
    if (times > 1) tell(activity.id, 'twice')
    if (activity.fact && schedule.left.some((left) => left.activity === activity.id)) tell(activity.id, 'missing')
  }
  for (const id of new Set(listed)) if (!problem.activities.some((activity) => activity.id === id)) tell(id, 'unknown')
  for (const [index, placement] of schedule.placements.entries()) {
    const activity = problem.activities.find(({ id }) => id === placement.activity)
    if (activity && !activity.modes[placement.mode]) tell(activity.id, 'unknown', placement.start)
    if (activity?.fact && placement.mode !== modeOfFact(problem, activity.id)) tell(activity.id, 'moved', placement.start)
    const before = schedule.placements[index - 1]
    if (before && (before.start > placement.start || (before.start === placement.start && before.activity > placement.activity)))
      tell(placement.activity, 'order', placement.start)
  }
  return found
}

const modeOfFact = (problem: Problem, id: string): number =>
  problem.previous?.find((previous) => previous.activity === id)?.mode ?? 0

/** H2: planned activities lie in the horizon and in their own window, and start no earlier than now. */
export const h2 = ({ problem, placed }: Scene): Violation[] =>
  placed
    .filter(({ planned }) => planned)
    .flatMap(({ activity, start, end }) => {
      const from = Math.max(problem.horizon.from, activity.from ?? problem.horizon.from, problem.now ?? problem.horizon.from)
      const to = Math.min(problem.horizon.to, activity.to ?? problem.horizon.to)
      const parties = { activities: [activity.id] }
      return [
        ...(start < from ? [violation('H2', start, { what: 'early', wanted: from, found: start }, parties)] : []),
        ...(end > to ? [violation('H2', end, { what: 'late', wanted: to, found: end }, parties)] : []),
      ]
    })

/** H3: planned lengths are those of the mode and its cooks; facts keep their times. */
export const h3 = (scene: Scene): Violation[] =>
  scene.placed.flatMap((one) => {
    const parties = { activities: [one.activity.id] }
    if (one.fact && one.start !== one.fact.start)
      return [violation('H3', one.start, { what: 'moved', wanted: one.fact.start, found: one.start }, parties)]
    const [least, most] = lengths(scene, one)
    const length = one.end - one.start
    if (length >= least && length <= most) return []
    return [violation('H3', one.start, { what: 'length', wanted: length < least ? least : most, found: length }, parties)]
  })

const lengths = (scene: Scene, { fact, mode, placement }: Placed): [least: number, most: number] => {
  if (fact?.kind === 'done') return [fact.end - fact.start, fact.end - fact.start]
  if (fact) {
    const least = earliestEnd(scene.problem, fact) - fact.start
    return [least, mode.care === 'leave' ? Math.max(least, mode.upTo ?? least) : least]
  }
  if (mode.care === 'leave') return [mode.likely, mode.upTo ?? mode.likely]
  if (mode.care === 'eye') return [mode.likely, mode.likely]
  const paces = placement.cooks.flatMap((id) => scene.cooks.get(id)?.pace ?? [])
  const length = roundUp(mode.likely * (paces.length > 0 ? Math.max(...paces) : 1))
  return [length, length]
}

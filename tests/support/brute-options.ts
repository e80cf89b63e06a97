import type { Activity, Kit, Mode, Problem, Use } from '#lib/scheduling/problem.ts'
import type { KitUse, Placement } from '#lib/scheduling/schedule.ts'
import { earliestEnd, serves } from '#lib/scheduling/verify/scene.ts'
import { roundUp } from '#lib/scheduling/verify/span.ts'
import { owedOf } from '#lib/scheduling/verify/touches.ts'
import { verify } from '#lib/scheduling/verify/verify.ts'
import { schedule } from './small-problem.ts'

/** Every way of placing one activity that breaks no rule by itself. Starts and ends lie in the horizon. */
export const placementsOf = (problem: Problem, activity: Activity): Placement[] =>
  activity.modes
    .flatMap((_, index) => placementsIn(problem, activity, index))
    .filter((placement) => isGoodAlone(problem, activity, placement))

/** An oven that is too cold for the first dish may be hot when it is the second: that is for the whole to judge. */
const isGoodAlone = (problem: Problem, activity: Activity, placement: Placement): boolean => {
  const alone: Problem = { ...problem, activities: [activity], lags: [], together: [], servings: [], deliveries: [] }
  return verify(alone, schedule([placement])).violations.every(({ rule, why }) => rule === 'H14' && why.what === 'ramp')
}

const placementsIn = (problem: Problem, activity: Activity, index: number): Placement[] => {
  const mode = activity.modes[index]
  if (!mode) return []
  const servable = kitChoices(problem.kit, mode.uses, activity.place)
  const kits = servable.length === 0 && activity.fact ? [[]] : servable
  return cookChoices(problem, activity, mode).flatMap((cooks) =>
    timesOf(problem, activity, mode, cooks).flatMap(([start, end]) =>
      touchChoices(problem, activity, mode, start, end).flatMap((touches) =>
        kits.map((kit) => ({ activity: activity.id, mode: index, start, end, cooks, kit, touches })),
      ),
    ),
  )
}

const timesOf = (problem: Problem, { fact }: Activity, mode: Mode, cooks: readonly string[]): [start: number, end: number][] => {
  if (fact?.kind === 'done') return [[fact.start, fact.end]]
  if (fact) {
    const least = earliestEnd(problem, fact)
    const most = mode.care === 'leave' && mode.upTo !== undefined ? Math.max(least, fact.start + mode.upTo) : least
    return range(least, most).map((end) => [fact.start, end])
  }
  const pace = Math.max(...cooks.map((id) => problem.cooks.find((cook) => cook.id === id)?.pace ?? 1))
  const least = mode.care === 'hands-on' ? roundUp(mode.likely * pace) : mode.likely
  const most = mode.care === 'leave' ? (mode.upTo ?? least) : least
  const { from, to } = problem.horizon
  return range(least, most).flatMap((length) =>
    range(from, to - length).map((start): [number, number] => [start, start + length]),
  )
}

const cookChoices = ({ cooks }: Problem, { fact }: Activity, mode: Mode): (readonly string[])[] => {
  if (fact) return [fact.cooks ?? []]
  const count = { 'hands-on': mode.cooks, eye: 1, leave: 0 }[mode.care]
  return subsets(
    cooks.map(({ id }) => id),
    count,
  )
}

const touchChoices = (problem: Problem, { fact }: Activity, mode: Mode, start: number, end: number): Placement['touches'][] => {
  const owed = owedOf(problem, { mode, ...(fact ? { fact } : {}), start, end })
  const choices = owed.map(({ touch, from, to }): Placement['touches'][] => [
    ...range(from, to).flatMap((at) => problem.cooks.map(({ id }) => [{ touch, at, cook: id }])),
    ...(fact ? [[]] : []),
  ])
  return product(choices).map((each) => each.flat())
}

/** One kit for each use. Empty for no uses; nothing when a use cannot be served. */
export const kitChoices = (kit: readonly Kit[], uses: readonly Use[], place: string): (readonly KitUse[])[] =>
  product(
    uses.map((use) =>
      kit.flatMap((each) =>
        range(0, each.kind === 'ring' ? each.count - 1 : 0)
          .filter((unit) => serves(each, unit, use, place))
          .map((unit) => ({ id: each.id, unit })),
      ),
    ),
  )

export const range = (from: number, to: number): number[] =>
  Array.from({ length: Math.max(0, to - from + 1) }, (_, at) => from + at)

export const product = <T>(choices: readonly (readonly T[])[]): T[][] =>
  choices.reduce<T[][]>((whole, next) => whole.flatMap((head) => next.map((item) => [...head, item])), [[]])

const subsets = <T>(items: readonly T[], count: number): T[][] => {
  if (count === 0) return [[]]
  return items.flatMap((item, at) => subsets(items.slice(at + 1), count - 1).map((rest) => [item, ...rest]))
}

import { secondsOf } from '#lib/domain/duration.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { Kit, Use } from '#lib/domain/kitchen.ts'
import type { Dish, Step, Way } from '#lib/domain/menu.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { msOfInstant } from '#lib/domain/time.ts'
import type { Heat, HeatChange, Warning } from './warning.ts'

type OvenUse = Extract<Use, { kind: 'oven' }>

interface Held {
  readonly heat: Heat
  readonly oven: string
  /** Seconds: of the clock with a running order, otherwise from the moment at which the course is served. */
  readonly from: number
  readonly to: number
}

const HOUR_SECONDS = 3600

/**
 * Dishes that want heats from one oven that do not meet, less than an hour from each other, one warning for each oven of a course. With a
 * running order by its ovens and times. Without one only within a course, where a kitchen has but one oven and no way goes without it.
 */
export const ovenHeats = (evening: Evening, order: RunningOrder | null): Warning[] => {
  const groups = order ? [plannedHeats(evening, order)] : evening.courses.map((course) => methodHeats(evening, course.id))
  const pairs = groups.flatMap(closestPairs)
  const courses = new Map(evening.dishes.map((dish) => [dish.id, dish.course]))
  return evening.courses.flatMap((course) =>
    ovensOf(evening).flatMap((oven) => {
      const those = pairs.filter(({ next }) => next.oven === oven.id && courses.get(next.heat.dish) === course.id)
      const changes = those.map(({ first, next }) => ({ first: first.heat, next: next.heat, seconds: next.from - first.to }))
      const inTime = order ? changes.every((change) => change.seconds >= changeSeconds(change, oven)) : null
      return changes.length === 0 ? [] : [{ kind: 'oven-heat' as const, course: course.id, oven: oven.id, changes, inTime }]
    }),
  )
}

type Oven = Extract<Kit, { kind: 'oven' }>

const ovensOf = ({ kitchens }: Evening): Oven[] =>
  kitchens.flatMap(({ kit }) => kit.filter((piece): piece is Oven => piece.kind === 'oven'))

/** The least that an oven takes from the nearer end of one heat to that of the other. */
const changeSeconds = ({ first, next }: HeatChange, { upPerMin, downPerMin }: Oven): number =>
  next.lowC > first.highC ? ((next.lowC - first.highC) / upPerMin) * 60 : ((first.lowC - next.highC) / downPerMin) * 60

interface Pair {
  readonly first: Held
  readonly next: Held
}

/** Of each dish the closest that is in its oven before it; once each, whichever of them is first. */
const closestPairs = (held: readonly Held[]): Pair[] => {
  const pairs = new Map<string, Pair>()
  const sorted = held.toSorted((a, b) => a.from - b.from || a.to - b.to || (a.heat.step < b.heat.step ? -1 : 1))
  for (const [at, next] of sorted.entries())
    for (const first of sorted.slice(0, at)) {
      if (first.oven !== next.oven || first.heat.dish === next.heat.dish || meets(first.heat, next.heat)) continue
      if (next.from - first.to >= HOUR_SECONDS) continue
      const before = pairs.get(next.heat.dish)
      if (!before || next.from - first.to < before.next.from - before.first.to) pairs.set(next.heat.dish, { first, next })
    }
  return [...pairs.values()].filter(
    ({ first, next }, at, all) =>
      !all.slice(0, at).some((other) => other.first.heat.dish === next.heat.dish && other.next.heat.dish === first.heat.dish),
  )
}

const meets = (a: Heat, b: Heat): boolean => a.lowC <= b.highC && b.lowC <= a.highC

const ovenOf = (uses: readonly Use[]): OvenUse | undefined => uses.find((use): use is OvenUse => use.kind === 'oven')

const plannedHeats = (evening: Evening, order: RunningOrder): Held[] => {
  const ovens = new Set(ovensOf(evening).map(({ id }) => id))
  const steps = new Map(evening.steps.map((step) => [step.id, step]))
  return order.cues.flatMap((cue) => {
    const step = steps.get(cue.step)
    const use = ovenOf(step?.ways[cue.way]?.uses ?? [])
    const oven = cue.kit.find(({ id }) => ovens.has(id))?.id
    if (!step?.dish || !use || oven === undefined) return []
    const [from, to] = [msOfInstant(cue.start) / 1000, msOfInstant(cue.end) / 1000]
    return [{ heat: { dish: step.dish, step: step.id, lowC: use.lowC, highC: use.highC }, oven, from, to }]
  })
}

const methodHeats = (evening: Evening, course: string): Held[] =>
  evening.dishes
    .filter((dish) => dish.course === course && dish.state === 'on')
    .flatMap((dish) => {
      const ovens = evening.kitchens.find(({ id }) => id === dish.kitchen)?.kit.filter(({ kind }) => kind === 'oven') ?? []
      const steps = evening.steps.filter((step) => step.dish === dish.id)
      const only = ovens.length === 1 ? ovens[0]?.id : undefined
      return only === undefined ? [] : steps.flatMap((step) => methodHeat(dish, step, steps, only) ?? [])
    })

/** A step whose every way is in the oven, at the widest of their heats; not what is done ahead. */
const methodHeat = (dish: Dish, step: Step, steps: readonly Step[], oven: string): Held | null => {
  const uses = step.ways.map((way) => ovenOf(way.uses))
  if (step.role !== 'make' || step.latest !== undefined || uses.some((use) => use === undefined)) return null
  const to = -secondsAfter(step, steps, new Set())
  const likely = step.ways.map(likelySeconds)
  return {
    heat: {
      dish: dish.id,
      step: step.id,
      lowC: Math.min(...uses.map((use) => use?.lowC ?? Number.NaN)),
      highC: Math.max(...uses.map((use) => use?.highC ?? Number.NaN)),
    },
    oven,
    from: to - Math.max(...likely),
    to,
  }
}

const likelySeconds = (way: Way): number => secondsOf(way.takes.likely)

/** The least that passes from the end of a step to the end of its dish, by what follows it; `seen` cuts circles. */
const secondsAfter = (step: Step, steps: readonly Step[], seen: ReadonlySet<string>): number => {
  const path = new Set(seen).add(step.id)
  const next = steps.filter((other) => !path.has(other.id) && other.after.some((after) => after.step === step.id))
  return Math.max(
    0,
    ...next.map((other) => {
      const lag = other.after.find((after) => after.step === step.id)
      const wait = lag && lag.from === 'end' ? secondsOf(lag.least) : 0
      return wait + Math.min(...other.ways.map(likelySeconds)) + secondsAfter(other, steps, path)
    }),
  )
}

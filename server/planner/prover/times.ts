import type { Activity, CookId, Delivery, Mode, Problem, Serving } from '#lib/scheduling/problem.ts'
import type { Placement, Schedule } from '#lib/scheduling/schedule.ts'
import { type Builder, type Expr, type Literal, minus, number, plus, sum } from './builder.ts'

/** An activity in the model: H2, H3. */
export interface Act {
  readonly activity: Activity
  readonly start: Expr
  readonly end: Expr
  /** The latest moment until which it holds its kit: its end, or that of its out touch (H10). */
  readonly ways: readonly Way[]
  readonly known: Placement | undefined
}

/** A mode that may be chosen. */
export interface Way {
  readonly mode: Mode
  readonly index: number
  readonly chosen: Literal
  readonly size: Expr
  readonly holdEnd: Expr
  readonly touches: readonly TouchAt[]
}

export interface TouchAt {
  readonly touch: number
  readonly at: Expr
  readonly takes: number
}

export interface Course {
  readonly serving: Serving
  readonly moment: Expr
  readonly platesOff: Expr
}

export interface Dish {
  readonly delivery: Delivery
  readonly course: Course
  readonly acts: readonly Act[]
  readonly ready: Expr
}

export interface Times {
  readonly acts: readonly Act[]
  readonly courses: readonly Course[]
  readonly dishes: readonly Dish[]
  /** Whether `before` surely ends before `after` starts. */
  readonly isBefore: (before: Act, after: Act) => boolean
  /** The first moment that is not the welcome's, and the last one. */
  readonly first: Expr
  readonly last: Expr
}

/** The lengths, in ticks, that a mode may have: by its cooks' paces when hands-on (H3). */
export const lengthsOf = (problem: Problem, activity: Activity, mode: Mode): readonly (readonly [CookId, number])[] =>
  problem.cooks
    .filter(({ id }) => {
      const due = activity.claimed.slice(0, mode.cooks)
      return due.length < mode.cooks || due.includes(id)
    })
    .map(({ id, pace }) => [id, Math.ceil(mode.likely * pace - 1e-9)])

/**
 * When everything starts and ends, and when courses reach the table: H2-H5, H10, H16-H18 without their kit and cooks. No
 * wish is bent further than what costs `limit`. What is pinned starts, ends and is served as in that schedule.
 */
export const writeTimes = (
  m: Builder,
  problem: Problem,
  known: Schedule | undefined,
  limit: number,
  pinned?: Schedule,
): Times => {
  const bend = (price: number): number => (price > 0 ? Math.min(LONG, Math.floor(limit / price)) : LONG)
  const acts = problem.activities.map((activity) => actOf(m, problem, activity, known, pinned))
  const byId = new Map(acts.map((act) => [act.activity.id, act]))
  const lags = problem.lags.flatMap((lag) => {
    const [from, to] = [byId.get(lag.from), byId.get(lag.to)]
    return from && to ? [{ lag, from, to }] : []
  })
  for (const { lag, from, to } of lags) {
    const apart = minus(to.start, lag.edge === 'start' ? from.start : from.end)
    m.atLeast(apart, lag.least)
    if (lag.most !== undefined) m.atMost(apart, lag.most + (lag.bound === 'safety' ? 0 : bend(problem.weights.past)))
  }
  for (const { activities, most } of problem.together) {
    const members = activities.flatMap((id) => byId.get(id) ?? [])
    m.cumulative(
      most,
      members.map(({ start, end }) => [m.interval(start, minus(end, start), end), 1]),
    )
  }
  const courses = coursesOf(m, problem, known)
  const dishes = problem.deliveries.flatMap((delivery) => {
    const course = courses.find(({ serving }) => serving.id === delivery.serving)
    const own = acts.filter(({ activity }) => activity.delivery === delivery.id)
    return course && own.length > 0 ? [{ delivery, course, acts: own }] : []
  })
  for (const { delivery, course, acts: own } of dishes) {
    for (const { end } of own) m.atMost(minus(end, course.moment), delivery.late)
    const bent = delivery.keeps.bound === 'safety' ? 0 : bend(problem.weights.past)
    if (own.length === 1)
      for (const { end } of own) m.atMost(minus(course.moment, end), delivery.early + delivery.keeps.most + bent)
  }
  limitWaits(m, problem, courses, bend)
  for (const { serving, moment } of courses) {
    const pin = pinned?.servings.find((one) => one.serving === serving.id)
    if (pin) m.equal(moment, pin.toTable)
  }
  m.settle()
  const isBefore: Times['isBefore'] = (before, after) => m.range(minus(after.start, before.end))[0] >= 0
  const first = courses.find(({ serving }) => serving.role.kind !== 'welcome')?.moment ?? number(0)
  return {
    acts,
    courses,
    dishes: dishes.map((dish) => ({ ...dish, ready: readyOf(m, dish, isBefore) })),
    isBefore,
    first,
    last: courses.at(-1)?.moment ?? first,
  }
}

/** More than any evening is long. */
const LONG = 100_000

const limitWaits = (m: Builder, { weights }: Problem, courses: readonly Course[], bend: (price: number) => number): void => {
  for (const [index, { serving, moment }] of courses.entries()) {
    const before = courses[index - 1]
    const { ideal } = serving.wait
    if (serving.role.kind === 'first') m.atMost(moment, Math.max(serving.role.sitDown + bend(weights.late), m.range(moment)[0]))
    if (serving.role.kind !== 'next' || !before) continue
    m.atLeast(minus(moment, before.platesOff), ideal[0] - bend(weights.wait))
    m.atMost(minus(moment, before.platesOff), ideal[1] + bend(weights.wait))
  }
}

const actOf = (
  m: Builder,
  problem: Problem,
  activity: Activity,
  known: Schedule | undefined,
  pinned: Schedule | undefined,
): Act => {
  const pin = pinned?.placements.find((placement) => placement.activity === activity.id)
  const was = known?.placements.find((placement) => placement.activity === activity.id)
  const least = Math.max(problem.horizon.from, activity.from ?? problem.horizon.from, problem.now ?? problem.horizon.from)
  const most = Math.min(problem.horizon.to, activity.to ?? problem.horizon.to)
  const start = m.int(least, Math.max(least, most), was?.start)
  const chosen = activity.modes.map((_, index) =>
    activity.modes.length === 1 ? m.yes : m.bool(was === undefined ? undefined : was.mode === index),
  )
  if (chosen.length > 1) m.oneOf(chosen)
  const sizes = activity.modes.map((mode) => sizesOf(problem, activity, mode))
  const [shortest, longest] = [Math.min(...sizes.map(([a]) => a)), Math.max(...sizes.map(([, b]) => b))]
  const end = shortest === longest ? plus(start, shortest) : m.int(least + shortest, Math.max(least + shortest, most), was?.end)
  const size = shortest === longest ? number(shortest) : minus(end, start)
  m.atMost(end, most)
  m.atLeast(size, shortest)
  m.atMost(size, longest)
  if (pin) {
    m.equal(start, pin.start)
    m.equal(end, pin.end)
    m.equal(m.as01(chosen[pin.mode] ?? m.yes), 1)
  }
  const ways = activity.modes.map((mode, index): Way => {
    const lit = chosen[index] ?? m.yes
    const [a, b] = sizes[index] ?? [shortest, longest]
    if (a > shortest) m.atLeast(size, a, lit)
    if (b < longest) m.atMost(size, b, lit)
    const touches = touchesOf(m, mode, start, end, a, was?.mode === index ? was : undefined)
    const outs = touches.filter(({ touch }) => mode.touches[touch]?.when === 'out')
    return {
      mode,
      index,
      chosen: lit,
      size: a === b ? number(a) : size,
      touches,
      holdEnd:
        outs.length === 0 ? end : m.max(...outs.map(({ at, takes }) => plus(at, takes)), ...(outs.length > 1 ? [end] : [])),
    }
  })
  return { activity, start, end, ways, known: was }
}

const sizesOf = (problem: Problem, activity: Activity, mode: Mode): readonly [number, number] => {
  if (mode.care === 'leave') return [mode.likely, Math.max(mode.likely, mode.upTo ?? mode.likely)]
  if (mode.care === 'eye') return [mode.likely, mode.likely]
  const lengths = lengthsOf(problem, activity, mode).map(([, length]) => length)
  return lengths.length === 0 ? [mode.likely, mode.likely] : [Math.min(...lengths), Math.max(...lengths)]
}

/** The touches that a mode owes at its shortest; a longer one may owe more, which is left to the verifier. */
const touchesOf = (
  m: Builder,
  mode: Mode,
  start: Expr,
  end: Expr,
  shortest: number,
  was: Placement | undefined,
): readonly TouchAt[] => {
  let listed = 0
  const at = (touch: number, from: Expr, lateBy: number): TouchAt => {
    const told = was?.touches[listed]
    listed += 1
    const takes = mode.touches[touch]?.takes ?? 0
    const since = m.value(from)
    const late = told?.touch === touch && since !== undefined ? told.at - since : since === undefined ? undefined : 0
    return { touch, at: lateBy === 0 ? from : plus(from, m.int(0, lateBy, late)), takes }
  }
  return mode.touches.flatMap(({ when, takes, lateBy }, touch) => {
    if (when === 'in') return [at(touch, start, 0)]
    if (when === 'out') return [at(touch, minus(end, takes), lateBy)]
    const owed: TouchAt[] = []
    for (let since = when.every; since < shortest && when.every > 0; since += when.every)
      owed.push(at(touch, plus(start, since), lateBy))
    return owed
  })
}

/** H16. */
const coursesOf = (m: Builder, problem: Problem, known: Schedule | undefined): Course[] => {
  const courses: Course[] = []
  for (const serving of problem.servings) {
    const before = courses.at(-1)
    const least = Math.max(
      problem.horizon.from,
      serving.earliest ?? Number.NEGATIVE_INFINITY,
      problem.now ?? Number.NEGATIVE_INFINITY,
      before ? m.range(before.platesOff)[0] + serving.pouring : Number.NEGATIVE_INFINITY,
    )
    const latest = serving.role.kind === 'welcome' ? Math.max(serving.role.latest, least) : problem.horizon.to + LONG
    const told = known?.servings.find((one) => one.serving === serving.id)?.toTable
    const moment = m.int(least, Math.max(least, latest), told)
    m.atLeast(moment, least)
    if (before) m.atLeast(minus(moment, before.platesOff), serving.pouring)
    courses.push({ serving, moment, platesOff: plus(moment, serving.eating + serving.clearing) })
  }
  return courses
}

/** The latest end of the dish's activities. */
const readyOf = (m: Builder, { acts }: Omit<Dish, 'ready'>, isBefore: Times['isBefore']): Expr => {
  const ends = acts.filter((act) => !acts.some((other) => other !== act && isBefore(act, other)))
  return m.max(...ends.map(({ end }) => end))
}

/** How far a stretch is too long. */
export const excess = (m: Builder, of: Expr, most: number): Expr => {
  const over = plus(of, -most)
  return m.range(over)[1] <= 0 ? number(0) : m.pushedDownTo([over], m.range(over)[1])
}

export const total = (parts: readonly Expr[]): Expr => sum(...parts.map((part) => [1, part] as const))

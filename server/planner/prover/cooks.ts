import { type Cook, EYE_PIECE, type Problem } from '#lib/scheduling/problem.ts'
import { type Builder, type Expr, type Literal, minus, number, sum } from './builder.ts'
import { type Act, lengthsOf, type Times, type Way } from './times.ts'

/** One cook's part in an attended activity, or a touch. */
export interface Part {
  readonly kind: 'hands-on' | 'eye' | 'touch'
  readonly act: Act
  readonly way: Way
  /** The index of the touch in `way.touches`. */
  readonly touch?: number
  readonly start: Expr
  readonly size: Expr
  readonly end: Expr
  /** Who may do it. */
  readonly able: readonly Cook[]
  /** By whom, under which literal; empty when that is left open. */
  readonly by: readonly { readonly cook: Cook; readonly does: Literal }[]
  /** Who does it in the known schedule. */
  readonly was: string | undefined
}

/**
 * Who does what: H6-H9, H3 for their paces. Left open, it is only seen to that there are cooks enough, and that what is
 * claimed by one cook does not overlap.
 */
export const writeCooks = (m: Builder, problem: Problem, times: Times, open: boolean): readonly Part[] => {
  const parts = times.acts.flatMap((act) => act.ways.flatMap((way) => partsOf(m, problem, act, way, open)))
  for (const cook of problem.cooks) writeCook(m, cook, parts)
  writeAttention(m, problem, parts)
  return parts
}

const partsOf = (m: Builder, problem: Problem, act: Act, way: Way, open: boolean): Part[] => {
  const { mode, chosen } = way
  const { start, end } = act
  const was = act.known?.mode === way.index ? act.known : undefined
  const hinted = act.known !== undefined
  const who = (able: readonly Cook[], told: string | undefined): Pick<Part, 'able' | 'by' | 'was'> => {
    const only = able.length === 1
    const by =
      open && !only ? [] : able.map((cook) => ({ cook, does: only ? chosen : m.bool(hinted ? told === cook.id : undefined) }))
    if (able.length === 0) m.atMost(m.as01(chosen), 0)
    if (by.length > 1) m.equal(sum(...by.map(({ does }) => [1, m.as01(does)] as const), [-1, m.as01(chosen)]), 0)
    return { able, by, was: told }
  }
  const touches = way.touches.map(({ at, takes }, touch): Part => {
    const able = problem.cooks.filter((cook) => isThere(cook, act.activity.place, takes))
    const end = sum([1, at], [1, number(takes)])
    return { kind: 'touch', act, way, touch, start: at, size: number(takes), end, ...who(able, was?.touches[touch]?.cook) }
  })
  if (mode.care === 'leave') return touches
  const count = mode.care === 'eye' ? 1 : mode.cooks
  const due = act.activity.claimed.slice(0, count)
  const free = problem.cooks.filter(({ id }) => !act.activity.claimed.slice(0, count).includes(id) && due.length < count)
  const teamLeft = (was?.cooks ?? []).filter((id) => !due.includes(id))
  const lengths = new Map(mode.care === 'hands-on' ? lengthsOf(problem, act.activity, mode) : [])
  const attending = Array.from({ length: count }, (_, role): Part => {
    const named = problem.cooks.filter(({ id }) => id === due[role])
    const able = (named.length > 0 ? named : free).filter((cook) => canAttend(cook, act, lengths.get(cook.id) ?? mode.likely))
    const told = named.length > 0 ? was && due[role] : teamLeft[role - due.length]
    return { kind: mode.care === 'eye' ? 'eye' : 'hands-on', act, way, start, size: way.size, end, ...who(able, told) }
  })
  for (const cook of free) {
    const twice = attending.flatMap(({ by }) => by.filter((one) => one.cook === cook).map((one) => one.does))
    if (twice.length > 1) m.atMostOne(twice)
  }
  writeLength(m, way, attending, lengths)
  return [...attending, ...touches]
}

/** H3: as long as the slowest of its cooks needs. */
const writeLength = (m: Builder, way: Way, attending: readonly Part[], lengths: ReadonlyMap<string, number>): void => {
  const [shortest, longest] = m.range(way.size)
  if (shortest === longest || lengths.size === 0 || attending.some(({ by }) => by.length === 0)) return
  const roles = attending.map(({ by }) => sum(...by.map(({ cook, does }) => [lengths.get(cook.id) ?? 0, m.as01(does)] as const)))
  m.equal(minus(way.size, m.max(...roles)), 0, way.chosen)
}

const isThere = (cook: Cook, place: string, ticks: number): boolean =>
  cook.presence.some((stay) => stay.place === place && stay.to - stay.from >= ticks)

interface Stretch {
  readonly from: number
  readonly to: number
}

/** Where a cook may do this: presences in its place, or the holes of the road that it goes (H9). */
const stretches = (cook: Cook, { activity }: Act, isTouch: boolean): Stretch[] => {
  const { road, place } = activity
  if (!road || isTouch) return cook.presence.filter((stay) => stay.place === place)
  return cook.presence.slice(1).flatMap((next, index) => {
    const before = cook.presence[index]
    return before && before.place === place && next.place === road.to ? [{ from: before.to, to: next.from }] : []
  })
}

const canAttend = (cook: Cook, act: Act, ticks: number): boolean =>
  stretches(cook, act, false).some(({ from, to }) => to - from >= ticks)

export const isLong = (m: Builder, { size }: Part): boolean => m.range(size)[0] > EYE_PIECE

export const isSameSpot = (a: Part, b: Part): boolean =>
  a.act.activity.place === b.act.activity.place && a.act.activity.at === b.act.activity.at

/** Whether somebody may carry this together with something else: then its minutes are not counted. */
export const mayShareTrip = (part: Part, all: readonly Part[]): boolean =>
  isCarrying(part) &&
  all.some((other) => other !== part && isCarrying(other) && other.able.some((cook) => part.able.includes(cook)))

const isCarrying = ({ kind, act }: Part): boolean => kind !== 'touch' && act.activity.road !== undefined

/** H7-H9 of one cook. What is carried may overlap, which is left to the verifier. */
const writeCook = (m: Builder, cook: Cook, parts: readonly Part[]): void => {
  const own = parts.flatMap((part) => {
    const does = part.by.find((one) => one.cook === cook)?.does
    return does === undefined ? [] : [{ ...part, does, interval: m.interval(part.start, part.size, part.end, does) }]
  })
  for (const { act, kind, start, size, end, does } of own) {
    const spans = stretches(cook, act, kind === 'touch')
    const [only] = spans
    const [least, most] = m.range(size)
    if (only && spans.length === 1) {
      if (m.range(start)[0] < only.from) m.atLeast(start, only.from, does)
      if (m.range(end)[1] > only.to) m.atMost(end, only.to, does)
    } else if (least === most)
      m.within(
        start,
        spans.filter(({ from, to }) => to - from >= least).map(({ from, to }) => [from, to - least] as const),
        does,
      )
    else {
      const inside = spans.map((span) => {
        const [a, b] = [m.value(start), m.value(end)]
        const here = m.bool(a === undefined || b === undefined ? undefined : span.from <= a && b <= span.to)
        m.atLeast(start, span.from, here)
        m.atMost(end, span.to, here)
        return here
      })
      m.atLeast(sum(...inside.map((here) => [1, m.as01(here)] as const)), 1, does)
    }
  }
  const hands = own.filter(({ kind, act }) => kind !== 'eye' && (kind === 'touch' || !act.activity.road))
  m.noOverlap(hands.map(({ interval }) => interval))
  const eyes = own.filter(({ kind }) => kind === 'eye')
  for (const [index, eye] of eyes.entries()) {
    const kept = hands.filter((one) => one.act !== eye.act && (isLong(m, one) || !isSameSpot(one, eye)))
    m.noOverlap([eye, ...kept].map(({ interval }) => interval))
    for (const other of eyes.slice(index + 1))
      if (other.act !== eye.act && !isSameSpot(other, eye)) m.noOverlap([eye.interval, other.interval])
  }
}

/** Redundant: no more hands are busy in a place than there are cooks there, and one more is for an eye. */
const writeAttention = (m: Builder, problem: Problem, parts: readonly Part[]): void => {
  for (const place of new Set(parts.map(({ act }) => act.activity.place))) {
    const here = parts.filter(({ act, kind }) => act.activity.place === place && (kind === 'touch' || !act.activity.road))
    const drawn = here.map((part) => ({ ...part, interval: m.interval(part.start, part.size, part.end, part.way.chosen) }))
    const absent = problem.cooks.flatMap((cook) =>
      gaps(cook, place, problem.horizon).map(({ from, to }) => m.interval(number(from), number(to - from), number(to))),
    )
    const away = absent.map((interval) => [interval, 1] as const)
    const hands = drawn.filter(({ kind }) => kind !== 'eye').map(({ interval }) => [interval, 1] as const)
    m.cumulative(problem.cooks.length, [...hands, ...away])
    const long = drawn.filter((part) => part.kind !== 'eye' && isLong(m, part)).map(({ interval }) => [interval, 1] as const)
    for (const eye of drawn.filter(({ kind }) => kind === 'eye'))
      m.cumulative(problem.cooks.length, [...long, ...away, [eye.interval, 1]])
  }
}

const gaps = (cook: Cook, place: string, horizon: Stretch): Stretch[] => {
  const found: Stretch[] = []
  let from = horizon.from
  for (const stay of cook.presence.filter((one) => one.place === place)) {
    if (stay.from > from) found.push({ from, to: stay.from })
    from = Math.max(from, stay.to)
  }
  return from < horizon.to ? [...found, { from, to: horizon.to }] : found
}

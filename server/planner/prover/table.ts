import { type Cook, EYE_PIECE, type Problem } from '#lib/scheduling/problem.ts'
import { type Builder, type Expr, type Literal, minus, not, number, plus, sum } from './builder.ts'
import { isSameSpot, mayShareTrip, type Part } from './cooks.ts'
import { leastOf } from './overlap.ts'
import { type Times, total } from './times.ts'

interface Absence {
  readonly part: Part
  /** Its ticks between the first and the last course that are not covered by what the same cook does meanwhile. */
  readonly net: Expr
  /** Of these, those in which people eat. */
  readonly meal: Expr
}

/** C5: the ticks that cooks who eat are up, the most of one of them, and the ticks of those while people eat. */
export const tableOf = (
  m: Builder,
  problem: Problem,
  times: Times,
  parts: readonly Part[],
): { missed: Expr; most: Expr; meal: Expr } => {
  const eaters = problem.cooks.filter(({ eats }) => eats)
  const up = parts.filter(
    (part) => part.act.activity.at !== 'table' && part.able.some(({ eats }) => eats) && !mayShareTrip(part, parts),
  )
  const covers: Cover[] = []
  const absences = up.flatMap((part): Absence[] => {
    if (m.range(minus(part.end, times.first))[1] <= 0 || m.range(minus(times.last, part.start))[1] <= 0) return []
    const from = uncoveredFrom(m, part, parentsOf(m, times, part, up), covers)
    const within = (since: Expr, until: Expr): Expr =>
      leastOf(
        m,
        [minus(part.end, from), minus(part.end, since), minus(until, from), minus(until, since)],
        m.range(part.size)[1],
        part.way.chosen,
      )
    const eating = times.courses
      .filter(({ serving, moment }) => serving.role.kind !== 'welcome' && moment !== times.last)
      .map(({ serving, moment }) => within(moment, plus(moment, serving.eating)))
    return [{ part, net: within(times.first, times.last), meal: total(eating) }]
  })
  for (const eye of up.filter(({ kind }) => kind === 'eye')) {
    const meanwhile = covers.filter(({ child, parent }) => (child === eye ? parent : parent === eye ? child : eye).kind !== 'eye')
    if (meanwhile.length > 0) m.atMost(minus(total(meanwhile.map(({ ticks }) => ticks)), eye.size), 0)
  }
  const missed = total(absences.map(({ part, net }) => byEaters(m, part, net)))
  const meal = total(absences.map(({ part, meal: net }) => byEaters(m, part, net)))
  if (eaters.length <= 1) return { missed, most: missed, meal }
  const each = eaters.map((cook) => total(absences.flatMap(({ part, net }) => byCook(m, cook, part, net))))
  const values = [...each, missed].map((one) => m.value(one))
  const all = values.pop()
  const known = all === undefined || values.includes(undefined) ? undefined : values.map((value) => value ?? 0)
  const most = m.int(0, m.range(missed)[1], known && Math.max(Math.ceil((all ?? 0) / eaters.length), ...known))
  for (const one of each) m.atLeast(minus(most, one), 0)
  m.atLeast(minus(sum([eaters.length, most]), missed), 0)
  return { missed, most, meal }
}

const byEaters = (m: Builder, { able, by }: Part, net: Expr): Expr => {
  if (able.every(({ eats }) => eats)) return net
  return asMuchWhen(
    m,
    net,
    by.filter(({ cook }) => cook.eats).map(({ does }) => does),
  )
}

const byCook = (m: Builder, cook: Cook, { by }: Part, net: Expr): Expr[] => {
  const does = by.filter((one) => one.cook === cook).map((one) => one.does)
  return does.length === 0 ? [] : [asMuchWhen(m, net, does)]
}

/** At least `of` when one of the literals holds. */
const asMuchWhen = (m: Builder, of: Expr, any: readonly Literal[]): Expr => {
  const [, most] = m.range(of)
  if (any.length === 0) return number(0)
  if (any.includes(m.yes) || most <= 0) return of
  const value = m.value(of)
  const holds = any.map((literal) => m.holds(literal))
  const known = value !== undefined && holds.every((one) => one !== undefined)
  const much = m.int(0, most, known ? (holds.some((one) => one) ? value : 0) : undefined)
  for (const literal of any) m.atLeast(sum([1, much], [-1, of], [-most, m.as01(literal)]), -most)
  return much
}

/** The ticks of a child that its parent covers. What one cook's hands do while an eye is kept is no longer than that. */
interface Cover {
  readonly child: Part
  readonly parent: Part
  readonly ticks: Expr
}

interface Parent {
  readonly part: Part
  /** How much earlier it begins at the least: of two that begin together one is the parent. */
  readonly before: 0 | 1
}

/** What the same cook may do while doing this: something with an eye on something. */
const parentsOf = (m: Builder, { isBefore }: Times, part: Part, all: readonly Part[]): Parent[] =>
  all
    .filter(
      (other) =>
        other.act !== part.act &&
        (other.kind === 'eye' || part.kind === 'eye') &&
        isSameSpot(other, part) &&
        !isBefore(other.act, part.act) &&
        !isBefore(part.act, other.act) &&
        m.range(minus(part.start, other.start))[1] >= 0 &&
        m.range(minus(other.end, part.start))[1] > 0 &&
        [other, part].every((one) => one.kind === 'eye' || m.range(one.size)[0] <= EYE_PIECE) &&
        other.able.some((cook) => part.able.includes(cook)),
    )
    .map((other) => ({ part: other, before: all.indexOf(other) > all.indexOf(part) ? 1 : 0 }))

/**
 * From when on nothing that began before, its parent, covers it. The union of spans is the sum of what each adds to its
 * best parent; any other choice of parents counts too much, never too little.
 */
const uncoveredFrom = (m: Builder, part: Part, parents: readonly Parent[], covers: Cover[]): Expr => {
  const { start, end } = part
  if (parents.length === 0) return start
  const untils = parents.map((parent) => coversAsKnown(m, part, parent))
  const known = untils.includes(undefined) ? undefined : untils.map((until) => until ?? 0)
  const begin = m.value(start)
  const until = known === undefined || begin === undefined ? undefined : Math.max(begin, ...known)
  const from = m.int(m.range(start)[0], m.range(end)[1], until === undefined ? undefined : Math.min(until, m.value(end) ?? until))
  m.atLeast(minus(from, start), 0)
  m.atLeast(minus(end, from), 0)
  const literals = parents.map(({ part: parent, before }, index) => {
    const literal = m.bool(until === undefined ? undefined : until !== begin && known?.indexOf(until) === index)
    m.atLeast(minus(parent.end, from), 0, literal)
    m.atLeast(minus(start, parent.start), before, literal)
    for (const { cook, does } of part.by) {
      const theirs = parent.by.find((one) => one.cook === cook)?.does
      if (theirs !== does && parent.by.length > 0) m.anyOf([not(literal), not(does), ...(theirs === undefined ? [] : [theirs])])
    }
    if (parent.way.chosen !== m.yes) m.anyOf([not(literal), parent.way.chosen])
    return literal
  })
  const alone = m.bool(until === undefined ? undefined : until === begin)
  m.atMost(minus(from, start), 0, alone)
  m.oneOf([alone, ...literals])
  const covered = parents.map(({ part: parent }, index) => {
    const literal = literals[index] ?? m.yes
    const most = Math.max(0, Math.min(m.range(part.size)[1], m.range(parent.size)[1], m.range(minus(parent.end, start))[1]))
    const isKnown = m.holds(literal)
    const ticks = m.int(0, most, isKnown === undefined ? undefined : isKnown ? (m.value(minus(from, start)) ?? 0) : 0)
    m.atMost(sum([1, ticks], [-most, m.as01(literal)]), 0)
    covers.push({ child: part, parent, ticks })
    return ticks
  })
  m.atMost(minus(minus(from, start), total(covered)), 0)
  return from
}

/** Until when the parent covers it in the known solution; before everything when it does not. */
const coversAsKnown = (m: Builder, part: Part, { part: parent, before }: Parent): number | undefined => {
  const [start, from, to] = [m.value(part.start), m.value(parent.start), m.value(parent.end)]
  if (start === undefined || from === undefined || to === undefined) return undefined
  const isCovering =
    part.was !== undefined && part.was === parent.was && m.holds(parent.way.chosen) && start - from >= before && to > start
  return isCovering ? to : Number.NEGATIVE_INFINITY
}

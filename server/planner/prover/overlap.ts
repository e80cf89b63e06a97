import { type Builder, type Expr, type Literal, minus, number, sum } from './builder.ts'

/** At least the least of these, and 0: an overlap of spans, pushed down to it by the objective. The first is the longest. */
export const leastOf = (m: Builder, these: readonly Expr[], longest: number, chosen: Literal): Expr => {
  const when = chosen === m.yes ? [] : [chosen]
  const [whole = number(0)] = these
  const ranges = these.map((one) => m.range(one))
  const most = Math.min(longest, ...ranges.map(([, high]) => high))
  if (most <= 0) return number(0)
  const open = these.filter((one) => one === whole || m.range(minus(one, whole))[0] < 0)
  if (open.length === 1 && when.length === 0) return whole
  const values = open.map((one) => m.value(one))
  const known = values.every((value) => value !== undefined)
  const enforced = when.every((literal) => m.holds(literal) !== false)
  const least = known ? Math.max(0, Math.min(...values.map((value) => value ?? 0))) : undefined
  const result = m.int(0, most, least === undefined ? undefined : enforced ? least : 0)
  if (open.length === 1) {
    m.atLeast(minus(result, whole), 0, ...when)
    return result
  }
  const at = known ? values.findIndex((value) => Math.max(0, value ?? 0) === least) : -1
  const literals = open.map((one, index) => {
    const literal = m.bool(known ? index === at : undefined)
    m.atLeast(minus(result, one), 0, literal, ...when)
    return literal
  })
  m.oneOf(literals)
  const lost = open.map((one) => Math.max(0, Math.min(longest, m.range(minus(whole, one))[1])))
  m.atLeast(
    sum([1, result], [-1, whole], ...literals.map((literal, index) => [lost[index] ?? 0, m.as01(literal)] as const)),
    0,
    ...when,
  )
  return result
}

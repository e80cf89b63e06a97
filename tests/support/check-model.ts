import type { ConstraintProto, LinearProto, ModelProto } from '#server/planner/prover/proto.ts'

/** Which constraints of a model these values break, by index and kind, and what they cost. Reads the format, not the code that writes it. */
export const checkModel = ({ variables, constraints, objective }: ModelProto, values: readonly number[]) => {
  const of = ({ vars, coeffs, offset }: LinearProto): number =>
    vars.reduce((total, variable, at) => total + (coeffs[at] ?? 0) * (values[variable] ?? Number.NaN), offset)
  const holds = (literal: number): boolean => (literal >= 0 ? values[literal] === 1 : values[-literal - 1] === 0)
  const lies = (value: number, domain: readonly number[]): boolean =>
    domain.some((low, at) => at % 2 === 0 && low <= value && value <= (domain[at + 1] ?? low))
  const span = (index: number) => {
    const { interval, enforcementLiteral = [] } = constraints[index] ?? {}
    if (!interval || !enforcementLiteral.every(holds)) return null
    return { from: of(interval.start), to: of(interval.end) }
  }
  const isKept = (one: ConstraintProto): boolean => {
    if (one.linear) return lies(of({ ...one.linear, offset: 0 }), one.linear.domain)
    if (one.boolOr) return one.boolOr.literals.some(holds)
    if (one.exactlyOne) return one.exactlyOne.literals.filter(holds).length === 1
    if (one.atMostOne) return one.atMostOne.literals.filter(holds).length <= 1
    if (one.interval) return of(one.interval.start) + of(one.interval.size) === of(one.interval.end) && of(one.interval.size) >= 0
    if (one.linMax) return of(one.linMax.target) === Math.max(...one.linMax.exprs.map(of))
    if (one.noOverlap) {
      const spans = one.noOverlap.intervals.flatMap((index) => span(index) ?? [])
      return spans.every((a, i) => spans.every((b, j) => i >= j || Math.max(a.from, b.from) >= Math.min(a.to, b.to)))
    }
    if (one.cumulative) {
      const { intervals, demands, capacity } = one.cumulative
      const uses = intervals.flatMap((index, at) => {
        const where = span(index)
        const demand = demands[at]
        return where && demand ? [{ ...where, amount: of(demand) }] : []
      })
      return uses.every(
        ({ from }) =>
          uses.filter((use) => use.from <= from && from < use.to).reduce((total, { amount }) => total + amount, 0) <=
          of(capacity),
      )
    }
    return false
  }
  const broken = constraints.flatMap((one, index) =>
    !(one.enforcementLiteral ?? []).every(holds) || isKept(one) ? [] : [`${index} ${Object.keys(one).at(-1)}`],
  )
  const outside = variables.flatMap(({ domain }, index) =>
    lies(values[index] ?? Number.NaN, domain) ? [] : [`variable ${index}`],
  )
  return { broken: [...outside, ...broken], cost: of(objective) }
}

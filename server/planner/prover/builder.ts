import { newDifferences, ORIGIN } from './differences.ts'
import type { ConstraintProto, LinearProto, ModelProto } from './proto.ts'

/** A sum of variables times whole numbers, and a whole number. */
export interface Expr {
  readonly terms: ReadonlyMap<number, number>
  readonly offset: number
}

/** A variable of 0 and 1, or its negation, as the solver numbers them. */
export type Literal = number

export type Interval = number

export const number = (offset: number): Expr => ({ terms: new Map(), offset })

/** Σ factor × expression. */
export const sum = (...parts: readonly (readonly [factor: number, of: Expr])[]): Expr => {
  const terms = new Map<number, number>()
  let offset = 0
  for (const [factor, of] of parts) {
    offset += factor * of.offset
    for (const [variable, times] of of.terms) terms.set(variable, (terms.get(variable) ?? 0) + factor * times)
  }
  for (const [variable, times] of terms) if (times === 0) terms.delete(variable)
  return { terms, offset }
}
export const plus = (a: Expr, b: Expr | number): Expr => sum([1, a], [1, typeof b === 'number' ? number(b) : b])
export const minus = (a: Expr, b: Expr | number): Expr => sum([1, a], [-1, typeof b === 'number' ? number(b) : b])
export const not = (literal: Literal): Literal => -literal - 1

/**
 * Writes a model for the solver. Every variable is made with the value it has in a known solution, or undefined where
 * none is known, so that the whole of that solution can be handed over: partial hints do not carry it.
 */
export interface Builder {
  readonly int: (least: number, most: number, hint: number | undefined) => Expr
  readonly bool: (hint: boolean | undefined) => Literal
  readonly yes: Literal
  /** The literal as an expression of 0 or 1. */
  readonly as01: (literal: Literal) => Expr
  /** What the known solution makes of it; undefined when it says nothing of one of its variables. */
  readonly value: (of: Expr) => number | undefined
  readonly holds: (literal: Literal) => boolean | undefined
  /** The least and the greatest that the domains, and what `settle` found, allow. */
  readonly range: (of: Expr) => readonly [least: number, most: number]
  /** of ≥ least, when all of `when` hold. */
  readonly atLeast: (of: Expr, least: number, ...when: readonly Literal[]) => void
  readonly atMost: (of: Expr, most: number, ...when: readonly Literal[]) => void
  readonly equal: (of: Expr, value: number, ...when: readonly Literal[]) => void
  /** of lies in one of the spans, both ends included. */
  readonly within: (of: Expr, spans: readonly (readonly [number, number])[], ...when: readonly Literal[]) => void
  readonly anyOf: (literals: readonly Literal[]) => void
  readonly oneOf: (literals: readonly Literal[]) => void
  readonly atMostOne: (literals: readonly Literal[]) => void
  readonly interval: (start: Expr, size: Expr, end: Expr, ...when: readonly Literal[]) => Interval
  readonly noOverlap: (intervals: readonly Interval[]) => void
  readonly cumulative: (capacity: number, uses: readonly (readonly [interval: Interval, amount: number])[]) => void
  /** The greatest of them. */
  readonly max: (...exprs: readonly Expr[]) => Expr
  /** At least 0 and at least each of these: what the objective pushes down onto the greatest of them. */
  readonly pushedDownTo: (exprs: readonly Expr[], most: number) => Expr
  /** Works out what the unconditional differences said so far mean for each other: `range` knows more from then on. */
  readonly settle: () => void
  /** Between what is known to be the least and the most. */
  readonly minimize: (cost: Expr, least: number, most: number) => ModelProto
}

export const newBuilder = (): Builder => {
  const variables: { domain: number[] }[] = []
  const hints: (number | undefined)[] = []
  const constraints: ConstraintProto[] = []

  const make = (domain: number[], hint: number | undefined): number => {
    variables.push({ domain })
    hints.push(hint)
    return variables.length - 1
  }
  const proto = ({ terms, offset }: Expr): LinearProto => ({ vars: [...terms.keys()], coeffs: [...terms.values()], offset })
  const enforced = (when: readonly Literal[]) => {
    const real = [...new Set(when)].filter((literal) => literal !== yes)
    return real.length === 0 ? {} : { enforcementLiteral: real }
  }
  const linear = ({ terms, offset }: Expr, domain: readonly number[], when: readonly Literal[]) => {
    constraints.push({
      ...enforced(when),
      linear: {
        vars: [...terms.keys()],
        coeffs: [...terms.values()],
        domain: domain.map((edge) => (Math.abs(edge) === FAR ? edge : edge - offset)),
      },
    })
  }
  const value = ({ terms, offset }: Expr): number | undefined => {
    let total = offset
    for (const [variable, times] of terms) {
      const known = hints[variable]
      if (known === undefined) return undefined
      total += known * times
    }
    return total
  }
  const differences = newDifferences()
  const range = ({ terms, offset }: Expr): readonly [number, number] => {
    let [least, most] = [offset, offset]
    const rest = new Map(terms)
    for (const [up, timesUp] of terms) {
      if (timesUp !== 1 || !rest.has(up)) continue
      for (const [down, timesDown] of rest) {
        if (timesDown !== -1) continue
        const low = differences.least(down, up)
        const high = -differences.least(up, down)
        if (low === undefined || !Number.isFinite(low) || !Number.isFinite(high)) continue
        least += low
        most += high
        rest.delete(up)
        rest.delete(down)
        break
      }
    }
    for (const [variable, times] of rest) {
      const domain = variables[variable]?.domain ?? []
      const [low, high] = [domain[0] ?? 0, domain.at(-1) ?? 0]
      least += times > 0 ? times * low : times * high
      most += times > 0 ? times * high : times * low
    }
    return [least, most]
  }
  /** Remembers to − from ≥ least, if that is what is said. */
  const remember = ({ terms, offset }: Expr, least: number, when: readonly Literal[]): void => {
    if (when.length > 0 || terms.size > 2) return
    const up = [...terms].filter(([, times]) => times === 1).map(([variable]) => variable)
    const down = [...terms].filter(([, times]) => times === -1).map(([variable]) => variable)
    if (up.length > 1 || down.length > 1 || up.length + down.length !== terms.size) return
    differences.add(down[0] ?? ORIGIN, up[0] ?? ORIGIN, least - offset)
  }
  const greatest = (values: readonly (number | undefined)[]): number | undefined =>
    values.reduce((best, each) => (best === undefined || each === undefined ? undefined : Math.max(best, each)), values[0])
  const variable = (least: number, most: number, hint: number | undefined): Expr => ({
    terms: new Map([[make([least, most], hint), 1]]),
    offset: 0,
  })
  /** The solver takes no more than one variable for the edge of an interval. */
  const narrowed = new Map<string, Expr>()
  const narrow = (of: Expr, floor = -FAR): Expr => {
    if (of.terms.size <= 1) return of
    const key = JSON.stringify([[...of.terms], of.offset, floor])
    const known = narrowed.get(key)
    if (known) return known
    const [least, most] = range(of)
    const alone = variable(Math.max(least, floor), most, value(of))
    linear(minus(of, alone), [0, 0], [])
    narrowed.set(key, alone)
    return alone
  }
  const yes = make([1, 1], 1)
  const as01 = (literal: Literal): Expr =>
    literal === yes
      ? number(1)
      : literal >= 0
        ? { terms: new Map([[literal, 1]]), offset: 0 }
        : { terms: new Map([[not(literal), -1]]), offset: 1 }

  return {
    int: variable,
    bool: (hint) => make([0, 1], hint === undefined ? undefined : Number(hint)),
    yes,
    as01,
    value,
    holds: (literal) => {
      const known = value(as01(literal))
      return known === undefined ? undefined : known === 1
    },
    range,
    atLeast: (of, least, ...when) => {
      remember(of, least, when)
      linear(of, [least, FAR], when)
    },
    atMost: (of, most, ...when) => {
      remember(sum([-1, of]), -most, when)
      linear(of, [-FAR, most], when)
    },
    equal: (of, exactly, ...when) => {
      remember(of, exactly, when)
      remember(sum([-1, of]), -exactly, when)
      linear(of, [exactly, exactly], when)
    },
    within: (of, spans, ...when) => linear(of, spans.flat(), when),
    anyOf: (literals) => {
      if (!literals.includes(yes)) constraints.push({ boolOr: { literals } })
    },
    oneOf: (literals) => constraints.push({ exactlyOne: { literals } }),
    atMostOne: (literals) => constraints.push({ atMostOne: { literals } }),
    interval: (start, size, end, ...when) => {
      const given = enforced(when)
      const length = narrow(size, given.enforcementLiteral ? -FAR : 0)
      constraints.push({ ...given, interval: { start: proto(narrow(start)), size: proto(length), end: proto(narrow(end)) } })
      return constraints.length - 1
    },
    noOverlap: (intervals) => {
      if (intervals.length > 1) constraints.push({ noOverlap: { intervals } })
    },
    cumulative: (capacity, uses) => {
      if (uses.reduce((total, [, amount]) => total + amount, 0) <= capacity) return
      constraints.push({
        cumulative: {
          capacity: proto(number(capacity)),
          intervals: uses.map(([interval]) => interval),
          demands: uses.map(([, amount]) => proto(number(amount))),
        },
      })
    },
    max: (...exprs) => {
      const [only] = exprs
      if (only && exprs.length === 1) return only
      const ranges = exprs.map(range)
      const target = variable(
        Math.max(...ranges.map(([least]) => least)),
        Math.max(...ranges.map(([, most]) => most)),
        greatest(exprs.map(value)),
      )
      constraints.push({ linMax: { target: proto(target), exprs: exprs.map(proto) } })
      return target
    },
    pushedDownTo: (exprs, most) => {
      const target = variable(0, Math.max(0, most), greatest([0, ...exprs.map(value)]))
      for (const each of exprs) linear(minus(target, each), [0, FAR], [])
      return target
    },
    settle: () => {
      for (const [index, { domain }] of variables.entries()) {
        if (!differences.knows(index)) continue
        differences.add(ORIGIN, index, domain[0] ?? 0)
        differences.add(index, ORIGIN, -(domain.at(-1) ?? 0))
      }
      differences.close()
      for (const [index, one] of variables.entries()) {
        if (!differences.knows(index)) continue
        const [low, high] = [differences.least(ORIGIN, index), -differences.least(index, ORIGIN)]
        if (low <= high) one.domain = [low, high]
      }
    },
    minimize: (cost, least, most) => {
      const hinted = hints.every((hint) => hint !== undefined)
      return {
        variables,
        constraints,
        objective: { ...proto(cost), domain: [least - cost.offset, most - cost.offset] },
        ...(hinted ? { solutionHint: { vars: [...hints.keys()], values: hints.flatMap((hint) => hint ?? []) } } : {}),
      }
    },
  }
}

/** No limit, well within what the solver adds up. */
const FAR = 1_000_000_000_000_000

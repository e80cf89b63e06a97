/**
 * The part of the solver's model format that is used here: plain data, so that it can be sent to another process.
 * Literals are variable indices, −index − 1 for the negation. Source: cp_model.proto of Google OR-Tools (Apache-2.0).
 */
export interface LinearProto {
  readonly vars: readonly number[]
  readonly coeffs: readonly number[]
  readonly offset: number
}

export interface ConstraintProto {
  readonly enforcementLiteral?: readonly number[]
  readonly linear?: { readonly vars: readonly number[]; readonly coeffs: readonly number[]; readonly domain: readonly number[] }
  readonly interval?: { readonly start: LinearProto; readonly size: LinearProto; readonly end: LinearProto }
  readonly noOverlap?: { readonly intervals: readonly number[] }
  readonly cumulative?: {
    readonly capacity: LinearProto
    readonly intervals: readonly number[]
    readonly demands: readonly LinearProto[]
  }
  readonly linMax?: { readonly target: LinearProto; readonly exprs: readonly LinearProto[] }
  readonly boolOr?: { readonly literals: readonly number[] }
  readonly exactlyOne?: { readonly literals: readonly number[] }
  readonly atMostOne?: { readonly literals: readonly number[] }
}

export interface ModelProto {
  readonly variables: readonly { readonly domain: readonly number[] }[]
  readonly constraints: readonly ConstraintProto[]
  readonly objective: LinearProto & { readonly domain?: readonly number[] }
  readonly solutionHint?: { readonly vars: readonly number[]; readonly values: readonly number[] }
}

/** What the solver says: `solution` has one value for each variable. */
export interface Answer {
  readonly status: 'OPTIMAL' | 'FEASIBLE' | 'INFEASIBLE' | 'UNKNOWN' | 'MODEL_INVALID'
  readonly solution: readonly number[]
  /** What the objective says of it; meaningless without one. */
  readonly cost: number
  /** No solution of the model has a smaller objective. */
  readonly bound: number
  /** Seconds, as the solver counts them. */
  readonly seconds: number
}

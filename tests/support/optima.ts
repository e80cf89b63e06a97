import { createHash } from 'node:crypto'
import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { toProblem } from '#lib/order/to-problem.ts'
import type { Problem } from '#lib/scheduling/problem.ts'
import { type BenchSize, benchEvening } from './bench-evening.ts'

/** tuning: what the search may be tuned against. hold-out: what nobody looks at but to measure. */
export const SETS = ['tuning', 'hold-out'] as const
export type OptimaSet = (typeof SETS)[number]

/** What the solver proved of one evening of the bench: nothing costs less than `cost`, to the hundredth. */
export interface Optimum {
  readonly size: BenchSize
  readonly seed: number
  /** SHA-256 of the problem, prices and all, but for the shortest and longest that things take: no cost depends on these. */
  readonly digest: string
  /** That of the best schedule, as the verifier reckons it. */
  readonly cost: number
  /** Seconds of the solver by the wall clock, of a busy machine. */
  readonly seconds: number
}

/** An evening that was tried and is not stored: the quick tier broke one of its wishes, or its proof stayed open. */
export interface PassedOver {
  readonly size: BenchSize
  readonly seed: number
  readonly why: 'wish' | 'open'
}

export interface Optima {
  readonly how: string
  readonly solver: string
  readonly date: string
  readonly evenings: readonly Optimum[]
  readonly passedOver: readonly PassedOver[]
}

export const digestOf = (problem: Problem): string => {
  const activities = problem.activities.map((activity) => ({
    ...activity,
    modes: activity.modes.map(({ least: _, most: __, usual: ___, ...mode }) => mode),
  }))
  return createHash('sha256')
    .update(JSON.stringify({ ...problem, activities }))
    .digest('hex')
    .slice(0, 16)
}

export const problemOf = ({ size, seed }: Pick<Optimum, 'size' | 'seed'>): Problem => toProblem(benchEvening(seed, size)).problem

const pathOf = (set: OptimaSet): string => fileURLToPath(new URL(`../fixtures/optima-${set}.json`, import.meta.url))

/** As they are stored, whether or not they still fit the generator. */
export const readOptima = (set: OptimaSet): Optima | null =>
  existsSync(pathOf(set)) ? (JSON.parse(readFileSync(pathOf(set), 'utf8')) as Optima) : null

export const writeOptima = (set: OptimaSet, { evenings, passedOver, ...rest }: Optima): void => {
  const lines = (all: readonly object[]): string => all.map((one) => `\n    ${JSON.stringify(one)}`).join(',')
  const head = JSON.stringify(rest, null, 2).slice(0, -2)
  writeFileSync(pathOf(set), `${head},\n  "evenings": [${lines(evenings)}\n  ],\n  "passedOver": [${lines(passedOver)}\n  ]\n}\n`)
}

/** The stored optima with their problems. Throws when the generator or a price has changed since: they must be made again. */
export const loadOptima = (set: OptimaSet): { readonly optimum: Optimum; readonly problem: Problem }[] => {
  const { evenings } = readOptima(set) ?? { evenings: [] }
  if (evenings.length === 0) throw new Error(`there are no ${set} optima`)
  return evenings.map((optimum) => {
    const problem = problemOf(optimum)
    if (digestOf(problem) !== optimum.digest)
      throw new Error(`${optimum.size} ${optimum.seed} is another problem than the one that was proved: make the optima again`)
    return { optimum, problem }
  })
}

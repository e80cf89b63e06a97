import { expect } from 'vitest'
import type { Kit, Lag, Problem, Use } from '#lib/scheduling/problem.ts'
import type { Placement, Schedule } from '#lib/scheduling/schedule.ts'
import { solve } from '#lib/scheduling/solve.ts'
import { verify } from '#lib/scheduling/verify/verify.ts'
import { delivery, problem, serving } from './small-problem.ts'

/** Solves with a small budget and holds the result against the verifier. */
export const plan = (of: Problem, steps = 600): Schedule => {
  const made = solve(of, { steps, seed: 7 })
  expect(verify(of, made).violations).toEqual([])
  return made
}

/** Where an activity was placed; fails the test when it was left out. */
export const at = (made: Schedule, id: string): Placement => {
  const found = made.placements.find((placement) => placement.activity === id)
  if (!found) throw new Error(`${id} is not placed: ${JSON.stringify(made.left)}`)
  return found
}

/** "id start-end" for every placement, in order of start. */
export const times = (made: Schedule): string[] =>
  made.placements.map(({ activity, start, end }) => `${activity} ${start}-${end}`)

/** One dish for one course that is wanted at tick 100. */
export const dinner = (parts: Partial<Problem>): Problem =>
  problem({
    servings: [serving('main', { role: { kind: 'first', sitDown: 100 }, earliest: 100 })],
    deliveries: [delivery('dish', 'main', { early: 0, keeps: { most: 0, bound: 'quality', place: 'home', uses: [] } })],
    ...parts,
  })

export const lag = (from: string, to: string, parts: Partial<Lag> = {}): Lag => ({
  from,
  to,
  edge: 'end',
  least: 0,
  bound: 'quality',
  ...parts,
})

export const ring = (size: number, count = 1): Kit => ({ kind: 'ring', id: `ring-${size}`, place: 'home', size, count })
export const oven = (parts: Partial<Extract<Kit, { kind: 'oven' }>> = {}): Kit => ({
  kind: 'oven',
  id: 'oven',
  place: 'home',
  shelves: 2,
  maxC: 250,
  up: 10,
  down: 5,
  ...parts,
})
export const store = (of: string, capacity: number): Kit => ({ kind: 'store', id: of, place: 'home', of, capacity })

export const onRing = (size = 1): Use => ({ kind: 'ring', size })
export const inOven = (lowC: number, highC: number, parts: Partial<Extract<Use, { kind: 'oven' }>> = {}): Use => ({
  kind: 'oven',
  shelves: 1,
  lowC,
  highC,
  preheated: false,
  ...parts,
})
export const fromStore = (of: string, amount = 1): Use => ({ kind: 'store', of, amount })

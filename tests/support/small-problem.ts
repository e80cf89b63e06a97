import type { Activity, Cook, Delivery, Mode, Problem, Serving } from '#lib/scheduling/problem.ts'
import { WEIGHTS } from '#lib/scheduling/problem.ts'
import type { Placement, Schedule } from '#lib/scheduling/schedule.ts'

/** Small problems and schedules for tests, with everything that a test does not speak of left empty. */
export const problem = (parts: Partial<Problem>): Problem => ({
  horizon: { from: 0, to: 200 },
  activities: [],
  lags: [],
  together: [],
  cooks: [],
  kit: [],
  servings: [],
  deliveries: [],
  weights: WEIGHTS,
  ...parts,
})

export const cook = (id: string, parts: Partial<Cook> = {}): Cook => ({
  id,
  host: false,
  eats: false,
  pace: 1,
  presence: [{ place: 'home', from: 0, to: 200 }],
  ...parts,
})

export const mode = (care: Mode['care'], likely: number, parts: Partial<Mode> = {}): Mode => ({
  care,
  cooks: 1,
  least: likely,
  likely,
  most: likely,
  touches: [],
  uses: [],
  ...parts,
})

export const activity = (id: string, only: Mode, parts: Partial<Activity> = {}): Activity => ({
  id,
  place: 'home',
  at: 'kitchen',
  plating: false,
  claimed: [],
  modes: [only],
  ...parts,
})

export const serving = (id: string, parts: Partial<Serving> = {}): Serving => ({
  id,
  role: { kind: 'next' },
  eating: 10,
  clearing: 2,
  pouring: 0,
  wait: { ideal: [0, 10], most: 20 },
  ...parts,
})

export const delivery = (id: string, of: string, parts: Partial<Delivery> = {}): Delivery => ({
  id,
  serving: of,
  early: 5,
  late: 0,
  keeps: { most: 20, bound: 'quality', place: 'home', uses: [] },
  ...parts,
})

export const placed = (id: string, start: number, end: number, parts: Partial<Placement> = {}): Placement => ({
  activity: id,
  mode: 0,
  start,
  end,
  cooks: [],
  kit: [],
  touches: [],
  ...parts,
})

export const schedule = (placements: readonly Placement[], parts: Partial<Schedule> = {}): Schedule => ({
  placements,
  servings: [],
  keeping: [],
  left: [],
  ...parts,
})

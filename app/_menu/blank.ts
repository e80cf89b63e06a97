import type { Evening } from '#lib/domain/evening.ts'
import type { Course, Dish, Step, Way } from '#lib/domain/menu.ts'
import type { Drink } from '#lib/domain/people.ts'
import { coversOf } from '#lib/domain/portions.ts'

/** New entries begin with what is most usual; every word of them can be changed. */
export const blankCourse = (id: string): Omit<Course, 'order'> => ({
  id,
  name: 'A new course',
  service: 'plated',
  eating: { least: 'PT15M', likely: 'PT20M', most: 'PT30M' },
  clearing: 'PT5M',
  pouring: 'PT2M',
  wait: { ideal: ['PT4M', 'PT12M'], most: 'PT15M' },
})

export const blankDish = (id: string, course: string, evening: Evening): Omit<Dish, 'order'> => ({
  id,
  course,
  name: 'A new dish',
  kitchen: evening.host,
  yields: coversOf(evening, course),
  state: 'on',
  toTable: { early: 'PT0S', late: 'PT0S' },
  keeps: { how: 'hot', most: 'PT10M', kind: 'quality', uses: [] },
  notes: '',
})

export const blankWay: Way = {
  care: 'hands-on',
  cooks: 1,
  takes: { least: 'PT8M', likely: 'PT10M', most: 'PT15M' },
  touches: [],
  uses: [],
}

export const blankStep = (id: string, dish: string | null, previous: Step | undefined): Omit<Step, 'order'> => ({
  id,
  dish,
  does: '',
  role: dish === null ? 'chore' : 'make',
  where: 'kitchen',
  ways: [blankWay],
  after: previous ? [{ step: previous.id, from: 'end', least: 'PT0S', kind: 'quality' }] : [],
})

export const blankDrink = (id: string, course: string, role: Drink['role']): Omit<Drink, 'order'> => ({
  id,
  course,
  name: role === 'with' ? 'Wine' : 'Water',
  role,
  mlEach: role === 'with' ? 100 : 200,
  abv: role === 'with' ? 12.5 : 0,
})

import type { At, Span } from '#lib/domain/atoms.ts'
import { durationOf } from '#lib/domain/duration.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { Cook, Kit, Kitchen, Use } from '#lib/domain/kitchen.ts'
import type { After, Course, Dish, Step, Touch, Way } from '#lib/domain/menu.ts'
import { parseEvening } from '#lib/domain/parse.ts'
import type { Claim, NightFact } from '#lib/domain/people.ts'

/** An evening that reads like one: `evening(course('main', dish('roast', step('roast', 90, oven(160, 180)))))`. */

type Change<T> = (thing: T) => T
const apply = <T>(thing: T, changes: readonly Change<T>[]): T => changes.reduce((made, change) => change(made), thing)

/** Minutes as ISO 8601. */
export const min = (minutes: number): string => durationOf(Math.round(minutes * 60))
const spanOf = (minutes: number | readonly [number, number, number]): Span => {
  const [least, likely, most] = typeof minutes === 'number' ? [minutes, minutes, minutes] : minutes
  return { least: min(least), likely: min(likely), most: min(most) }
}

/** "19:30", or "-1 19:30" for the day before. */
export const at = (text: string): At => {
  const [time, day] = text.split(' ').reverse()
  return { day: Number(day ?? 0), time: time ?? '' }
}

const key = (n: number): string => `a${String(n).padStart(3, '0')}`

// Ways

const lastWay =
  (change: Change<Way>): Change<Step> =>
  (step) => ({ ...step, ways: step.ways.map((way, index) => (index === step.ways.length - 1 ? change(way) : way)) })

export const using = (use: Use): Change<Step> => lastWay((way) => ({ ...way, uses: [...way.uses, use] }))
export const ring = (size: 'small' | 'medium' | 'large') => using({ kind: 'ring', size })
export const ovenUse = (lowC: number, highC: number, more: Partial<Extract<Use, { kind: 'oven' }>> = {}): Use => ({
  kind: 'oven',
  shelves: 1,
  lowC,
  highC,
  preheated: true,
  ...more,
})
/** Left in the oven, put in and taken out. */
export const oven = (lowC: number, highC: number, more: Partial<Extract<Use, { kind: 'oven' }>> = {}): Change<Step> =>
  lastWay((way) => ({
    ...way,
    care: 'leave',
    touches: [
      { when: 'in', takes: min(1), lateBy: min(0) },
      { when: 'out', takes: min(1), lateBy: min(2) },
    ],
    uses: [...way.uses, ovenUse(lowC, highC, more)],
  }))
export const worktop = (places = 1) => using({ kind: 'worktop', places })
export const fridge = (places = 1) => using({ kind: 'cold', keep: 'cold', places })
export const freezer = (places = 1) => using({ kind: 'cold', keep: 'frozen', places })
export const tool = (name: string, count = 1) => using({ kind: 'tool', tool: name, count })
export const eye = lastWay((way) => ({ ...way, care: 'eye' }))
export const leave = lastWay((way) => ({ ...way, care: 'leave' }))
export const cooks = (count: number) => lastWay((way) => ({ ...way, cooks: count }))
export const upTo = (minutes: number) => lastWay((way) => ({ ...way, care: 'leave', upTo: min(minutes) }))
export const touch = (when: 'in' | 'out' | number, takes: number, lateBy = 0): Change<Step> =>
  lastWay((way) => ({
    ...way,
    touches: [
      ...way.touches,
      { when: typeof when === 'number' ? { every: min(when) } : when, takes: min(takes), lateBy: min(lateBy) } satisfies Touch,
    ],
  }))
/** Another way of doing the step; what follows is about this one. */
export const or =
  (minutes: number | readonly [number, number, number]): Change<Step> =>
  (step) => ({
    ...step,
    ways: [...step.ways, { care: 'hands-on', cooks: 1, takes: spanOf(minutes), touches: [], uses: [] }],
  })

// Steps

export const follows =
  (step: string, least = 0, most?: number, more: Partial<After> = {}): Change<Step> =>
  (each) => ({
    ...each,
    after: [
      ...each.after,
      { step, from: 'end', least: min(least), ...(most === undefined ? {} : { most: min(most) }), kind: 'quality', ...more },
    ],
  })
export const notBefore =
  (time: string): Change<Step> =>
  (step) => ({ ...step, earliest: at(time) })
export const notAfter =
  (time: string): Change<Step> =>
  (step) => ({ ...step, latest: at(time) })
export const vessel =
  (id: string): Change<Step> =>
  (step) => ({ ...step, vessel: id })
export const batch =
  (portions: number, together = 1): Change<Step> =>
  (step) => ({ ...step, batch: { portions, together } })
export const role =
  (name: Step['role']): Change<Step> =>
  (step) => ({ ...step, role: name })
export const where =
  (place: Step['where']): Change<Step> =>
  (step) => ({ ...step, where: place })

/** Hands-on by one cook unless a change says otherwise. */
export const step = (id: string, minutes: number | readonly [number, number, number], ...changes: Change<Step>[]): Step =>
  apply<Step>(
    {
      id,
      dish: null,
      order: key(0),
      does: `Do ${id}`,
      role: 'make',
      where: 'kitchen',
      ways: [{ care: 'hands-on', cooks: 1, takes: spanOf(minutes), touches: [], uses: [] }],
      after: [],
    },
    changes,
  )

// Dishes and courses

export interface DishDraft {
  readonly dish: Dish
  readonly steps: readonly Step[]
}
export interface CourseDraft {
  readonly course: Course
  readonly dishes: readonly DishDraft[]
}

/** Made at home, reaches the table on the minute, keeps for ten minutes. */
export const dish = (id: string, ...parts: (Step | Change<Dish>)[]): DishDraft => ({
  dish: apply<Dish>(
    {
      id,
      course: '',
      order: key(0),
      name: `Dish ${id}`,
      kitchen: 'home',
      yields: 4,
      state: 'on',
      toTable: { early: min(0), late: min(0) },
      keeps: { how: 'hot', most: min(10), kind: 'quality', uses: [] },
      notes: '',
    },
    parts.filter((part) => typeof part === 'function'),
  ),
  steps: parts.filter((part): part is Step => typeof part === 'object').map((each) => ({ ...each, dish: id })),
})
export const dishWith =
  (fields: Partial<Dish>): Change<Dish> =>
  (each) => ({ ...each, ...fields })

/** Eaten in 20 min, cleared in 5, wanted 0 to 10 min after the plates before it. */
export const course = (id: string, ...parts: (DishDraft | Change<Course>)[]): CourseDraft => ({
  course: apply<Course>(
    {
      id,
      order: key(0),
      name: `Course ${id}`,
      service: 'plated',
      eating: spanOf(20),
      clearing: min(5),
      pouring: min(0),
      wait: { ideal: [min(0), min(10)], most: min(15) },
    },
    parts.filter((part) => typeof part === 'function'),
  ),
  dishes: parts.filter((part): part is DishDraft => typeof part === 'object'),
})
export const courseWith =
  (fields: Partial<Course>): Change<Course> =>
  (each) => ({ ...each, ...fields })

// Kitchens and cooks

export const HOME_KIT: Kit[] = [
  { id: 'ring-s', kind: 'ring', size: 'small', count: 1 },
  { id: 'ring-m', kind: 'ring', size: 'medium', count: 2 },
  { id: 'ring-l', kind: 'ring', size: 'large', count: 1 },
  { id: 'oven', kind: 'oven', name: 'Oven', shelves: 2, maxC: 250, upPerMin: 8, downPerMin: 3 },
  { id: 'fridge', kind: 'cold', keep: 'cold', places: 4 },
  { id: 'worktop', kind: 'worktop', places: 8 },
  { id: 'sink', kind: 'tool', tool: 'sink', count: 1 },
]

export const kitchen = (id: string, kit: Kit[], toTable = 0): Kitchen => ({
  id,
  name: `Kitchen ${id}`,
  toTable: min(toTable),
  kit,
})

/** A host who eats and is at home from 12:00 to 23:30, unless told otherwise: stays as "home 10:00 12:00". */
export const cook = (id: string, stays: readonly string[] = ['home 12:00 23:30'], fields: Partial<Cook> = {}): Cook => ({
  id,
  name: id,
  host: true,
  eats: true,
  pace: 1,
  presence: stays.map((stay) => {
    const found = /^(\S+) ((?:-?\d )?\S+) ((?:-?\d )?\S+)$/.exec(stay)
    if (!found?.[1] || !found[2] || !found[3]) throw new Error(`not a stay: ${stay}`)
    return { kitchen: found[1], from: at(found[2]), to: at(found[3]) }
  }),
  ...fields,
})

export interface Chores {
  readonly chores: readonly Step[]
}
export const chores = (...steps: Step[]): Chores => ({ chores: steps.map((each) => ({ ...each, dish: null, role: 'chore' })) })

export const claim = (target: string, by: string, ...also: string[]): Claim => ({
  target,
  cook: by,
  ...(also.length > 0 ? { also } : {}),
})

type EveningPart = CourseDraft | Chores | Partial<Evening>

/** Four at half past seven on 14 November 2026 in London, one kitchen, one cook. Throws when the parts make no evening. */
export const evening = (...parts: EveningPart[]): Evening => {
  const drafts = parts.filter((part): part is CourseDraft => 'course' in part)
  const dishes = drafts.flatMap((draft) =>
    draft.dishes.map((each, index) => ({
      steps: each.steps,
      dish: { ...each.dish, course: draft.course.id, order: key(index) },
    })),
  )
  const others = parts.filter((part): part is Chores => 'chores' in part).flatMap((part) => part.chores)
  const fields = parts.filter((part): part is Partial<Evening> => !('course' in part) && !('chores' in part))
  const made = {
    format: 'tableward/1',
    id: 'evening',
    name: 'An evening',
    date: '2026-11-14',
    zone: 'Europe/London',
    guestsFrom: at('19:00'),
    sitDown: at('19:30'),
    covers: 4,
    rules: 'strictest',
    host: 'home',
    kitchens: [kitchen('home', HOME_KIT)],
    cooks: [cook('kim')],
    courses: drafts.map((draft, index) => ({ ...draft.course, order: key(index) })),
    dishes: dishes.map((each) => each.dish),
    steps: [...dishes.flatMap((each) => each.steps), ...others].map((each, index) => ({ ...each, order: key(index) })),
    ingredients: [],
    drinks: [],
    guests: [],
    claims: [],
    night: [] as NightFact[],
    ...Object.assign({}, ...fields),
  }
  const parsed = parseEvening(made)
  if (!parsed.ok) throw new Error(parsed.error.map(({ path, why }) => `${path} ${why}`).join('; '))
  return parsed.value
}

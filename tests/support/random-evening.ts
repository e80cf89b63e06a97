import type { Evening } from '#lib/domain/evening.ts'
import type { Cook, Kit } from '#lib/domain/kitchen.ts'
import type { Dice } from './dice.ts'
import { dice } from './dice.ts'
import { at, chores, claim, cook, course, courseWith, type DishDraft, evening, kitchen, min } from './evening-builders.ts'
import { carriedDish, laying, randomDish } from './random-dish.ts'

/** How big a dinner is. Steps are reached or passed by a few. */
export interface Size {
  readonly steps: number
  readonly courses: number
  readonly cooks: number
}

export const SIZES = {
  small: { steps: 30, courses: 3, cooks: 2 },
  middle: { steps: 60, courses: 4, cooks: 3 },
  large: { steps: 120, courses: 6, cooks: 5 },
} as const satisfies Record<string, Size>

/**
 * A plausible random dinner of our own invention: things made ahead, ovens and rings wanted at once, plating at the end,
 * sometimes a dish brought by a friend. The same seed gives the same evening; it passes `parseEvening`.
 */
export const randomEvening = (seed: number, size: Size = SIZES.small): Evening => {
  const d = dice(seed)
  const friends = size.cooks > 1 && d.chance(0.5)
  const cooks = cooksOf(d, size.cooks, friends)
  const names = Array.from({ length: size.courses }, (_, index) => `course-${index + 1}`)
  const extra = laying(d)
  const dishes = dishesOf(d, names, size.steps - extra.length, friends)
  const welcome = size.courses > 4 && d.chance(0.5)
  return evening(
    {
      id: `random-${seed}`,
      date: d.pick(['2026-11-14', '2027-03-28', '2027-06-05']),
      zone: d.pick(['Europe/London', 'America/Toronto', 'Asia/Kolkata', 'Australia/Adelaide']),
      guestsFrom: at('19:00'),
      sitDown: at('19:30'),
      covers: d.int(4, 4 + size.cooks * 2),
      kitchens: [kitchen('home', kitOf(size)), ...(friends ? [kitchen('other', kitOf(size).map(away), 20)] : [])],
      cooks,
      claims: claimsOf(d, dishes, cooks),
    },
    ...names.map((name, index) =>
      course(
        name,
        courseWith({
          eating: { least: min(12), likely: min(d.int(15, 25)), most: min(30) },
          pouring: min(d.int(0, 2)),
          wait: { ideal: [min(2), min(12)], most: min(20) },
          ...(d.chance(0.3) ? { lead: d.pick(cooks.filter(({ host }) => host)).id } : {}),
          ...(welcome && index === 0
            ? { welcome: true as const, eating: { least: min(5), likely: min(10), most: min(15) } }
            : {}),
        }),
        ...dishes.filter(({ in: of }) => of === name).map(({ draft }) => draft),
      ),
    ),
    chores(...extra),
  )
}

interface Placed {
  readonly in: string
  readonly draft: DishDraft
}

/** Dishes for the courses in turn, until there are steps enough and every course has one. */
const dishesOf = (d: Dice, names: readonly string[], steps: number, friends: boolean): Placed[] => {
  const dishes: Placed[] = []
  const count = () => dishes.reduce((sum, { draft }) => sum + draft.steps.length, 0)
  while (count() < steps || dishes.length < names.length) {
    const id = `dish-${dishes.length + 1}`
    const of = names[dishes.length % names.length] ?? ''
    dishes.push({ in: of, draft: friends && d.chance(0.15) ? carriedDish(d, id, 'other', 20) : randomDish(d, id) })
  }
  return dishes
}

const cooksOf = (d: Dice, count: number, friends: boolean): Cook[] =>
  Array.from({ length: count }, (_, index) => {
    const brings = friends && index === count - 1
    return cook(
      `cook-${index + 1}`,
      brings
        ? ['other -1 10:00 -1 20:00', 'other 10:00 17:30', 'home 18:30 1 01:00']
        : ['home -1 10:00 -1 21:00', 'home 09:00 1 01:00'],
      { host: index < 2 && !brings, eats: index < 2 || d.chance(0.7), pace: d.pick([1, 1, 1, 0.9, 1.2]) },
    )
  })

const kitOf = ({ cooks }: Size): Kit[] => [
  { id: 'ring-s', kind: 'ring', size: 'small', count: 1 },
  { id: 'ring-m', kind: 'ring', size: 'medium', count: cooks > 3 ? 3 : 2 },
  { id: 'ring-l', kind: 'ring', size: 'large', count: cooks > 2 ? 2 : 1 },
  { id: 'oven', kind: 'oven', name: 'Oven', shelves: 2, maxC: 250, upPerMin: 8, downPerMin: 3 },
  ...(cooks > 2
    ? [{ id: 'oven-2', kind: 'oven' as const, name: 'Upper oven', shelves: 1, maxC: 230, upPerMin: 10, downPerMin: 4 }]
    : []),
  { id: 'fridge', kind: 'cold', keep: 'cold', places: 4 + cooks * 2 },
  { id: 'worktop', kind: 'worktop', places: 6 + cooks * 2 },
  { id: 'sink', kind: 'tool', tool: 'sink', count: 1 },
  { id: 'blender', kind: 'tool', tool: 'blender', count: 1 },
]

const away = (kit: Kit): Kit => ({ ...kit, id: `other-${kit.id}` })

const claimsOf = (d: Dice, dishes: readonly Placed[], cooks: readonly Cook[]) => {
  const brings = cooks.find(({ presence }) => presence.some((stay) => stay.kitchen === 'other'))
  return dishes.flatMap(({ draft }) => {
    if (draft.dish.kitchen === 'other') return brings ? [claim(draft.dish.id, brings.id)] : []
    return d.chance(0.25) ? [claim(draft.dish.id, d.pick(cooks.filter((one) => one !== brings)).id)] : []
  })
}

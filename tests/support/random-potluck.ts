import type { Evening } from '#lib/domain/evening.ts'
import type { Kit, Kitchen } from '#lib/domain/kitchen.ts'
import { type Dice, dice } from './dice.ts'
import {
  at,
  chores,
  claim,
  cook,
  course,
  courseWith,
  type DishDraft,
  evening,
  HOME_KIT,
  kitchen,
  min,
} from './evening-builders.ts'
import { carriedDish, laying, randomDish } from './random-dish.ts'

const HOMES = ['elm', 'ash', 'oak'] as const

const homeOf = (d: Dice, id: string, likely: number): Kitchen => ({
  ...kitchen(
    id,
    [...HOME_KIT, BLENDER].map((kit) => ({ ...kit, id: `${id}-${kit.id}` })),
    likely,
  ),
  ...(d.chance(0.7) ? { toTableMost: min(likely + d.int(0, likely)) } : {}),
})

const BLENDER: Kit = { id: 'blender', kind: 'tool', tool: 'blender', count: 1 }

const clock = (minutes: number): string =>
  `${String(Math.floor(minutes / 60)).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`

/** Something carried from a home, as often as not with little time on the road. */
const brought = (d: Dice, id: string, home: string, likely: number): DishDraft => {
  const { dish, steps } = carriedDish(d, id, home, likely)
  const limit = d.pick([2 * likely + 60, 120, 240])
  return {
    dish: { ...dish, carry: { how: d.pick(['cold', 'hot']), most: min(limit), kind: d.pick(['quality', 'safety']) } },
    steps,
  }
}

/**
 * A random dinner to which two or three cooks bring one to three dishes each, from homes of their own. The hours between leaving and
 * being there are sometimes shorter than the way. The same seed gives the same evening.
 */
export const randomPotluck = (seed: number): Evening => {
  const d = dice(seed)
  const homes = HOMES.slice(0, d.int(2, 3)).map((id) => ({ id, likely: d.int(4, 30) }))
  const names = Array.from({ length: d.int(1, 3) }, (_, index) => `course-${index + 1}`)
  const drafts = homes.flatMap(({ id, likely }) =>
    Array.from({ length: d.int(1, 3) }, (_, k) => ({ by: id, draft: brought(d, `${id}-${k + 1}`, id, likely) })),
  )
  const own = names.map((_, index) => ({ by: null, draft: randomDish(d, `own-${index + 1}`) }))
  const all = [...own, ...drafts].map((one, index) => ({ ...one, in: names[index % names.length] }))
  const leaves = homes.map(({ likely }) => {
    const until = 1020 + d.int(0, 90)
    return { until: clock(until), there: clock(until + Math.max(1, likely + d.int(-5, 40))) }
  })
  return evening(
    {
      id: `potluck-${seed}`,
      guestsFrom: at('19:00'),
      sitDown: at('19:30'),
      covers: d.int(5, 12),
      kitchens: [kitchen('home', [...HOME_KIT, BLENDER]), ...homes.map(({ id, likely }) => homeOf(d, id, likely))],
      cooks: [
        cook('host', ['home -1 10:00 -1 21:00', 'home 09:00 1 01:00']),
        ...homes.map(({ id }, index) =>
          cook(
            `${id}-cook`,
            [`${id} -1 10:00 -1 21:00`, `${id} 09:00 ${leaves[index]?.until}`, `home ${leaves[index]?.there} 1 01:00`],
            {
              host: false,
              pace: d.pick([1, 1, 0.9, 1.2]),
            },
          ),
        ),
      ],
      claims: drafts.flatMap(({ by, draft }) => (d.chance(0.8) ? [claim(draft.dish.id, `${by}-cook`)] : [])),
    },
    ...names.map((name) =>
      course(
        name,
        courseWith({ wait: { ideal: [min(2), min(15)], most: min(25) } }),
        ...all.filter((one) => one.in === name).map(({ draft }) => draft),
      ),
    ),
    chores(...laying(d)),
  )
}

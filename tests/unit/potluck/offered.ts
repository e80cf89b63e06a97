import type { Evening } from '#lib/domain/evening.ts'
import type { Kit } from '#lib/domain/kitchen.ts'
import type { Offer } from '#lib/domain/offer.ts'
import {
  cook,
  course,
  courseWith,
  dish,
  evening,
  follows,
  HOME_KIT,
  kitchen,
  min,
  oven,
  role,
  step,
} from '#tests/support/evening-builders.ts'

const flatKit: Kit[] = [
  { id: 'flat-oven', kind: 'oven', name: 'Oven', shelves: 2, maxC: 230, upPerMin: 8, downPerMin: 3 },
  { id: 'flat-ring', kind: 'ring', size: 'medium', count: 2 },
  { id: 'flat-fridge', kind: 'cold', keep: 'cold', places: 4 },
]

/** A small potluck: a joint in the host's one oven, a friend 20 min away who is there from when the guests come, and these offers. */
export const potluck = (...offers: Offer[]): Evening =>
  evening(
    {
      covers: 6,
      kitchens: [
        kitchen('home', [...HOME_KIT, { id: 'grater', kind: 'tool', tool: 'grater', count: 1 }]),
        { ...kitchen('flat', flatKit, 20), toTableMost: min(30) },
      ],
      cooks: [cook('kim'), cook('noor', ['flat 09:00 18:30', 'home 19:00 23:30'], { host: false, name: 'Noor' })],
      offers: offers.map((offer, at) => ({ ...offer, order: `a${at}` })),
    },
    course('start', courseWith({ wait: { ideal: [min(0), min(5)], most: min(15) } })),
    course(
      'main',
      dish(
        'joint',
        step('roast', 120, oven(150, 170, { shelves: 2 })),
        step('carve', 5, role('plate'), follows('roast', 10, 30)),
      ),
    ),
    course('sweet', dish('fool', step('whip', 15), step('serve', 3, role('plate'), follows('whip')))),
  )

/** Food of Noor's, ready and at the room's heat, unless told otherwise. */
export const offer = (fields: Partial<Offer> = {}): Offer => ({
  id: 'offer-1',
  order: 'a0',
  cook: 'noor',
  kind: 'dish',
  name: 'Onion tart',
  course: 'main',
  kitchen: 'flat',
  portions: 6,
  arrives: 'ready',
  how: 'room',
  home: { least: min(30), likely: min(40), most: min(50) },
  state: 'offered',
  ...fields,
})

/** One that says something in every field. */
export const whole: Offer = offer({
  suits: ['vegan'],
  arrives: 'to-heat',
  how: 'cold',
  box: { name: 'a cool box', most: min(60 * 2) },
  atHost: {
    shelves: 1,
    lowC: 160,
    highC: 190,
    ring: 'medium',
    heat: { least: min(10), likely: min(15), most: min(30) },
    finish: { least: min(10), likely: min(15), most: min(30) },
    cold: 2,
    tools: ['grater'],
  },
  vessel: { name: 'a blue tin', goesHome: true },
})

/** Ids "new-0", "new-1", … */
export const idMaker = (): (() => string) => {
  let made = 0
  return () => {
    made += 1
    return `new-${made}`
  }
}

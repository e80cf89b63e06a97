import type { Evening } from '#lib/domain/evening.ts'
import type { Kit, Kitchen } from '#lib/domain/kitchen.ts'
import type { KeepHow, Step } from '#lib/domain/menu.ts'
import {
  at,
  chores,
  claim,
  cook,
  course,
  courseWith,
  type DishDraft,
  dish,
  dishWith,
  evening,
  eye,
  follows,
  fridge,
  HOME_KIT,
  kitchen,
  leave,
  min,
  notAfter,
  notBefore,
  or,
  oven,
  ring,
  role,
  step,
  tool,
  upTo,
  where,
  worktop,
} from './evening-builders.ts'

/** Evenings of our own invention at which several bring what they cooked in kitchens of their own. */

type Minutes = readonly [least: number, likely: number, most: number]

const smallKit = (id: string, more: readonly Kit[] = []): Kit[] => [
  { id: `${id}-ring-m`, kind: 'ring', size: 'medium', count: 2 },
  { id: `${id}-ring-l`, kind: 'ring', size: 'large', count: 1 },
  { id: `${id}-oven`, kind: 'oven', name: 'Oven', shelves: 2, maxC: 240, upPerMin: 7, downPerMin: 3 },
  { id: `${id}-fridge`, kind: 'cold', keep: 'cold', places: 4 },
  { id: `${id}-worktop`, kind: 'worktop', places: 4 },
  { id: `${id}-sink`, kind: 'tool', tool: 'sink', count: 1 },
  ...more,
]

const away = (id: string, likely: number, most: number, kit: Kit[] = smallKit(id)): Kitchen => ({
  ...kitchen(id, kit, likely),
  toTableMost: min(most),
})

/** At home until they leave, and at the host's from then on. */
const guestCook = (id: string, from: string, until: string, there: string, pace = 1) =>
  cook(id, [`${from} 09:00 ${until}`, `home ${there} 1 00:30`], { host: false, pace })

const hostCook = (id: string) => cook(id, ['home -1 10:00 -1 21:00', 'home 09:00 1 01:00'])

/** How a dish travels, and in which state it arrives. */
interface Brought {
  readonly from: string
  readonly way: Minutes
  readonly how: KeepHow
  readonly most: number
  readonly kind?: 'quality' | 'safety'
}

const carryStep = (id: string, { way }: Brought, after: string, most?: number): Step =>
  step(`${id}-carry`, way, role('carry'), where('outside'), follows(after, 0, most))

const carriedBy = ({ from, how, most, kind = 'quality' }: Brought) =>
  dishWith({ kitchen: from, carry: { how, most: min(most), kind } })

/** Baked at home, in the oven again beside the table. */
const bakeToHeat = (id: string, brought: Brought, heat: Minutes, keeps = 12): DishDraft =>
  dish(
    id,
    carriedBy(brought),
    dishWith({ toTable: { early: min(5), late: min(2) }, keeps: { how: 'hot', most: min(keeps), kind: 'quality', uses: [] } }),
    step(`${id}-cut`, [15, 20, 26], worktop()),
    step(`${id}-bake`, [40, 45, 55], oven(170, 190), follows(`${id}-cut`, 0, 120)),
    carryStep(id, brought, `${id}-bake`, 240),
    step(`${id}-heat`, heat, oven(160, 190), role('finish'), follows(`${id}-carry`, 0, 90)),
  )

/** Stewed at home; warm it on a ring or in the oven beside the table. */
const stewToHeat = (id: string, brought: Brought): DishDraft =>
  dish(
    id,
    carriedBy(brought),
    dishWith({ toTable: { early: min(4), late: min(2) }, keeps: { how: 'hot', most: min(12), kind: 'quality', uses: [] } }),
    step(`${id}-chop`, [15, 20, 25], worktop()),
    step(`${id}-stew`, [60, 75, 95], leave, ring('medium'), follows(`${id}-chop`, 0, 60)),
    carryStep(id, brought, `${id}-stew`, 300),
    step(
      `${id}-heat`,
      [10, 14, 18],
      eye,
      ring('medium'),
      role('finish'),
      follows(`${id}-carry`, 0, 120),
      or([25, 30, 36]),
      oven(150, 190),
    ),
    step(`${id}-ladle`, [3, 4, 5], role('plate'), worktop(2), follows(`${id}-heat`, 0, 10)),
  )

/** Carried hot in a box and served from it. */
const hotInBox = (id: string, brought: Brought, plate = 4): DishDraft =>
  dish(
    id,
    carriedBy(brought),
    dishWith({ toTable: { early: min(5), late: min(2) }, keeps: { how: 'hot', most: min(10), kind: 'quality', uses: [] } }),
    step(`${id}-chop`, [10, 15, 20], worktop()),
    step(`${id}-cook`, [30, 35, 42], eye, ring('medium'), follows(`${id}-chop`, 0, 90)),
    carryStep(id, brought, `${id}-cook`, 20),
    step(`${id}-serve`, plate, role('plate'), worktop(2), follows(`${id}-carry`)),
  )

/** Set cold at home, carried cold, in the host's fridge until it is turned out. */
const setCold = (id: string, brought: Brought, places = 1): DishDraft =>
  dish(
    id,
    carriedBy(brought),
    dishWith({ toTable: { early: min(8), late: min(0) }, keeps: { how: 'cold', most: min(20), kind: 'quality', uses: [] } }),
    step(`${id}-mix`, [12, 18, 24], worktop()),
    step(`${id}-set`, [180, 180, 200], upTo(1200), fridge(places), follows(`${id}-mix`, 0, 30, { kind: 'safety' })),
    carryStep(id, brought, `${id}-set`, 20),
    step(`${id}-fridge`, [1, 1, 1], upTo(420), fridge(places), role('finish'), follows(`${id}-carry`, 0, 30, { kind: 'safety' })),
    step(`${id}-turn-out`, [4, 6, 8], role('finish'), worktop(), follows(`${id}-fridge`, 0, 20)),
  )

/** Washed at home, tossed beside the table. */
const toToss = (id: string, brought: Brought): DishDraft =>
  dish(
    id,
    carriedBy(brought),
    dishWith({ toTable: { early: min(10), late: min(0) }, keeps: { how: 'cold', most: min(20), kind: 'quality', uses: [] } }),
    step(`${id}-wash`, [6, 8, 10], tool('sink')),
    step(`${id}-dress`, [4, 5, 6]),
    step(`${id}-carry`, brought.way, role('carry'), where('outside'), follows(`${id}-wash`, 0, 240), follows(`${id}-dress`)),
    step(`${id}-toss`, [3, 4, 5], role('finish'), follows(`${id}-carry`, 0, 240)),
  )

/** The host's own roast, which has the oven until shortly before the main course. */
const hostRoast = (id: string, shelves: number): DishDraft =>
  dish(
    id,
    dishWith({ toTable: { early: min(4), late: min(2) } }),
    step(`${id}-rub`, [6, 8, 10], worktop(), notBefore('10:00')),
    step(`${id}-roast`, [80, 90, 105], oven(160, 180, { shelves }), follows(`${id}-rub`, 0, 120)),
    step(`${id}-rest`, [15, 15, 15], leave, upTo(40), worktop(), follows(`${id}-roast`, 0, 3)),
    step(`${id}-carve`, [5, 7, 9], role('finish'), worktop(2), follows(`${id}-rest`, 0, 10)),
  )

const rice = (id: string): DishDraft =>
  dish(
    id,
    dishWith({ toTable: { early: min(5), late: min(2) } }),
    step(`${id}-rinse`, [3, 4, 5], tool('sink')),
    step(`${id}-simmer`, [17, 19, 22], leave, ring('large'), follows(`${id}-rinse`, 0, 60)),
    step(`${id}-fork`, [2, 3, 4], role('finish'), follows(`${id}-simmer`, 0, 10)),
  )

const bread = (id: string): DishDraft =>
  dish(
    id,
    dishWith({ toTable: { early: min(12), late: min(4) }, keeps: { how: 'warm', most: min(15), kind: 'quality', uses: [] } }),
    step(`${id}-warm`, [6, 8, 10], oven(150, 200), role('finish')),
  )

const laid = chores(step('lay', [12, 15, 18], where('table'), notBefore('15:00'), notAfter('19:00')))

const relaxed = courseWith({ wait: { ideal: [min(2), min(15)], most: min(25) } })
const long = courseWith({
  eating: { least: min(25), likely: min(35), most: min(50) },
  wait: { ideal: [min(2), min(15)], most: min(25) },
})

/** One oven, wanted by three who come with something to heat. */
const street: Evening = evening(
  {
    id: 'street',
    covers: 9,
    kitchens: [kitchen('home', HOME_KIT), away('corner', 6, 9), away('yard', 12, 20)],
    cooks: [hostCook('ada'), guestCook('bea', 'corner', '18:20', '18:40'), guestCook('cid', 'yard', '17:50', '18:30')],
    claims: [claim('leeks', 'bea'), claim('marrow', 'cid'), claim('cream', 'cid')],
  },
  course(
    'main',
    long,
    hostRoast('shoulder', 1),
    bakeToHeat('leeks', { from: 'corner', way: [5, 6, 9], how: 'room', most: 90 }, [12, 15, 20]),
    bakeToHeat('marrow', { from: 'yard', way: [10, 12, 20], how: 'room', most: 110 }, [18, 20, 25]),
    rice('rice'),
  ),
  course('sweet', relaxed, setCold('cream', { from: 'yard', way: [10, 12, 20], how: 'cold', most: 60, kind: 'safety' })),
  laid,
)

/** One cook brings three dishes of unlike lengths of way, on one trip. */
const oneTrip: Evening = evening(
  {
    id: 'one-trip',
    covers: 8,
    kitchens: [kitchen('home', HOME_KIT), away('loft', 15, 25), away('barge', 8, 10)],
    cooks: [hostCook('dot'), guestCook('eli', 'loft', '17:30', '18:20'), guestCook('fay', 'barge', '18:30', '18:45', 1.2)],
    claims: [claim('beans', 'eli'), claim('leaves', 'eli'), claim('jelly', 'eli'), claim('pie', 'fay')],
  },
  course('first', relaxed, toToss('leaves', { from: 'loft', way: [13, 15, 25], how: 'cold', most: 180 })),
  course(
    'main',
    long,
    stewToHeat('beans', { from: 'loft', way: [14, 18, 28], how: 'cold', most: 120 }),
    bakeToHeat('pie', { from: 'barge', way: [7, 8, 10], how: 'warm', most: 80 }, [12, 15, 18]),
  ),
  course('sweet', relaxed, setCold('jelly', { from: 'loft', way: [13, 15, 25], how: 'cold', most: 80, kind: 'safety' })),
  laid,
)

/** From far away, carried hot for longer than is safe: there is no order with it, and one without the heat on the road. */
const far: Evening = evening(
  {
    id: 'far',
    covers: 6,
    kitchens: [kitchen('home', HOME_KIT), away('hill', 45, 70), away('mews', 10, 14)],
    cooks: [hostCook('gus'), guestCook('hal', 'hill', '17:10', '18:30'), guestCook('ivy', 'mews', '18:30', '18:50')],
    claims: [claim('hotpot', 'hal'), claim('slaw', 'ivy')],
  },
  course(
    'main',
    long,
    hotInBox('hotpot', { from: 'hill', way: [40, 45, 70], how: 'hot', most: 60, kind: 'safety' }),
    toToss('slaw', { from: 'mews', way: [8, 10, 14], how: 'cold', most: 240 }),
    bread('rolls'),
  ),
  laid,
)

/** Carried hot over a short way: it must leave so late that it is still hot, and so early that a bad day does not matter. */
const nearlyLate: Evening = evening(
  {
    id: 'nearly-late',
    covers: 6,
    kitchens: [kitchen('home', HOME_KIT), away('green', 12, 22), away('dock', 5, 8)],
    cooks: [
      hostCook('jon'),
      cook('kit', ['green 09:00 18:45', 'home 19:10 1 00:30'], { host: false }),
      cook('lil', ['dock 09:00 18:50', 'home 19:00 1 00:30'], { host: false }),
    ],
    claims: [claim('dhal', 'kit'), claim('flan', 'lil')],
  },
  course(
    'main',
    long,
    hotInBox('dhal', { from: 'green', way: [10, 12, 22], how: 'hot', most: 50, kind: 'safety' }),
    rice('pilaf'),
  ),
  course('sweet', relaxed, setCold('flan', { from: 'dock', way: [4, 5, 8], how: 'cold', most: 60, kind: 'safety' })),
  laid,
)

const SMALL_FRIDGE: Kit[] = HOME_KIT.map((kit) => (kit.kind === 'cold' ? { ...kit, places: 3 } : kit))

/** Four kitchens, and three cold dishes that arrive at a fridge with three places, of which the host's own wants one. */
const fullFridge: Evening = evening(
  {
    id: 'full-fridge',
    covers: 10,
    kitchens: [kitchen('home', SMALL_FRIDGE), away('east', 10, 15), away('west', 18, 30), away('south', 7, 9)],
    cooks: [
      hostCook('mab'),
      guestCook('ned', 'east', '18:00', '18:25'),
      guestCook('oda', 'west', '17:45', '18:20', 0.9),
      guestCook('pip', 'south', '18:35', '18:50'),
    ],
    claims: [claim('terrine', 'ned'), claim('trifle', 'oda'), claim('gratin', 'oda'), claim('fool', 'pip')],
  },
  course(
    'first',
    relaxed,
    setCold('terrine', { from: 'east', way: [8, 10, 15], how: 'cold', most: 60, kind: 'safety' }),
    bread('toast'),
  ),
  course(
    'main',
    long,
    hostRoast('ham', 2),
    bakeToHeat('gratin', { from: 'west', way: [15, 18, 30], how: 'room', most: 110 }, [14, 18, 24]),
  ),
  course(
    'sweet',
    relaxed,
    setCold('trifle', { from: 'west', way: [15, 18, 30], how: 'cold', most: 70, kind: 'safety' }),
    setCold('fool', { from: 'south', way: [6, 7, 9], how: 'cold', most: 60, kind: 'safety' }),
  ),
  laid,
)

/** Somebody comes from work when the others are at the first course, and brings the last one. */
const fromWork: Evening = evening(
  {
    id: 'from-work',
    covers: 7,
    kitchens: [kitchen('home', HOME_KIT), away('lane', 10, 16), away('tower', 20, 35)],
    cooks: [
      hostCook('quin'),
      guestCook('rae', 'lane', '18:15', '18:40'),
      cook('sol', ['tower 08:00 11:00', 'tower 19:00 19:20', 'home 20:00 1 00:30'], { host: false }),
    ],
    claims: [claim('soup', 'rae'), claim('panna', 'sol')],
  },
  course('first', relaxed, stewToHeat('soup', { from: 'lane', way: [8, 10, 16], how: 'cold', most: 120 })),
  course('main', long, hostRoast('duck', 1), rice('grains')),
  course('sweet', relaxed, setCold('panna', { from: 'tower', way: [17, 20, 35], how: 'cold', most: 60, kind: 'safety' })),
  laid,
)

/** There in the afternoon to help, home again, and back with what was left to do there. */
const thereAndBack: Evening = evening(
  {
    id: 'there-and-back',
    covers: 8,
    kitchens: [kitchen('home', HOME_KIT), away('farm', 14, 22), away('shop', 6, 10)],
    cooks: [
      hostCook('tess'),
      cook('udo', ['farm 08:00 13:00', 'home 13:30 15:30', 'farm 16:00 18:00', 'home 18:40 1 00:30'], { host: false, pace: 1.1 }),
      guestCook('vi', 'shop', '18:20', '18:35'),
    ],
    claims: [claim('tart', 'udo'), claim('roots', 'udo'), claim('herbs', 'vi')],
  },
  course('first', relaxed, toToss('herbs', { from: 'shop', way: [5, 6, 10], how: 'cold', most: 240 })),
  course(
    'main',
    long,
    bakeToHeat('roots', { from: 'farm', way: [12, 14, 22], how: 'warm', most: 90 }, [15, 18, 22]),
    rice('barley'),
  ),
  course('sweet', relaxed, setCold('tart', { from: 'farm', way: [12, 14, 22], how: 'cold', most: 120, kind: 'safety' })),
  laid,
)

/** Three hot dishes from three homes, each with little time on the road, and one host with one ring free. */
const threeHot: Evening = evening(
  {
    id: 'three-hot',
    covers: 9,
    sitDown: at('19:45'),
    kitchens: [kitchen('home', HOME_KIT), away('north', 9, 14), away('quay', 11, 18), away('park', 4, 6)],
    cooks: [
      hostCook('wyn'),
      guestCook('xan', 'north', '19:00', '19:20'),
      guestCook('yael', 'quay', '18:55', '19:20', 1.1),
      guestCook('zed', 'park', '19:10', '19:20'),
    ],
    claims: [claim('curry', 'xan'), claim('pulses', 'yael'), claim('bake', 'zed')],
  },
  course(
    'main',
    long,
    hotInBox('curry', { from: 'north', way: [8, 9, 14], how: 'hot', most: 55, kind: 'safety' }),
    stewToHeat('pulses', { from: 'quay', way: [10, 11, 18], how: 'warm', most: 60 }),
    bakeToHeat('bake', { from: 'park', way: [3, 4, 6], how: 'hot', most: 40 }, [10, 12, 15]),
    rice('rice'),
  ),
  course(
    'sweet',
    relaxed,
    dish(
      'plums',
      step('plums-stone', [8, 10, 12], worktop()),
      step('plums-poach', [12, 15, 18], eye, ring('small'), follows('plums-stone', 0, 120)),
      step('plums-serve', [3, 4, 5], role('plate'), follows('plums-poach', 10, 120)),
    ),
  ),
  laid,
)

/** Looked at while the rules were made. */
export const POTLUCKS: readonly Evening[] = [street, oneTrip, far, nearlyLate]
/** Written before the engine was seen to plan any of them, and never tuned on. */
export const HELD_OUT_POTLUCKS: readonly Evening[] = [fullFridge, fromWork, thereAndBack, threeHot]
export { far }

import type { Step } from '#lib/domain/menu.ts'
import type { Dice } from './dice.ts'
import {
  batch,
  cooks,
  type DishDraft,
  dish,
  dishWith,
  eye,
  follows,
  fridge,
  leave,
  min,
  notAfter,
  notBefore,
  or,
  oven,
  ovenUse,
  ring,
  role,
  step,
  tool,
  touch,
  upTo,
  using,
  vessel,
  where,
  worktop,
} from './evening-builders.ts'

/** Around a likely length in minutes: somewhat shorter at the least, longer at the most. */
const around = (d: Dice, likely: number): [number, number, number] => [
  Math.max(1, Math.round(likely * 0.85)),
  likely,
  Math.ceil(likely * d.pick([1.15, 1.25, 1.4])),
]

type Shape = (d: Dice, id: string, finish: Step['role']) => DishDraft

const plate = (d: Dice, id: string, after: string, most: number): Step =>
  step(
    `${id}-plate`,
    around(d, d.int(3, 5)),
    role('plate'),
    cooks(d.pick([1, 1, 2])),
    worktop(d.int(2, 4)),
    follows(after, 0, most),
  )

const soup: Shape = (d, id, finish) =>
  dish(
    id,
    step(`${id}-dice`, around(d, d.int(10, 20)), worktop(), notBefore('-1 15:00')),
    step(`${id}-simmer`, around(d, d.int(20, 35)), eye, ring('medium'), vessel(`${id}-pot`), follows(`${id}-dice`, 0, 300)),
    step(`${id}-blend`, around(d, 5), tool('blender'), follows(`${id}-simmer`, 0, 30)),
    step(`${id}-warm`, around(d, d.int(7, 10)), eye, ring('medium'), role(finish), follows(`${id}-blend`, 0, 1500)),
    plate(d, id, `${id}-warm`, 8),
  )

const roast: Shape = (d, id) => {
  const low = d.pick([140, 160, 180])
  return dish(
    id,
    step(`${id}-rub`, around(d, d.int(6, 12)), worktop(), notBefore('10:00')),
    step(
      `${id}-roast`,
      around(d, d.int(60, 150)),
      oven(low, low + d.int(15, 30), { shelves: d.pick([1, 1, 2]) }),
      follows(`${id}-rub`, 0, 120),
    ),
    step(`${id}-rest`, around(d, 15), leave, upTo(45), worktop(), follows(`${id}-roast`, 0, 3)),
    step(`${id}-carve`, around(d, d.int(5, 8)), role('finish'), worktop(2), follows(`${id}-rest`, 0, 10)),
    plate(d, id, `${id}-carve`, 6),
  )
}

const gratin: Shape = (d, id) =>
  dish(
    id,
    dishWith({
      toTable: { early: min(5), late: min(2) },
      keeps: { how: 'hot', most: min(20), kind: 'quality', uses: d.chance(0.4) ? [ovenUse(70, 90, { preheated: false })] : [] },
    }),
    step(`${id}-slice`, around(d, d.int(10, 15)), worktop(), notBefore('09:00')),
    step(`${id}-layer`, around(d, 8), worktop(), follows(`${id}-slice`, 0, 60)),
    step(
      `${id}-bake`,
      around(d, d.int(30, 45)),
      oven(170, 200, d.chance(0.3) ? { doorShut: min(10) } : {}),
      follows(`${id}-layer`, 0, 300),
    ),
  )

const greens: Shape = (d, id) =>
  dish(
    id,
    dishWith({ toTable: { early: min(4), late: min(1) }, keeps: { how: 'hot', most: min(6), kind: 'quality', uses: [] } }),
    step(`${id}-trim`, around(d, d.int(5, 10)), tool('sink'), notBefore('12:00')),
    step(`${id}-water`, around(d, 10), leave, ring('large'), vessel(`${id}-pan`)),
    step(
      `${id}-boil`,
      around(d, d.int(4, 7)),
      eye,
      ring('large'),
      vessel(`${id}-pan`),
      role('finish'),
      follows(`${id}-water`, 0, 15),
      follows(`${id}-trim`),
    ),
  )

const salad: Shape = (d, id, finish) =>
  dish(
    id,
    dishWith({ toTable: { early: min(10), late: min(0) }, keeps: { how: 'cold', most: min(25), kind: 'quality', uses: [] } }),
    step(`${id}-wash`, around(d, d.int(6, 10)), tool('sink'), notBefore('14:00')),
    step(`${id}-dressing`, around(d, 5), notBefore('10:00')),
    step(`${id}-toss`, around(d, 3), role(finish), follows(`${id}-wash`, 0, 240), follows(`${id}-dressing`)),
  )

const braise: Shape = (d, id, finish) =>
  dish(
    id,
    step(`${id}-brown`, around(d, d.int(8, 14)), ring('large'), notBefore('-1 14:00')),
    step(`${id}-braise`, around(d, d.int(60, 100)), leave, ring('medium'), touch(30, 1, 8), follows(`${id}-brown`, 0, 20)),
    step(`${id}-reheat`, around(d, 12), eye, ring('medium'), role(finish), follows(`${id}-braise`, 0, 1800)),
    plate(d, id, `${id}-reheat`, 8),
  )

const pudding: Shape = (d, id, finish) =>
  dish(
    id,
    dishWith({
      keeps: {
        how: 'cold',
        most: min(15),
        kind: 'safety',
        uses: d.chance(0.5) ? [{ kind: 'cold', keep: 'cold', places: 1 }] : [],
      },
    }),
    step(`${id}-mix`, around(d, d.int(10, 18)), worktop(), notBefore('-1 12:00'), notAfter('14:00')),
    step(`${id}-chill`, [180, 180, 200], upTo(2000), fridge(), follows(`${id}-mix`, 0, 10, { kind: 'safety' })),
    step(`${id}-turn-out`, around(d, 4), role(finish), follows(`${id}-chill`, 0, 15)),
    plate(d, id, `${id}-turn-out`, 8),
  )

const tart: Shape = (d, id, finish) =>
  dish(
    id,
    dishWith({ toTable: { early: min(20), late: min(0) }, keeps: { how: 'room', most: min(60), kind: 'quality', uses: [] } }),
    step(`${id}-roll`, around(d, 15), worktop(2), notBefore('-1 10:00')),
    step(`${id}-fill`, around(d, 10), worktop(), follows(`${id}-roll`, 20, 900)),
    step(`${id}-bake`, around(d, d.int(25, 40)), oven(175, 190), follows(`${id}-fill`, 0, 30)),
    step(`${id}-cut`, around(d, 4), role(finish), follows(`${id}-bake`, 25, 900)),
  )

const fritters: Shape = (d, id) =>
  dish(
    id,
    dishWith({
      toTable: { early: min(3), late: min(2) },
      keeps: { how: 'hot', most: min(12), kind: 'quality', uses: [ovenUse(70, 90, { preheated: false })] },
    }),
    step(`${id}-batter`, around(d, 8), notBefore('11:00')),
    step(`${id}-fry`, around(d, 5), batch(4), ring('medium'), role('finish'), follows(`${id}-batter`, 10, 180)),
  )

const rolls: Shape = (d, id) =>
  dish(
    id,
    dishWith({ toTable: { early: min(15), late: min(5) }, keeps: { how: 'warm', most: min(15), kind: 'quality', uses: [] } }),
    step(
      `${id}-warm`,
      around(d, 8),
      oven(150, 210),
      role('finish'),
      or(around(d, 6)),
      eye,
      using({ kind: 'ring', size: 'small' }),
    ),
  )

const board: Shape = (d, id, finish) =>
  dish(
    id,
    dishWith({ toTable: { early: min(15), late: min(0) }, keeps: { how: 'room', most: min(45), kind: 'quality', uses: [] } }),
    step(`${id}-bring-out`, around(d, 3), role(finish), notBefore('17:00')),
    step(`${id}-arrange`, around(d, 4), role('plate'), worktop(2), follows(`${id}-bring-out`, 30, 150)),
  )

const SHAPES: readonly Shape[] = [soup, roast, gratin, greens, greens, salad, braise, pudding, tart, fritters, rolls, board]
const CARRIED: readonly Shape[] = [soup, salad, braise, pudding, tart]

/** A dish of a shape of our own invention, cooked at home. */
export const randomDish = (d: Dice, id: string): DishDraft => d.pick(SHAPES)(d, id, 'finish')

/** A dish made in another kitchen, carried to the host's and finished there. */
export const carriedDish = (d: Dice, id: string, kitchen: string, minutes: number): DishDraft => {
  const draft = d.pick(CARRIED)(d, id, 'finish')
  const made = draft.steps.filter((each) => each.role === 'make')
  const rest = draft.steps.filter((each) => each.role !== 'make')
  const last = made.at(-1)?.id ?? ''
  const carry = step(`${id}-carry`, around(d, minutes), role('carry'), where('outside'), follows(last, 0, 600))
  return {
    dish: { ...draft.dish, kitchen, carry: { how: 'cold', most: min(300), kind: 'quality' } },
    steps: [
      ...made.map(({ earliest: _, latest: __, ...each }) => each),
      { ...carry, dish: id },
      ...rest.map((each) => ({
        ...each,
        after: each.after.map((one) => (one.step === last ? { ...one, step: carry.id, least: min(0), most: min(240) } : one)),
      })),
    ],
  }
}

export const laying = (d: Dice): Step[] => [
  step('lay-table', around(d, d.int(10, 15)), where('table'), notBefore('14:00'), notAfter('19:00')),
  step('candles', [2, 3, 4], where('table'), follows('lay-table'), notBefore('18:00'), notAfter('19:30')),
]

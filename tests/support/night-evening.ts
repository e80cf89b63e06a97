import type { Evening } from '#lib/domain/evening.ts'
import {
  batch,
  chores,
  claim,
  cook,
  cooks,
  course,
  courseWith,
  dish,
  dishWith,
  evening,
  eye,
  follows,
  leave,
  min,
  notAfter,
  oven,
  ring,
  role,
  step,
  touch,
} from './evening-builders.ts'

export const EIGHT = ['ada', 'bo', 'cyd', 'dot', 'eli', 'fay', 'gus', 'hal'] as const

/** Four courses for ten by eight cooks, with a spare for one of the dishes. Our own invention. */
export const nightEvening = (): Evening => {
  const plates = courseWith({ eating: { least: min(12), likely: min(18), most: min(25) } })
  return evening(
    {
      name: 'Eight at the stove',
      covers: 10,
      cooks: EIGHT.map((id, place) => cook(id, ['home 15:00 23:45'], { host: place === 0 })),
      claims: [claim('roast', 'bo'), claim('soup', 'cyd'), claim('tart', 'dot'), claim('sauce', 'eli'), claim('roots', 'fay')],
    },
    course(
      'one',
      plates,
      dish(
        'soup',
        dishWith({ name: 'Leek soup', keeps: { how: 'hot', most: min(30), kind: 'quality', uses: [] } }),
        step('sweat', [15, 20, 25], ring('large')),
        step('simmer', [25, 30, 40], follows('sweat', 0, 5), ring('large'), leave, touch('out', 1, 3)),
        step('blend', [6, 8, 12], follows('simmer', 0, 20)),
        step('ladle', 5, follows('blend', 0, 30), cooks(2), role('plate')),
      ),
    ),
    course(
      'two',
      plates,
      dish(
        'fish',
        dishWith({ name: 'Cured fish', keeps: { how: 'cold', most: min(60), kind: 'quality', uses: [] } }),
        step('carve-fish', [12, 15, 20]),
        step('dress', [5, 6, 8], follows('carve-fish', 0, 60), role('plate')),
      ),
    ),
    course(
      'three',
      plates,
      dish(
        'roast',
        dishWith({ name: 'Shoulder', keeps: { how: 'hot', most: min(20), kind: 'quality', uses: [] } }),
        step('rub', 15),
        step('roast-it', [100, 120, 150], follows('rub', 0, 60), oven(160, 190)),
        step('rest', 20, follows('roast-it', 0, 5), leave),
        step('carve', [8, 10, 14], follows('rest', 0, 15), role('plate')),
      ),
      dish(
        'roots',
        dishWith({ name: 'Roots' }),
        step('peel', [15, 20, 25]),
        step('roots-in', [40, 45, 60], follows('peel', 0, 120), oven(160, 200)),
        step('turn-out', 4, follows('roots-in', 0, 10), role('plate')),
      ),
      dish('sauce', dishWith({ name: 'Sauce' }), step('reduce', [15, 20, 30], ring('small'), eye)),
      dish('greens', dishWith({ name: 'Greens' }), step('blanch', [4, 5, 8], ring('medium'), batch(5, 1))),
    ),
    course(
      'four',
      plates,
      dish(
        'tart',
        dishWith({ name: 'Tart', keeps: { how: 'room', most: min(90), kind: 'quality', uses: [] } }),
        step('roll', [15, 20, 25]),
        step('bake', [25, 30, 40], follows('roll', 0, 60), oven(170, 190)),
        step('portion', [5, 6, 8], follows('bake', 20, 120), role('plate')),
      ),
      dish(
        'fruit',
        dishWith({ name: 'Fruit', state: 'spare', keeps: { how: 'cold', most: min(90), kind: 'quality', uses: [] } }),
        step('cut-fruit', [10, 12, 15]),
        step('fill-bowls', 5, follows('cut-fruit', 0, 60), role('plate')),
      ),
    ),
    chores(step('lay', 20, notAfter('19:00'))),
  )
}

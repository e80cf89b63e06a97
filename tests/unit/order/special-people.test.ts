import { expect, test } from 'vitest'
import { cueOf, planned, when } from '#tests/support/checked-plan.ts'
import {
  at,
  batch,
  cook,
  cooks,
  course,
  courseWith,
  dish,
  dishWith,
  evening,
  follows,
  HOME_KIT,
  kitchen,
  leave,
  min,
  oven,
  role,
  step,
  where,
} from '#tests/support/evening-builders.ts'

const keeps = (most: number) => dishWith({ keeps: { how: 'hot', most: min(most), kind: 'quality', uses: [] } })

// Lou takes half as long again: 10 min are 15 for the two of them. The sauce has 5 min of Kim's and comes before.
test('O14 a step for two cooks takes as long as the slower of them, who do nothing else meanwhile', () => {
  const order = planned(
    evening(course('main', dish('roast', keeps(0), step('carve', 10, cooks(2))), dish('sauce', keeps(30), step('whisk', 5))), {
      cooks: [cook('kim'), cook('lou', undefined, { pace: 1.5 })],
    }),
  )
  expect([when(order, 'carve'), cueOf(order, 'carve').cooks.toSorted()]).toEqual(['19:15-19:30', ['kim', 'lou']])
  expect([when(order, 'whisk'), cueOf(order, 'whisk').cooks]).toEqual(['19:10-19:15', ['kim']])
})

// Lou is on the road from 18:30 to 19:00, once, with both dishes; the pie is warmed at home, the salad goes straight to the table.
test('O14 H20 two dishes of another kitchen leave together on one way', () => {
  const away = (id: string, ...steps: Parameters<typeof dish>[1][]) =>
    dish(id, dishWith({ kitchen: 'away', carry: { how: 'hot', most: min(90), kind: 'quality' } }), keeps(60), ...steps)
  const order = planned(
    evening(
      course(
        'main',
        away(
          'pie',
          step('bake', 40, oven(180, 200, { oven: 'away-oven' })),
          step('bring-pie', 20, role('carry'), where('outside'), follows('bake')),
          step('warm', 10, role('finish'), follows('bring-pie')),
        ),
        away('salad', step('toss', 5), step('bring-salad', 25, role('carry'), where('outside'), follows('toss'))),
      ),
      {
        kitchens: [
          kitchen('home', HOME_KIT),
          kitchen(
            'away',
            [{ id: 'away-oven', kind: 'oven', name: 'Oven', shelves: 1, maxC: 250, upPerMin: 8, downPerMin: 3 }],
            25,
          ),
        ],
        cooks: [cook('lou', ['away 16:00 18:30', 'home 19:00 23:00'])],
      },
    ),
  )
  expect([when(order, 'bring-pie'), when(order, 'bring-salad')]).toEqual(['18:35-18:55', '18:35-19:00'])
  expect(cueOf(order, 'bake').touches.at(-1)?.cook).toBe('lou')
  expect(when(order, 'warm')).toBe('19:20-19:30')
  expect(order.clashes).toEqual([])
})

// The first course is eaten and cleared in 25 min; the second is wanted 00:10. Kim leaves at midnight.
test('T3 after midnight the work is done by who is still there', () => {
  const order = planned(
    evening(
      course('first', dish('soup', keeps(0), step('ladle', 5))),
      course(
        'second',
        courseWith({ wait: { ideal: [min(0), min(0)], most: min(15) } }),
        dish('toast', keeps(0), step('grill', 10)),
      ),
      {
        guestsFrom: at('23:30'),
        sitDown: at('23:45'),
        cooks: [cook('kim', ['home 20:00 1 00:00']), cook('lou', ['home 23:50 1 02:00'])],
      },
    ),
  )
  expect([when(order, 'ladle'), cueOf(order, 'ladle').cooks]).toEqual(['23:40-23:45', ['kim']])
  expect([when(order, 'grill'), cueOf(order, 'grill').cooks]).toEqual(['00:00-00:10', ['lou']])
  expect(cueOf(order, 'grill').start).toBe('2026-11-15T00:00:00+00:00')
})

// IANA time zone database, Australia/Adelaide: summer time (+10:30) ends at 03:00 on the first Sunday of April and begins at
// 02:00 on the first Sunday of October.
test.each([
  ['back', '2026-04-05', '03:45', '2026-04-05T01:45:00+10:30', '2026-04-05T03:45:00+09:30'],
  ['forward', '2026-10-04', '05:45', '2026-10-04T01:45:00+09:30', '2026-10-04T05:45:00+10:30'],
])('T1 the southern night the clocks go %s: three hours are three hours', (_, date, sitDown, start, end) => {
  const order = planned(
    evening(course('breakfast', dish('ham', keeps(0), step('bake', 180, oven(120, 130)))), {
      date,
      zone: 'Australia/Adelaide',
      guestsFrom: at(sitDown),
      sitDown: at(sitDown),
      cooks: [cook('kim', ['home 00:00 08:00'])],
    }),
  )
  expect(cueOf(order, 'bake')).toMatchObject({ start, end })
})

// Eight eat, two of them the stew without meat: it leaves the common pot after the base, for a pan of two.
test('O14 a variant has the steps after the fork for itself, and only its own portions', () => {
  const order = planned(
    evening(
      { covers: 8 },
      course(
        'main',
        dish(
          'stew',
          keeps(5),
          step('base', 20),
          step('meat', 40, leave, follows('base')),
          step('serve', 4, batch(4), follows('meat')),
        ),
        dish(
          'meatless',
          keeps(5),
          dishWith({ variant: { of: 'stew', fork: 'base', portions: 2 }, portions: 2 }),
          step('beans', 15, leave, follows('base')),
          step('serve-beans', 4, batch(4), follows('beans')),
        ),
      ),
      { cooks: [cook('kim'), cook('lou')] },
    ),
  )
  expect(order.cues.filter(({ step: id }) => id === 'serve')).toHaveLength(2)
  expect(order.cues.filter(({ step: id }) => id === 'serve-beans')).toHaveLength(1)
  expect(cueOf(order, 'beans').start >= cueOf(order, 'base').end).toBe(true)
  expect(when(order, 'base').slice(6) <= '18:42').toBe(true)
})

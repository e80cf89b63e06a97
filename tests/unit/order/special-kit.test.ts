import { expect, test } from 'vitest'
import { cueOf, planned, when } from '#tests/support/checked-plan.ts'
import {
  course,
  dish,
  dishWith,
  evening,
  eye,
  follows,
  leave,
  min,
  notAfter,
  or,
  oven,
  ovenUse,
  ring,
  step,
  vessel,
} from '#tests/support/evening-builders.ts'

const keeps = (most: number, ...uses: ReturnType<typeof ovenUse>[]) =>
  dishWith({ keeps: { how: 'hot', most: min(most), kind: 'quality', uses } })

// The oven gains 8 °C a minute and loses 3. From 150 to 220 takes 8:45, on the grid of half minutes 9:00; from 220 to 150
// takes 23:20, on the grid 23:30. Both are free to wait, so the one that is fresher in all goes: the cooler first.
test('O14 an oven that heats fast and cools slowly: of two that may wait the cooler goes first, 9 min before the hotter', () => {
  const order = planned(
    evening(
      course(
        'main',
        dish('bread', keeps(55), step('bake', 30, oven(220, 230))),
        dish('pears', keeps(55), step('poach', 30, oven(140, 150))),
      ),
    ),
  )
  expect([when(order, 'poach'), when(order, 'bake')]).toEqual(['18:21-18:51', '19:00-19:30'])
  expect(order.clashes).toEqual([])
})

test('O14 when the cooler one must be fresh the hotter goes first, and the oven has 23:30 to cool', () => {
  const order = planned(
    evening(
      course(
        'main',
        dish('bread', keeps(55), step('bake', 30, oven(220, 230))),
        dish('pears', keeps(5), step('poach', 30, oven(140, 150))),
      ),
    ),
  )
  expect([when(order, 'bake'), when(order, 'poach')]).toEqual(['18:06:30-18:36:30', '19:00-19:30'])
})

// The pan stands on the only large ring from 19:04 to 19:30 though nothing is done with it from 19:14 to 19:24. What fries
// for 8 min on a large ring is over before.
test('O14 a vessel holds its ring across the gap between its steps', () => {
  const order = planned(
    evening(
      course(
        'main',
        dish(
          'noodles',
          keeps(2),
          step('water', 10, leave, ring('large'), vessel('pan')),
          step('boil', 6, ring('large'), vessel('pan'), follows('water', 10, 15)),
        ),
        dish('cutlet', keeps(40), step('fry', 8, ring('large'))),
      ),
    ),
  )
  expect(['water', 'boil', 'fry'].map((id) => when(order, id))).toEqual(['19:04-19:14', '19:24-19:30', '18:56-19:04'])
  const [water, boil] = ['water', 'boil'].map((id) => cueOf(order, id).kit)
  expect(boil).toEqual(water)
})

const stirred = (care: 'eye' | 'hands-on') =>
  evening(
    course(
      'main',
      dish('sauce', keeps(0), step('stir', 30, ...(care === 'eye' ? [eye] : []), ring('small'))),
      dish('tart', keeps(40), step('bake', 20, oven(180, 200, { preheated: false }))),
    ),
  )

// The tart's in and out touches need hands. Whoever keeps an eye on the sauce has them, whoever beats it has not.
test('O14 somebody who keeps an eye on a pan puts the tart in and takes it out meanwhile', () => {
  const order = planned(stirred('eye'))
  expect([when(order, 'stir'), when(order, 'bake')]).toEqual(['19:00-19:30', '19:10-19:30'])
})

// Out at the latest 2 min after its time, and that must be over by 19:00: its time is 18:59 at the latest, if it is touched
// then for a minute; fresher than that it cannot be.
test('O14 somebody with both hands in the bowl does not: the tart is out before', () => {
  const order = planned(stirred('hands-on'))
  expect(when(order, 'stir')).toBe('19:00-19:30')
  const [out] = cueOf(order, 'bake').touches.slice(-1)
  expect(out?.at.slice(11, 16)).toBe('18:59')
})

test('O14 beside an eye on a pan ten minutes of other work have room, eleven have not', () => {
  const of = (minutes: number) =>
    evening(
      course(
        'main',
        dish('sauce', keeps(0), step('simmer', 30, eye, ring('small'))),
        dish('salad', keeps(45), step('chop', minutes)),
      ),
    )
  expect(when(planned(of(10)), 'chop')).toBe('19:20-19:30')
  expect(when(planned(of(11)), 'chop')).toBe('18:49-19:00')
})

// The plates are stacked by 19:00 and stand in the oven at 70-90 °C until 19:30. Bread at 200 °C must be out 36:40 before,
// on the grid 37:00: at 18:23.
test('O14 plates that are kept hot in the oven keep the bread out of it', () => {
  const order = planned(
    evening(
      course(
        'main',
        dish('plates', keeps(40, ovenUse(70, 90, { preheated: false })), step('stack', 5, notAfter('19:00'))),
        dish('bread', keeps(90), step('bake', 20, oven(200, 220))),
      ),
    ),
  )
  expect([when(order, 'bake'), when(order, 'stack')]).toEqual(['18:03-18:23', '18:55-19:00'])
  expect(order.keeping.find((one) => one.dish === 'plates')).toMatchObject({ kit: [{ id: 'oven', unit: 0 }] })
})

// The roast has the oven at 150-160 until the course; potatoes at 200 would have to be out an hour before.
test('O14 what can be done on a ring is, when the oven is taken', () => {
  const order = planned(
    evening(
      course(
        'main',
        dish('roast', keeps(0), step('roasting', 120, oven(150, 160, { shelves: 2 }))),
        dish('potatoes', keeps(10), step('cook', 40, oven(200, 210), or(25), eye, ring('medium'))),
      ),
    ),
  )
  expect(cueOf(order, 'cook')).toMatchObject({ way: 1, kit: [{ id: 'ring-m' }] })
  expect(when(order, 'cook')).toBe('19:05-19:30')
  expect(order.clashes).toEqual([])
})

import { expect, test } from 'vitest'
import * as Y from 'yjs'
import type { Evening } from '#lib/domain/evening.ts'
import { bringDish } from '#lib/plan/commands/bring.ts'
import { readPlan } from '#lib/plan/read.ts'
import { settledDish, type Whole } from '#lib/plan/settle-dish.ts'
import { writeEvening } from '#lib/plan/write-evening.ts'
import {
  course,
  dish,
  dishWith,
  evening,
  follows,
  HOME_KIT,
  kitchen,
  oven,
  ring,
  role,
  step,
  vessel,
} from '#tests/support/evening-builders.ts'

const ids = () => {
  let count = 0
  return () => `new-${++count}`
}

const wholeOf = (of: Evening, id: string): Whole => {
  const found = of.dishes.find((each) => each.id === id)
  if (!found) throw new Error(`no dish ${id}`)
  return {
    dish: found,
    steps: of.steps.filter((each) => each.dish === id),
    ingredients: of.ingredients.filter((each) => each.dish === id),
    away: found.kitchen !== of.host,
  }
}

const friends = kitchen(
  'friends',
  [{ id: 'friends-oven', kind: 'oven', name: 'Oven', shelves: 1, maxC: 230, upPerMin: 8, downPerMin: 3 }],
  20,
)
const theirs = evening(
  { kitchens: [kitchen('home', HOME_KIT), friends] },
  course(
    'main',
    dish(
      'tart',
      dishWith({ kitchen: 'friends', portions: 3, standIn: 'bread', carry: { how: 'warm', most: 'PT1H', kind: 'quality' } }),
      step('line', 15, vessel('tin')),
      step('bake', 40, oven(180, 190, { oven: 'friends-oven' }), vessel('tin'), follows('line')),
      step('take', 20, role('carry'), follows('bake', 10)),
      step('cut', 5, role('finish'), follows('take'), follows('butter')),
    ),
    dish('bread', step('butter', 5, ring('small'))),
  ),
)
const ours = evening(course('sweet', dish('pears', step('poach', 30, ring('medium')))))

test('Y6 a dish of another evening comes under fresh ids into the host’s kitchen, and what it cannot keep is named', () => {
  const settled = settledDish(wholeOf(theirs, 'tart'), { course: 'sweet', host: 'home' }, ids())
  if (!settled) throw new Error('nothing came')
  const { brought, cuts } = settled
  expect(cuts).toEqual(['kitchen', 'oven', 'waits', 'stand-in'])
  expect(brought.dish).toMatchObject({ course: 'sweet', kitchen: 'home', state: 'on', name: theirs.dishes[0]?.name })
  for (const lost of ['portions', 'carry', 'standIn', 'variant']) expect(brought.dish).not.toHaveProperty(lost)
  expect(brought.steps.map(({ does }) => does)).toEqual(
    theirs.steps.filter((each) => ['line', 'bake', 'cut'].includes(each.id)).map(({ does }) => does),
  )
  const [line, bake, cut] = brought.steps
  expect(bake?.after.map((after) => after.step)).toEqual([line?.id])
  // What waited for the carrying waits for the baking, as the carrying did.
  expect(cut?.after).toEqual([{ step: bake?.id, from: 'end', least: 'PT10M', kind: 'quality' }])
  expect(bake?.vessel).toBe(line?.vessel)
  expect(bake?.vessel).not.toBe('tin')
  expect(JSON.stringify(brought)).not.toContain('friends-oven')
  const known = new Set(JSON.stringify(theirs).match(/"id":"[^"]+"/g))
  for (const entry of [brought.dish, ...brought.steps, ...brought.ingredients])
    expect(known.has(`"id":"${entry.id}"`)).toBe(false)
})

test('Y6 it is one update that the plan takes, and the plan then reads as a sound evening with it', () => {
  const doc = new Y.Doc()
  writeEvening(doc, ours, { epoch: 'e', minClient: 1 })
  const settled = settledDish(wholeOf(theirs, 'tart'), { course: 'sweet', host: 'home' }, ids())
  if (!settled) throw new Error('nothing came')
  let updates = 0
  doc.on('update', () => {
    updates += 1
  })
  expect(bringDish(doc, settled.brought)).toMatchObject({ ok: true })
  expect(updates).toBe(1)
  const read = readPlan(doc)
  expect(read.reports).toEqual([])
  expect(read.evening.dishes.map(({ id }) => id)).toContain(settled.brought.dish.id)
  expect(read.evening.steps.filter((each) => each.dish === settled.brought.dish.id)).toHaveLength(3)
})

test('Y6 a dish that leans on nothing else loses nothing', () => {
  expect(settledDish(wholeOf(ours, 'pears'), { course: 'sweet', host: 'home' }, ids())?.cuts).toEqual([])
})

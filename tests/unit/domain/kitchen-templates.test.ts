import { expect, test } from 'vitest'
import { templateWords } from '#app/_words/kitchen-template.ts'
import { Kitchen } from '#lib/domain/kitchen.ts'
import { DEFAULT_TEMPLATE, KITCHEN_TEMPLATES, type KitchenTemplate, templateKit } from '#lib/domain/kitchen-templates.ts'
import { planEvening } from '#lib/order/engine.ts'
import * as make from '#tests/support/evening-builders.ts'

const dinnerIn = (template: KitchenTemplate, ...courses: make.CourseDraft[]) =>
  make.evening(...courses, {
    covers: 6,
    kitchens: [
      make.kitchen(
        'home',
        templateKit(template, (key) => key),
      ),
    ],
    cooks: [make.cook('kim'), make.cook('lou')],
  })

const clashesOf = (evening: ReturnType<typeof make.evening>): string[] =>
  planEvening(evening, { budget: { steps: 200, seed: 1 } }).clashes.map((clash) => clash.kind)

const cold = make.course(
  'first',
  make.dish('salad', make.step('slice', 10, make.worktop()), make.step('lay', 5, make.worktop(4), make.role('plate'))),
)
const onRings = make.course(
  'main',
  make.dish(
    'stew',
    make.step('brown', 10, make.ring('medium'), make.eye),
    make.step('boil', 10, make.ring('small'), make.eye),
    make.step('drain', 2, make.tool('sink'), make.follows('boil', 0, 10)),
  ),
)
const whole = make.course(
  'main',
  make.dish(
    'joint',
    make.step('roast', 60, make.oven(180, 200)),
    make.step('gratin', 30, make.oven(180, 200), make.follows('roast', 0, 30)),
    make.step('blend', 5, make.tool('blender')),
    make.step('chill', 60, make.leave, make.fridge(2)),
    make.step('freeze', 60, make.leave, make.freezer()),
    make.step('boil', 10, make.ring('large'), make.eye),
    make.step('plate', 5, make.worktop(6), make.role('plate'), make.follows('gratin', 0, 10)),
  ),
)

test('G1 every kitchen template has kit that the schema takes, each piece under a key of its own, and words', () => {
  for (const template of KITCHEN_TEMPLATES) {
    const kit = templateKit(template, (key) => `${template}-${key}`)
    expect(Kitchen.safeParse({ id: 'home', name: '', toTable: 'PT0S', kit }).error).toBeUndefined()
    expect(new Set(kit.map((piece) => piece.id)).size).toBe(kit.length)
    for (const piece of kit) expect(piece).not.toHaveProperty('key')
  }
  expect(Object.keys(templateWords).toSorted()).toEqual([...KITCHEN_TEMPLATES].toSorted())
  expect(new Set(Object.values(templateWords).map((words) => words.name)).size).toBe(KITCHEN_TEMPLATES.length)
})

test('G1 the kitchen that nothing was said of has one oven with two shelves, four rings, a fridge, a freezer, a sink and two worktops', () => {
  const kit = templateKit(DEFAULT_TEMPLATE, (key) => key)
  expect(kit.filter((piece) => piece.kind === 'oven')).toEqual([
    { id: 'oven', kind: 'oven', name: 'Oven', shelves: 2, maxC: 250, upPerMin: 8, downPerMin: 3 },
  ])
  expect(kit.flatMap((piece) => (piece.kind === 'ring' ? [[piece.size, piece.count]] : []))).toEqual([
    ['small', 1],
    ['medium', 2],
    ['large', 1],
  ])
  expect(kit.flatMap((piece) => (piece.kind === 'cold' ? [piece.keep] : []))).toEqual(['cold', 'frozen'])
  expect(kit).toContainEqual({ id: 'sink', kind: 'tool', tool: 'sink', count: 1 })
  expect(kit).toContainEqual({ id: 'worktop', kind: 'worktop', places: 8 })
})

test('G2 a small dinner is planned in each kind of kitchen without a clash about kit', () => {
  for (const template of KITCHEN_TEMPLATES) expect(clashesOf(dinnerIn(template, cold)), template).not.toContain('no-kit')
  for (const template of KITCHEN_TEMPLATES.filter((each) => each !== 'cold-only'))
    expect(clashesOf(dinnerIn(template, cold, onRings)), template).not.toContain('no-kit')
  expect(clashesOf(dinnerIn(DEFAULT_TEMPLATE, cold, whole))).toEqual([])
  expect(clashesOf(dinnerIn('no-oven', cold, whole))).toContain('no-kit')
})

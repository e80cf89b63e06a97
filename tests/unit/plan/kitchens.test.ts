import { describe, expect, test } from 'vitest'
import { keepIds, kitChanges } from '#lib/domain/kit-changes.ts'
import { missingKit } from '#lib/domain/kit-wants.ts'
import type { Kit } from '#lib/domain/kitchen.ts'
import { KITCHEN_TEMPLATES, templateKit } from '#lib/domain/kitchen-templates.ts'
import { parseEvening } from '#lib/domain/parse.ts'
import { planEvening } from '#lib/order/engine.ts'
import { addKit, removeKit, replaceKit, setHostKitchen, setKit } from '#lib/plan/commands/kitchen.ts'
import { setPresence } from '#lib/plan/commands/presence.ts'
import { remove, restore } from '#lib/plan/commands/remove.ts'
import { setFields } from '#lib/plan/commands/set.ts'
import { readPlan } from '#lib/plan/read.ts'
import { openUndo } from '#lib/plan/undo.ts'
import * as make from '#tests/support/evening-builders.ts'
import { randomEvening } from '#tests/support/random-evening.ts'
import { copyOf, exchange, planOf } from './open-plan.ts'

const two = make.evening(
  make.course(
    'main',
    make.dish('roast', make.step('cook', 60, make.oven(180, 200)), make.step('blend', 5, make.tool('blender'))),
    make.dish('pie', make.step('bake', 30), make.step('bring', 10, make.role('carry')), make.dishWith({ kitchen: 'away' })),
    make.dish('dip', make.step('stir', 5)),
    make.courseWith({ lead: 'lou', pours: 'lou' }),
  ),
  {
    kitchens: [make.kitchen('home', make.HOME_KIT), make.kitchen('away', [{ ...oven('o2', 'Little oven'), maxC: 220 }], 15)],
    cooks: [make.cook('kim'), make.cook('lou', ['away 12:00 17:00', 'home 18:00 23:00'])],
    claims: [make.claim('dip', 'lou')],
  },
)

function oven(id: string, name: string): Extract<Kit, { kind: 'oven' }> {
  return { id, kind: 'oven', name, shelves: 1, maxC: 250, upPerMin: 8, downPerMin: 3 }
}
const kitOf = (doc: Parameters<typeof readPlan>[0], kitchen: string) =>
  readPlan(doc).evening.kitchens.find((each) => each.id === kitchen)?.kit ?? []

describe('kit', () => {
  test('G5 two cooks change two pieces of one kitchen at once: the one that is written last does not undo what was read of the other', () => {
    const doc = planOf(two)
    const screen = kitOf(doc, 'home')
    expect(setKit(doc, 'home', { id: 'fridge', kind: 'cold', keep: 'cold', places: 9 })).toMatchObject({ ok: true })
    const ring = screen.find((piece) => piece.id === 'ring-m')
    expect(ring?.kind === 'ring' && setKit(doc, 'home', { ...ring, count: 3 })).toMatchObject({ ok: true })
    expect(kitOf(doc, 'home')).toContainEqual({ id: 'fridge', kind: 'cold', keep: 'cold', places: 9 })
    expect(kitOf(doc, 'home')).toContainEqual({ id: 'ring-m', kind: 'ring', size: 'medium', count: 3 })
  })

  test('G5 a piece is added under an id of its own, left out, and put back where it was; what is not there is not changed', () => {
    const doc = planOf(two)
    const [first, second] = make.HOME_KIT
    if (!first || !second) throw new Error('no kit')
    expect(removeKit(doc, 'home', second.id)).toMatchObject({ ok: true })
    expect(removeKit(doc, 'home', second.id)).toMatchObject({ ok: false, error: { kind: 'unknown-entry' } })
    expect(setKit(doc, 'home', second)).toMatchObject({ ok: false })
    expect(addKit(doc, 'home', second, 1)).toMatchObject({ ok: true })
    expect(kitOf(doc, 'home')).toEqual(make.HOME_KIT)
    expect(addKit(doc, 'home', { ...second, id: 'o2' })).toMatchObject({ ok: false, error: { kind: 'id-taken' } })
    expect(addKit(doc, 'home', { id: 'new', kind: 'worktop', places: 0 })).toMatchObject({
      ok: false,
      error: { kind: 'refused' },
    })
    expect(addKit(doc, 'nowhere', { id: 'new', kind: 'worktop', places: 1 })).toMatchObject({ ok: false })
    expect(kitOf(doc, 'home')).toEqual(make.HOME_KIT)
  })

  test('G5 each template is taken over a kitchen in one edit that one undo takes back, and a step keeps the oven it names', () => {
    for (const template of KITCHEN_TEMPLATES) {
      const doc = planOf(two)
      setFields(doc, 'steps', 'cook', {
        ways: two.steps[0]?.ways.map((way) => ({ ...way, uses: [make.ovenUse(180, 200, { oven: 'oven' })] })) ?? [],
      })
      const before = readPlan(doc).evening
      const undo = openUndo(doc)
      const wanted = keepIds(
        make.HOME_KIT,
        templateKit(template, (key) => `new-${key}`),
      )
      undo.edit(() => replaceKit(doc, 'home', wanted))
      const after = readPlan(doc)
      expect(after.evening.kitchens[0]?.kit).toEqual(wanted)
      expect(after.evening.kitchens[1]).toEqual(before.kitchens[1])
      const hasOven = wanted.some((piece) => piece.kind === 'oven')
      expect(after.reports).toHaveLength(hasOven ? 0 : 1)
      if (hasOven) expect(wanted.map((piece) => piece.id)).toContain('oven')
      expect(kitChanges(make.HOME_KIT, wanted).length).toBeGreaterThan(0)
      undo.undo()
      expect(readPlan(doc).evening).toEqual(before)
    }
  })

  test('G5 what changes is what differs: nothing of the same kit, everything of none', () => {
    const kit = templateKit('one-oven', (key) => key)
    const again = keepIds(
      kit,
      templateKit('one-oven', (key) => `again-${key}`),
    )
    expect(again).toEqual(kit)
    expect(kitChanges(kit, again)).toEqual([])
    expect(kitChanges(kit, []).map((change) => change.kind)).toEqual(kit.map(() => 'gone'))
    expect(kitChanges([], kit).map((change) => change.kind)).toEqual(kit.map(() => 'new'))
    const ovens = [oven('a', 'Left'), oven('b', 'Right')]
    expect(keepIds(ovens, [oven('x', 'Right'), oven('y', 'Other')]).map((piece) => piece.id)).toEqual(['b', 'a'])
    expect(kitChanges([oven('a', 'Left')], [{ ...oven('a', 'Left'), shelves: 2 }])).toMatchObject([{ kind: 'other' }])
  })
})

describe('what is wanted and not there', () => {
  test('G4 a blender that no kitchen has is named with its step; another way makes a step not stuck; dropped dishes want nothing', () => {
    expect(missingKit(two).map(({ kitchen, use, step, stuck }) => [kitchen, use.kind, step?.id, stuck])).toEqual([
      ['home', 'tool', 'blend', true],
    ])
    const other = make.evening(
      make.course('main', make.dish('roast', make.step('blend', 5, make.tool(' BLENDER '), make.or(10)))),
      make.chores(make.step('ice', 5, make.freezer(3))),
    )
    expect(missingKit(other).map(({ step, dish, stuck }) => [step?.id, dish?.id, stuck])).toEqual([
      ['blend', 'roast', false],
      ['ice', undefined, true],
    ])
    const blender: Kit = { id: 'b', kind: 'tool', tool: 'Blender', count: 1 }
    const withIt = { ...other, kitchens: other.kitchens.map((each) => ({ ...each, kit: [...each.kit, blender] })) }
    expect(missingKit(withIt).map(({ step }) => step?.id)).toEqual(['ice'])
    expect(missingKit({ ...two, dishes: two.dishes.map((dish) => ({ ...dish, state: 'dropped' as const })) })).toEqual([])
  })

  test('G4 a waiting dish wants its kit beside the table, and a step of another kitchen there', () => {
    const keeping = make.evening(
      make.course(
        'main',
        make.dish(
          'pie',
          make.step('bake', 30, make.oven(180, 200)),
          make.step('bring', 10, make.role('carry')),
          make.dishWith({
            kitchen: 'away',
            keeps: {
              how: 'hot',
              most: 'PT20M',
              kind: 'quality',
              uses: [{ kind: 'oven', shelves: 4, lowC: 70, highC: 90, preheated: true }],
            },
          }),
        ),
      ),
      { kitchens: [make.kitchen('home', make.HOME_KIT), make.kitchen('away', [], 15)] },
    )
    expect(missingKit(keeping).map(({ kitchen, step }) => [kitchen, step?.id])).toEqual([
      ['away', 'bake'],
      ['home', undefined],
    ])
  })

  test('G4 the engine finds the same: without a kind of kit, stuck steps are the ones that it leaves out for want of kit', () => {
    let stuckInAll = 0
    for (let seed = 1; seed <= 5; seed += 1) {
      const whole = randomEvening(seed)
      for (const kind of ['ring', 'oven', 'tool'] as const) {
        const evening = {
          ...whole,
          night: [],
          kitchens: whole.kitchens.map((each) => ({ ...each, kit: each.kit.filter((piece) => piece.kind !== kind) })),
        }
        if (!parseEvening(evening).ok) continue
        const stuck = new Set(missingKit(evening).flatMap((want) => (want.stuck && want.step ? [want.step.id] : [])))
        const order = planEvening(evening, { budget: { steps: 60, seed: 1 }, quick: true })
        const cued = new Set(order.cues.map((cue) => cue.step))
        for (const step of stuck) expect(cued.has(step), `seed ${seed}: ${step} is planned without its ${kind}`).toBe(false)
        stuckInAll += stuck.size
      }
    }
    expect(stuckInAll).toBeGreaterThan(10)
  })
})

describe('which kitchen is beside the table', () => {
  test('G8 another kitchen beside the table: what is not carried goes with it, the former one is some way off, and one undo takes it back', () => {
    const doc = planOf(two)
    const before = readPlan(doc).evening
    const undo = openUndo(doc)
    undo.edit(() => setHostKitchen(doc, 'away'))
    const { evening, reports } = readPlan(doc)
    expect(reports).toEqual([])
    expect(evening.host).toBe('away')
    expect(evening.kitchens.map(({ id, toTable }) => [id, toTable])).toEqual([
      ['home', 'PT10M'],
      ['away', 'PT0S'],
    ])
    expect(evening.dishes.map(({ id, kitchen }) => [id, kitchen])).toEqual([
      ['roast', 'away'],
      ['pie', 'away'],
      ['dip', 'away'],
    ])
    expect(parseEvening(evening)).toMatchObject({ ok: true })
    undo.undo()
    expect(readPlan(doc).evening).toEqual(before)
    expect(setHostKitchen(doc, 'nowhere')).toMatchObject({ ok: false, error: { kind: 'unknown-entry' } })
    expect(setHostKitchen(doc, 'home')).toMatchObject({ ok: true })
    expect(readPlan(doc).evening).toEqual(before)
  })

  test('G8 a removed kitchen or cook takes with it what hung on it, without a report, and comes back with it', () => {
    const doc = planOf(two)
    const before = readPlan(doc).evening
    remove(doc, 'kitchens', 'away')
    const without = readPlan(doc)
    expect(without.reports).toEqual([])
    expect(without.evening.dishes.map((dish) => dish.kitchen)).toEqual(['home', 'home', 'home'])
    expect(without.evening.cooks[1]?.presence.map((hours) => hours.kitchen)).toEqual(['home'])
    expect(parseEvening(without.evening)).toMatchObject({ ok: true })
    restore(doc, 'kitchens', 'away')
    expect(readPlan(doc).evening).toEqual(before)
    remove(doc, 'cooks', 'lou')
    const alone = readPlan(doc)
    expect(alone.reports).toEqual([])
    expect(alone.evening.courses[0]).not.toHaveProperty('pours')
    expect(alone.evening.claims).toEqual([])
    restore(doc, 'cooks', 'lou')
    expect(readPlan(doc).evening).toEqual(before)
  })
})

test('G6 hours are written in the order of the clock, and those that overlap or run backwards leave the plan as it was', () => {
  const doc = planOf(two)
  const late = { kitchen: 'home', from: make.at('20:00'), to: make.at('21:00') }
  const early = { kitchen: 'home', from: make.at('-1 17:00'), to: make.at('-1 21:00') }
  expect(setPresence(doc, 'kim', [late, early])).toMatchObject({ ok: true })
  expect(readPlan(doc).evening.cooks[0]?.presence).toEqual([early, late])
  for (const wrong of [[early, { ...early, kitchen: 'away' }], [{ ...late, to: make.at('19:00') }], [{ ...late, to: late.from }]])
    expect(setPresence(doc, 'kim', wrong)).toMatchObject({ ok: false, error: { kind: 'refused' } })
  expect(readPlan(doc).evening.cooks[0]?.presence).toEqual([early, late])
  const other = copyOf(doc)
  setPresence(other, 'lou', [early])
  setPresence(doc, 'kim', [late])
  exchange(doc, other)
  expect(readPlan(doc).evening.cooks.map((cook) => cook.presence)).toEqual([[late], [early]])
})

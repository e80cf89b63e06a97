import { expect, test } from 'vitest'
import * as Y from 'yjs'
import type { Evening } from '#lib/domain/evening.ts'
import { applyRemedy, type Change } from '#lib/order/apply-remedy.ts'
import { carryOutClaim } from '#lib/plan/carry-out-claim.ts'
import { remove } from '#lib/plan/commands/remove.ts'
import { claimOfRemedy, takeRemedy, type WrittenWay } from '#lib/plan/commands/take-remedy.ts'
import { readPlan } from '#lib/plan/read.ts'
import { openUndo } from '#lib/plan/undo.ts'
import {
  at,
  claim,
  cook,
  course,
  courseWith,
  dish,
  dishWith,
  evening,
  eye,
  follows,
  HOME_KIT,
  kitchen,
  min,
  notBefore,
  or,
  oven,
  ring,
  role,
  step,
  where,
} from '#tests/support/evening-builders.ts'
import { planOf } from './open-plan.ts'

const UPPER = { id: 'oven-2', kind: 'oven' as const, name: 'Upper oven', shelves: 1, maxC: 230, upPerMin: 10, downPerMin: 4 }

const FRIDGE = { kind: 'cold' as const, keep: 'cold' as const, places: 2 }
const NO_WORDS = { chill: '', fridge: '', heat: '' }

const dinner = evening(
  {
    kitchens: [kitchen('home', [...HOME_KIT, UPPER]), kitchen('mill', [{ ...FRIDGE, id: 'mill-fridge' }], 20)],
    cooks: [cook('kim'), cook('lou')],
    claims: [claim('stew', 'kim'), claim('cut', 'kim')],
  },
  course('soup-course', dish('soup', step('simmer', 20, eye, ring('medium'), or(10), ring('large')))),
  course(
    'main',
    courseWith({ wait: { ideal: [min(0), min(10)], most: min(15) } }),
    dish(
      'stew',
      dishWith({ keeps: { how: 'hot', most: min(5), kind: 'quality', uses: [] }, standIn: 'pie' }),
      step('cut', 10, notBefore('15:00')),
      step('bake', 60, oven(150, 160, { oven: 'oven' }), follows('cut', 5, 30)),
      step('serve', 2, follows('bake', 0, 10), follows('cut', 0, 200, { kind: 'safety' })),
    ),
    dish(
      'gratin',
      dishWith({ kitchen: 'mill', carry: { how: 'hot', most: min(40), kind: 'safety' } }),
      step('layer', 20),
      step('bring', [18, 20, 30], role('carry'), where('outside'), follows('layer')),
      step('portion', 4, role('plate'), follows('bring', 0, 15)),
    ),
    dish('pie', dishWith({ state: 'spare', keeps: { how: 'hot', most: min(5), kind: 'safety', uses: [] } }), step('warm', 5)),
  ),
)

/** One of each kind that is an edit, and both courses: the first, and one after it. */
const WRITTEN = [
  { kind: 'use-way', step: 'simmer', way: 1 },
  { kind: 'do-ahead', step: 'cut', earliest: at('-1 11:00') },
  { kind: 'other-oven', step: 'bake', kit: 'oven-2' },
  { kind: 'widen-temperature', step: 'bake', way: 0, lowC: 150, highC: 190 },
  { kind: 'wait-longer', step: 'serve', after: 'bake', by: 'PT12M' },
  { kind: 'keep-longer', dish: 'stew', by: 'PT7M' },
  { kind: 'course-later', course: 'main', by: 'PT20M' },
  { kind: 'course-later', course: 'soup-course', by: 'PT20M' },
  { kind: 'drop', dish: 'stew' },
  { kind: 'bring-cold', dish: 'gratin', chill: 'bring-chill', fridge: 'bring-fridge', heat: 'bring-heat' },
] as const satisfies readonly Change[]

const readingOf = (doc: Y.Doc): Evening => readPlan(doc).evening

test('L8 a way out is taken with the meaning with which it was tried, in one edit that one undo takes back', () => {
  for (const way of WRITTEN) {
    const doc = planOf(dinner)
    const before = readingOf(doc)
    const undo = openUndo(doc)
    let updates = 0
    doc.on('update', () => updates++)
    expect(undo.edit((of) => takeRemedy(of, way, NO_WORDS)).ok, JSON.stringify(way)).toBe(true)
    expect(updates, JSON.stringify(way)).toBe(1)
    expect(readingOf(doc)).toEqual(readingOf(planOf(applyRemedy(before, way))))
    expect(readingOf(doc)).not.toEqual(before)
    expect(undo.undo()).toBe(true)
    expect(readingOf(doc)).toEqual(before)
    expect(undo.canUndo()).toBe(false)
  }
})

test('L8 a step that goes to somebody else is asked of the server: of whom it is, or anew', () => {
  for (const [step, kind] of [
    ['cut', 'reassign'],
    ['serve', 'claim'],
  ] as const) {
    const way = { kind: 'give-to', step, cook: 'lou' } as const
    const doc = planOf(dinner)
    const before = readingOf(doc)
    const wish = claimOfRemedy(before.claims, way)
    expect(wish.kind).toBe(kind)
    expect(carryOutClaim(doc, { role: 'host', cook: null }, wish).kind).toBe('set')
    const byTarget = (of: Evening) => new Map(of.claims.map((one) => [one.target, one.cook]))
    expect(byTarget(readingOf(doc))).toEqual(byTarget(applyRemedy(before, way)))
  }
})

test('L8 what is gone meanwhile, and what would make longer what is a matter of safety, is refused and nothing is written', () => {
  const refused: readonly (readonly [WrittenWay, string])[] = [
    [{ kind: 'use-way', step: 'simmer', way: 7 }, 'refused'],
    [{ kind: 'use-way', step: 'nowhere', way: 0 }, 'unknown-entry'],
    [{ kind: 'widen-temperature', step: 'bake', way: 4, lowC: 1, highC: 2 }, 'unknown-entry'],
    [{ kind: 'wait-longer', step: 'serve', after: 'cut', by: 'PT5M' }, 'unknown-entry'],
    [{ kind: 'keep-longer', dish: 'pie', by: 'PT5M' }, 'refused'],
    [{ kind: 'keep-longer', dish: 'soup', by: 'PT5M' }, 'unknown-entry'],
    [{ kind: 'drop', dish: 'soup' }, 'unknown-entry'],
    [{ kind: 'course-later', course: 'nowhere', by: 'PT5M' }, 'unknown-entry'],
    [{ kind: 'bring-cold', dish: 'soup', chill: 'c', fridge: 'f', heat: 'h' }, 'unknown-entry'],
    [{ kind: 'bring-cold', dish: 'stew', chill: 'c', fridge: 'f', heat: 'h' }, 'refused'],
    [{ kind: 'bring-cold', dish: 'gratin', chill: 'cut', fridge: 'f', heat: 'h' }, 'id-taken'],
  ]
  for (const [way, kind] of refused) {
    const doc = planOf(dinner)
    remove(doc, 'dishes', 'soup')
    const before = Y.encodeStateAsUpdate(doc)
    const made = takeRemedy(doc, way, NO_WORDS)
    expect(made.ok ? 'taken' : made.error.kind, JSON.stringify(way)).toBe(kind)
    expect(Y.encodeStateAsUpdate(doc)).toEqual(before)
  }
})

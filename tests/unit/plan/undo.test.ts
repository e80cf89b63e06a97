import { describe, expect, test } from 'vitest'
import type * as Y from 'yjs'
import { addCourse, addDish } from '#lib/plan/commands/add.ts'
import { moveDish } from '#lib/plan/commands/move.ts'
import { remove, restore } from '#lib/plan/commands/remove.ts'
import { renameDish, setEvening, setFields } from '#lib/plan/commands/set.ts'
import { placeAfter, typedDifference } from '#lib/plan/commands/text.ts'
import { sharedText, typeText } from '#lib/plan/commands/type-text.ts'
import { readPlan } from '#lib/plan/read.ts'
import { openUndo, type Undo } from '#lib/plan/undo.ts'
import { readEvening } from '#tests/support/read-evening.ts'
import { copyOf, exchange, planOf } from './open-plan.ts'

const lamb = readEvening('a-lamb')
const [course1, course2] = lamb.courses
const [dish1] = lamb.dishes
const [step1, step2] = lamb.steps
if (!course1 || !course2 || !dish1 || !step1 || !step2) throw new Error('the evening is too small')

/** Two devices with the same plan, each with an undo of its own. */
const two = () => {
  const doc = planOf(lamb)
  const other = copyOf(doc)
  return { doc, other, mine: openUndo(doc), theirs: openUndo(other) }
}
const nameOf = (doc: Y.Doc) => readPlan(doc).evening.dishes.find((dish) => dish.id === dish1.id)?.name
const doesOf = (doc: Y.Doc) => sharedText(doc, 'steps', step1.id, 'does')?.toString()
const type = (undo: Undo, at: number, put: string, run?: string, cut = 0) =>
  undo.edit((doc) => typeText(doc, 'steps', step1.id, 'does', { at, cut, put }), run)

describe('undo', () => {
  test('L5 undo takes back my edit and leaves what another changed since', () => {
    const { doc, other, mine } = two()
    const before = readPlan(doc).evening
    mine.edit((d) => setFields(d, 'dishes', dish1.id, { name: 'Mine', portions: 5 }))
    exchange(doc, other)
    renameDish(other, dish1.id, 'Theirs')
    exchange(doc, other)
    mine.undo()
    const after = readPlan(doc).evening
    expect(after.dishes[0]).toEqual({ ...before.dishes[0], name: 'Theirs' })
    expect({ ...after, dishes: before.dishes }).toEqual(before)
    mine.redo()
    expect(readPlan(doc).evening.dishes[0]).toMatchObject({ name: 'Theirs', portions: 5 })
    exchange(doc, other)
    expect(readPlan(other)).toEqual(readPlan(doc))
  })

  test('L5 each edit is undone by itself, also a move and a removal', () => {
    const { doc, mine } = two()
    const states = [readPlan(doc)]
    const edits: ((d: Y.Doc) => unknown)[] = [
      (d) => moveDish(d, dish1.id, course2.id, { kind: 'first' }),
      (d) => remove(d, 'steps', step2.id),
      (d) => setFields(d, 'steps', step1.id, { does: 'Peel them all' }),
      (d) => setEvening(d, { covers: 11 }),
      (d) => addCourse(d, { ...course1, id: 'extra' }, { kind: 'first' }),
      (d) => restore(d, 'steps', step2.id),
    ]
    for (const edit of edits) {
      mine.edit(edit)
      states.push(readPlan(doc))
    }
    expect(new Set(states.map((state) => JSON.stringify(state))).size).toBe(edits.length + 1)
    for (const state of states.slice(0, -1).reverse()) {
      expect(mine.undo()).toBe(true)
      expect(readPlan(doc)).toEqual(state)
    }
    expect(mine.undo()).toBe(false)
    for (const state of states.slice(1)) {
      expect(mine.redo()).toBe(true)
      expect(readPlan(doc)).toEqual(state)
    }
    expect([mine.redo(), mine.canRedo(), mine.canUndo()]).toEqual([false, false, true])
  })

  test('L5 many commands in one edit are one update and one undo', () => {
    const { doc, mine } = two()
    const before = readPlan(doc)
    let updates = 0
    doc.on('update', () => {
      updates += 1
    })
    const { order: _cut, ...plainDish } = dish1
    mine.edit((d) => {
      addCourse(d, { ...course1, id: 'extra' })
      addDish(d, { ...plainDish, id: 'extra-dish', course: 'extra' })
      renameDish(d, dish1.id, 'Old soup')
    })
    expect([updates, readPlan(doc).evening.dishes.length]).toEqual([1, lamb.dishes.length + 1])
    mine.undo()
    expect(readPlan(doc)).toEqual(before)
  })

  test('L5 an addition is taken back as a removal: what another wrote into it meanwhile is there when it comes back', () => {
    const { doc, other, mine } = two()
    const { order: _cut, ...plainDish } = dish1
    mine.edit((d) => addDish(d, { ...plainDish, id: 'extra', notes: 'Salt.' }))
    exchange(doc, other)
    mine.undo()
    renameDish(other, 'extra', 'Theirs')
    typeText(other, 'dishes', 'extra', 'notes', { at: 5, cut: 0, put: ' Late.' })
    exchange(doc, other)
    expect(readPlan(other)).toMatchObject({ reports: [] })
    expect(readPlan(other).evening.dishes.some((dish) => dish.id === 'extra')).toBe(false)
    mine.redo()
    exchange(doc, other)
    const back = readPlan(other).evening.dishes.find((dish) => dish.id === 'extra')
    expect(back).toMatchObject({ name: 'Theirs', notes: 'Salt. Late.' })
    expect(readPlan(doc)).toEqual(readPlan(other))
  })

  test('L5 another’s edit on mine that they take back themselves leaves mine to be undone', () => {
    const { doc, other, mine, theirs } = two()
    mine.edit((d) => renameDish(d, dish1.id, 'Mine'))
    exchange(doc, other)
    theirs.edit((d) => renameDish(d, dish1.id, 'Theirs'))
    exchange(doc, other)
    theirs.undo()
    exchange(doc, other)
    expect(nameOf(doc)).toBe('Mine')
    mine.undo()
    expect(nameOf(doc)).toBe(dish1.name)
  })

  test('L5 an edit of which nothing is left is passed over, and what was before it is undone', () => {
    const { doc, other, mine } = two()
    mine.edit((d) => setEvening(d, { covers: 3 }))
    mine.edit((d) => renameDish(d, dish1.id, 'Mine'))
    exchange(doc, other)
    renameDish(other, dish1.id, 'Theirs')
    exchange(doc, other)
    expect(mine.undo()).toBe(true)
    expect([nameOf(doc), readPlan(doc).evening.covers]).toEqual(['Theirs', lamb.covers])
    mine.redo()
    expect([nameOf(doc), readPlan(doc).evening.covers]).toEqual(['Theirs', 3])
  })

  test('L5 an edit that is refused or changes nothing is no step, and leaves what can be redone', () => {
    const { doc, mine } = two()
    mine.edit((d) => renameDish(d, dish1.id, 'Mine'))
    mine.undo()
    mine.edit((d) => renameDish(d, dish1.id, dish1.name))
    mine.edit((d) => setFields(d, 'dishes', dish1.id, { yields: -1 }))
    expect([mine.canUndo(), mine.canRedo()]).toEqual([false, true])
    mine.redo()
    expect(nameOf(doc)).toBe('Mine')
    mine.edit((d) => setEvening(d, { covers: 3 }))
    expect(mine.canRedo()).toBe(false)
  })
})

describe('typing', () => {
  test('L5 the letters of one run are one step, another’s letters among them stay', () => {
    const { doc, other, mine, theirs } = two()
    setFields(doc, 'steps', step1.id, { does: 'Peel' })
    exchange(doc, other)
    for (const [n, letter] of [...' all'].entries()) type(mine, 4 + n, letter, 'word-1')
    for (const [n, letter] of [...' now'].entries()) type(mine, 8 + n, letter, 'word-2')
    exchange(doc, other)
    type(theirs, 0, 'Do: ')
    type(theirs, doesOf(other)?.indexOf('ll') ?? 0, 'X')
    exchange(doc, other)
    expect(doesOf(doc)).toBe('Do: Peel aXll now')
    mine.undo()
    expect(doesOf(doc)).toBe('Do: Peel aXll')
    mine.undo()
    expect(doesOf(doc)).toBe('Do: PeelX')
    mine.redo()
    expect(doesOf(doc)?.replace('X', '')).toBe('Do: Peel all')
    mine.redo()
    expect(doesOf(doc)?.replace('X', '')).toBe('Do: Peel all now')
    mine.undo()
    type(mine, 0, '!', 'word-2')
    mine.undo()
    expect(doesOf(doc)?.replace('X', '')).toBe('Do: Peel all')
  })

  test('L5 deleted letters come back where they were', () => {
    const { doc, other, mine } = two()
    setFields(doc, 'steps', step1.id, { does: 'Warm the six bowls' })
    exchange(doc, other)
    type(mine, 9, '', undefined, 4)
    typeText(other, 'steps', step1.id, 'does', { at: 0, cut: 0, put: 'First: ' })
    exchange(doc, other)
    expect(doesOf(doc)).toBe('First: Warm the bowls')
    mine.undo()
    expect(doesOf(doc)).toBe('First: Warm the six bowls')
  })

  test('L3 letters go in as typed, within the length that is read, and control characters as spaces', () => {
    const { doc } = two()
    const put = (text: string, at = 0, cut = 0) => typeText(doc, 'steps', step1.id, 'does', { at, cut, put: text })
    setFields(doc, 'steps', step1.id, { does: '' })
    expect([put('a\nb').ok, doesOf(doc)]).toEqual([true, 'a b'])
    expect([put('x'.repeat(397)).ok, put('y').ok, doesOf(doc)?.length]).toEqual([true, false, 400])
    expect([put('', 0, 397).ok, doesOf(doc)]).toEqual([true, 'a b'])
    expect(put('z', 4)).toMatchObject({ ok: false, error: { kind: 'refused' } })
    expect(typeText(doc, 'steps', 'nobody', 'does', { at: 0, cut: 0, put: 'z' })).toMatchObject({ ok: false })
    expect(typeText(doc, 'dishes', dish1.id, 'name', { at: 0, cut: 0, put: 'z' })).toMatchObject({ ok: false })
    remove(doc, 'steps', step1.id)
    expect(put('z')).toMatchObject({ ok: false, error: { kind: 'unknown-entry' } })
  })

  test('L5 what was typed is found where the caret is, and a place moves with what others change before it', () => {
    expect(typedDifference('hello', 'helllo', 3)).toEqual({ at: 2, cut: 0, put: 'l' })
    expect(typedDifference('hello', 'helllo', 5)).toEqual({ at: 4, cut: 0, put: 'l' })
    expect(typedDifference('hello', 'helo', 3)).toEqual({ at: 3, cut: 1, put: '' })
    expect(typedDifference('a😀b', 'a😁b', 3)).toEqual({ at: 1, cut: 2, put: '😁' })
    expect(typedDifference('ab', 'xy', 0)).toEqual({ at: 0, cut: 2, put: 'xy' })
    const change = { at: 4, cut: 3, put: 'seven' }
    expect([0, 4, 5, 7, 9].map((place) => placeAfter(place, change))).toEqual([0, 4, 4, 9, 11])
  })
})

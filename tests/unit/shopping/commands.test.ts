import { expect, test } from 'vitest'
import * as Y from 'yjs'
import { readLineAmount } from '#app/_shopping/line-sentences.ts'
import { listOf } from '#app/_shopping/list-of.ts'
import { isShown } from '#app/_shopping/view.ts'
import { namesOf } from '#app/_words/names.ts'
import { listAsText, unwrittenText } from '#app/_words/shopping.ts'
import { checkEvening } from '#lib/domain/check.ts'
import type { Evening } from '#lib/domain/evening.ts'
import { addOwnLine, noteLine, noteLines, tick, untick } from '#lib/plan/commands/shop.ts'
import { addThaw } from '#lib/plan/commands/thaw.ts'
import { readPlan } from '#lib/plan/read.ts'
import { openUndo } from '#lib/plan/undo.ts'
import { writeEvening } from '#lib/plan/write-evening.ts'
import { groupLines } from '#lib/shopping/groups.ts'
import { thawHours } from '#lib/shopping/thaw.ts'
import { loadEvening } from '#tests/support/load-evening.ts'

const potluck = loadEvening('potluck')
const docOf = (evening: Evening = potluck): Y.Doc => {
  const doc = new Y.Doc()
  writeEvening(doc, evening, { epoch: 'e', minClient: 1 })
  return doc
}
const evening = (doc: Y.Doc): Evening => readPlan(doc).evening
const at = '2026-12-04T10:00:00Z'

test('SH13 a tick is taken back by undo where it was made, and others’ ticks of the line stay', () => {
  const [one, two] = [docOf(), new Y.Doc()]
  Y.applyUpdate(two, Y.encodeStateAsUpdate(one))
  const undo = openUndo(one)
  undo.edit((doc) => tick(doc, { id: 't1', line: 'onion|g', at }))
  tick(two, { id: 't2', line: 'onion|g', at })
  Y.applyUpdate(one, Y.encodeStateAsUpdate(two))
  expect(undo.undo()).toBe(true)
  expect(evening(one).ticks?.map(({ id }) => id)).toEqual(['t2'])
  untick(one, 'onion|g')
  expect(evening(one).ticks).toBeUndefined()
  expect(checkEvening(evening(two))).toEqual([])
})

test('SH5 two notes of one line from two phones are read as one, and what is taken back is gone from both', () => {
  const [one, two] = [docOf(), new Y.Doc()]
  Y.applyUpdate(two, Y.encodeStateAsUpdate(one))
  noteLine(one, 'walnut|g', 'n1', { price: 250 })
  noteLine(two, 'walnut|g', 'n2', { price: 300, shop: 'Market' })
  Y.applyUpdate(one, Y.encodeStateAsUpdate(two))
  Y.applyUpdate(two, Y.encodeStateAsUpdate(one))
  const walnuts = (doc: Y.Doc) => listOf(evening(doc), null, null).lines.find(({ key }) => key.startsWith('walnut|g'))
  const key = walnuts(one)?.key ?? ''
  expect(walnuts(one)).toEqual(walnuts(two))
  noteLine(one, 'walnut|g', 'n3', { price: undefined })
  expect(evening(one).shopping?.map(({ id, price, shop }) => [id, price, shop])).toEqual([
    ['n1', undefined, undefined],
    ['n2', undefined, 'Market'],
  ])
  expect(noteLine(one, key, 'n4', { price: -1 })).toMatchObject({ ok: false })
})

test('SH7 what a home shops for is its cooks’ unless somebody else takes it, and the list to send says whose it is', () => {
  const doc = docOf()
  const before = listOf(evening(doc), null, [])
  const away = before.lines.filter(({ home }) => home !== null)
  expect(away.length).toBeGreaterThan(5)
  const cook = potluck.cooks.find(({ presence }) => presence.some(({ kitchen }) => kitchen === away[0]?.home))?.id ?? ''
  expect(away.filter((line) => isShown(line, potluck, cook, 'mine', 'any')).every(({ home }) => home === away[0]?.home)).toBe(
    true,
  )
  const host = potluck.cooks.find((each) => each.host)?.id ?? ''
  const [line] = away
  if (!line) throw new Error('the potluck shops at home')
  noteLines(doc, [{ key: line.key, id: 'n1', own: false }], { by: host })
  expect(addOwnLine(doc, 'own-1', ' Candles ')).toMatchObject({ ok: true })
  expect(addOwnLine(doc, 'none', '  ')).toMatchObject({ ok: false })
  const after = listOf(evening(doc), null, []).lines
  const taken = after.find(({ key }) => key === line.key)
  expect(taken && isShown(taken, potluck, cook, 'mine', 'any')).toBe(false)
  expect(taken && isShown(taken, potluck, host, 'mine', 'any')).toBe(true)
  const text = listAsText(groupLines(after), potluck, namesOf(potluck))
  expect(text).toContain('- Candles')
  expect(text.split('\n').filter((row) => row.startsWith('- '))).toHaveLength(after.length)
})

test('SH12 frozen food thaws in a step before the one that uses it, within its window', () => {
  const [ingredient] = potluck.ingredients
  if (!ingredient) throw new Error('the potluck has ingredients')
  const doc = docOf()
  const made = addThaw(doc, {
    id: 'thaw-1',
    ingredient: ingredient.id,
    does: 'Move it to the fridge',
    hours: thawHours(2000),
    earliest: { day: -3, time: '10:00' },
  })
  expect(made.ok).toBe(true)
  const { steps } = evening(doc)
  const thaw = steps.find(({ id }) => id === 'thaw-1')
  // USDA FSIS: 24 h for 4 to 5 lb; 2 kg are 4.4 lb: 21.2 h, so the whole day, to 26.5 h.
  expect(thaw?.ways[0]).toMatchObject({ care: 'leave', takes: { least: 'P1D', most: 'P1DT3H' }, upTo: 'P2DT3H' })
  expect(thaw).toMatchObject({ dish: ingredient.dish, earliest: { day: -3, time: '10:00' } })
  expect(steps.filter(({ after }) => after.some(({ step }) => step === 'thaw-1')).map(({ dish }) => dish)).toEqual([
    ingredient.dish,
  ])
  expect(checkEvening(evening(doc))).toEqual([])
  expect(
    addThaw(doc, { id: 'thaw-2', ingredient: 'nobody', does: '', hours: thawHours(1), earliest: { day: -1, time: '10:00' } }).ok,
  ).toBe(false)
})

test('SH4 an amount is written in any measure of its kind, and in no other', () => {
  expect(['1.5 kg', '200', '2 l', '1 lb', 'some'].map((text) => readLineAmount(text, 'g'))).toEqual([
    { n: '1500', unit: 'g' },
    null,
    null,
    { n: '56699/125', unit: 'g' },
    null,
  ])
  expect([readLineAmount('2 tins', 'tin'), readLineAmount('3', ''), readLineAmount('75 cl', 'ml')]).toEqual([
    { n: '2', unit: 'tin' },
    { n: '3', unit: '' },
    { n: '750', unit: 'ml' },
  ])
})

test('SH17 a dish that nobody wrote ingredients for is named beside the list and in its text; one that was dropped is not', () => {
  const [first, second] = potluck.dishes.filter(({ id }) => potluck.ingredients.some(({ dish }) => dish === id))
  if (!first || !second) throw new Error('the potluck’s dishes have ingredients')
  const without = (...ids: readonly string[]) => potluck.ingredients.filter(({ dish }) => !ids.includes(dish))
  const before = unwrittenText(potluck, namesOf(potluck))
  for (const dish of [first, second]) expect(before).not.toContain(dish.name)
  const less = { ...potluck, ingredients: without(first.id, second.id) }
  const said = unwrittenText(less, namesOf(less))
  for (const dish of [first, second]) expect(said).toContain(dish.name)
  expect(listAsText(groupLines(listOf(less, null, []).lines), less, namesOf(less))).toContain(said)
  const dropped = { ...less, dishes: less.dishes.map((dish) => (dish === first ? { ...dish, state: 'dropped' as const } : dish)) }
  expect(unwrittenText(dropped, namesOf(dropped))).not.toContain(first.name)
  expect(unwrittenText(dropped, namesOf(dropped))).toContain(second.name)
})

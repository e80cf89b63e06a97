import { expect, test } from 'vitest'
import { hasArrived, textField, textOfDraft } from '#app/_frame/text-draft.ts'
import { openDrafts } from '#app/_sync/drafts.ts'
import { pageShelf } from '#app/_sync/shelf.ts'
import { remove } from '#lib/plan/commands/remove.ts'
import { textDifference } from '#lib/plan/commands/text.ts'
import { readEvening } from '#tests/support/read-evening.ts'
import { planOf } from '#tests/unit/plan/open-plan.ts'

const draft = { text: 'Roast potatos', base: 'Potatoes', label: 'Name of the dish', path: '/evenings/e/menu' }

test('B8 a draft outlives the page, is its person’s and evening’s own, and goes when it is kept or taken back', () => {
  const shelf = pageShelf()
  openDrafts(shelf, 'e/kim/').set('d1/name', draft)
  const again = openDrafts(shelf, 'e/kim/')
  expect(again.get('d1/name')).toEqual(draft)
  expect(openDrafts(shelf, 'e/noor/').get('d1/name')).toBeNull()
  expect(openDrafts(shelf, 'f/kim/').hidden()).toEqual([])
  again.remove('d1/name')
  expect(openDrafts(shelf, 'e/kim/').get('d1/name')).toBeNull()
})

test('B8 drafts whose fields are not on the screen are told, and only those', () => {
  const shelf = pageShelf()
  openDrafts(shelf, 'e/kim/').set('d1/name', draft)
  const drafts = openDrafts(shelf, 'e/kim/')
  let told = 0
  drafts.subscribe(() => {
    told += 1
  })
  expect(drafts.hidden()).toEqual([{ key: 'd1/name', ...draft }])
  const hide = drafts.show('d1/name')
  const hideSecond = drafts.show('d1/name')
  expect([drafts.hidden(), told]).toEqual([[], 1])
  hide()
  expect(drafts.hidden()).toEqual([])
  hideSecond()
  expect([drafts.hidden().length, told]).toEqual([1, 2])
  drafts.remove('d1/name')
  expect([drafts.hidden(), told]).toEqual([[], 3])
})

test('B8 what is on the shelf and is no draft is no draft', () => {
  const shelf = pageShelf()
  shelf.set('e/kim/a', 'no json')
  shelf.set('e/kim/b', '{"text":1}')
  const drafts = openDrafts(shelf, 'e/kim/')
  expect([drafts.get('a'), drafts.get('b'), drafts.hidden()]).toEqual([null, null, []])
})

test('B8 letters of a shared text are missed only when they are not in it', () => {
  const lamb = readEvening('a-lamb')
  const step = lamb.steps[0]
  if (!step) throw new Error('no step')
  const doc = planOf(lamb)
  const key = `/${textField('steps', step.id, 'does')}`
  expect(textOfDraft(doc, key)).toEqual({ text: step.does })
  expect(textOfDraft(doc, 'd1/name')).toBeNull()
  remove(doc, 'steps', step.id)
  expect(textOfDraft(doc, key)).toEqual({ text: null })
  const typed = textDifference('Peel', 'Peel them all')
  expect([
    hasArrived(typed, 'First peel them all'),
    hasArrived(typed, 'Peel'),
    hasArrived(textDifference('Peel', 'Pe'), 'Peel'),
  ]).toEqual([true, false, true])
})

import { expect, test } from 'vitest'
import type * as Y from 'yjs'
import { acceptAs } from '#app/_bring/accept.ts'
import { stateOf } from '#lib/domain/offer.ts'
import { changeOffer, declineOffer, makeOffer, standByOffer, withdrawOffer } from '#lib/plan/commands/offer.ts'
import { remove } from '#lib/plan/commands/remove.ts'
import { setEvening, setFields } from '#lib/plan/commands/set.ts'
import { readPlan } from '#lib/plan/read.ts'
import { openUndo } from '#lib/plan/undo.ts'
import { loopbackRoom } from '#tests/support/loopback-room.ts'
import { idMaker, offer, potluck, whole } from '#tests/unit/potluck/offered.ts'

const { order: _order, state: _state, ...said } = whole

const opened = async (...offers: Parameters<typeof potluck>) => {
  const room = await loopbackRoom(potluck(...offers))
  const host = room.device('m-host', 'host', 'kim')
  const cook = room.device('m-cook', 'cook', 'noor')
  for (const device of [host, cook]) room.connect(device)
  await room.settle()
  return { ...room, host, cook }
}
const offersIn = (doc: Y.Doc) => readPlan(doc).evening.offers?.map((one) => [one.id, stateOf(one), one.portions, one.why])

test('R21 what a cook offers, and a host answers, is admitted, undone and redone: also the dish, the steps and the hours that come of it', async () => {
  const { host, cook, settle, logged } = await opened()
  const undo = openUndo(cook.client.doc)
  const answers = openUndo(host.client.doc)
  undo.edit((doc) => makeOffer(doc, said))
  undo.edit((doc) => changeOffer(doc, said.id, { portions: 8, how: 'frozen' }))
  undo.edit((doc) => withdrawOffer(doc, said.id))
  await settle()
  expect(offersIn(host.client.doc)).toEqual([[said.id, 'withdrawn', 8, undefined]])
  undo.undo()
  undo.undo()
  await settle()
  answers.edit((doc) => declineOffer(doc, said.id, 'There is one'))
  answers.undo()
  answers.edit((doc) => setEvening(doc, { house: { chairs: 6 } }))
  answers.edit((doc) => setFields(doc, 'cooks', 'noor', { presence: [] }))
  const newId = idMaker()
  answers.edit((doc) => acceptAs(doc, readPlan(doc).evening, whole, { kind: 'earlier', by: 'PT30M' }, newId))
  await settle()
  const after = readPlan(cook.client.doc)
  expect(after.reports).toEqual([])
  expect(after.evening).toEqual(readPlan(host.client.doc).evening)
  expect(after.evening).toMatchObject({ house: { chairs: 6 }, offers: [{ state: 'accepted', portions: 6 }] })
  expect(after.evening.dishes.map(({ name }) => name)).toContain('Onion tart')
  expect(after.evening.cooks[1]?.presence.at(-1)?.from).toEqual({ day: 0, time: '18:30' })
  for (const _ of [0, 1, 2]) answers.undo()
  await settle()
  expect(readPlan(cook.client.doc).evening.house).toBeUndefined()
  expect(offersIn(cook.client.doc)).toEqual([[said.id, 'offered', 6, undefined]])
  for (const _ of [0, 1, 2]) answers.redo()
  await settle()
  expect(readPlan(cook.client.doc).evening).toEqual(after.evening)
  expect([host.closedWith, cook.closedWith, logged]).toEqual([null, null, []])
})

test('BR1 a cook withdraws what was accepted and changes their mind, and may undo either', async () => {
  const { host, cook, settle, logged } = await opened(whole)
  acceptAs(host.client.doc, readPlan(host.client.doc).evening, whole, { kind: 'as-offered' }, idMaker())
  await settle()
  const undo = openUndo(cook.client.doc)
  undo.edit((doc) => withdrawOffer(doc, whole.id))
  undo.undo()
  undo.redo()
  undo.edit((doc) => standByOffer(doc, whole.id))
  await settle()
  expect(offersIn(host.client.doc)?.[0]?.[1]).toBe('accepted')
  expect([cook.closedWith, logged]).toEqual([null, []])
})

const theirs = offer({ id: 'theirs', cook: 'kim', kitchen: 'home' })

test.each<[string, (doc: Y.Doc) => unknown]>([
  ['offers in the name of another', (doc) => makeOffer(doc, { ...said, id: 'for-kim', cook: 'kim' })],
  ['changes the offer of another', (doc) => changeOffer(doc, 'theirs', { portions: 1 })],
  ['withdraws the offer of another', (doc) => withdrawOffer(doc, 'theirs')],
  ['takes away the offer of another', (doc) => remove(doc, 'offers', 'theirs')],
  ['makes the offer of another their own', (doc) => setFields(doc, 'offers', 'theirs', { cook: 'noor' })],
  ['gives their own to another', (doc) => setFields(doc, 'offers', whole.id, { cook: 'kim' })],
  ['accepts their own', (doc) => acceptAs(doc, readPlan(doc).evening, whole, { kind: 'as-offered' }, idMaker())],
  ['declines', (doc) => declineOffer(doc, whole.id, 'no')],
  ['says what it became', (doc) => setFields(doc, 'offers', whole.id, { dish: 'joint' })],
  ['says what the house has', (doc) => setEvening(doc, { house: { chairs: 1 } })],
])('BR1 a cook who %s is refused, and nothing of it is kept', async (_, edit) => {
  const { host, cook, settle } = await opened(whole, theirs)
  const before = readPlan(host.client.doc).evening
  edit(cook.client.doc)
  await settle()
  expect(cook.closedWith).not.toBeNull()
  expect(host.closedWith).toBeNull()
  expect(readPlan(host.client.doc).evening).toEqual(before)
})

test('BR1 who is no cook of the evening offers nothing, and a host may offer for everybody', async () => {
  const { host, settle, device, connect } = await opened(whole)
  const nobody = device('m-nobody', 'cook', null)
  connect(nobody)
  await settle()
  makeOffer(host.client.doc, { ...said, id: 'for-noor' })
  makeOffer(nobody.client.doc, { ...said, id: 'for-nobody' })
  await settle()
  expect([host.closedWith, nobody.closedWith === null]).toEqual([null, false])
  expect(offersIn(host.client.doc)?.map(([id]) => id)).toEqual([whole.id, 'for-noor'])
})

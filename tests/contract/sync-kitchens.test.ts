import { expect, test } from 'vitest'
import type * as Y from 'yjs'
import { templateKit } from '#lib/domain/kitchen-templates.ts'
import { usualPresence } from '#lib/domain/presence.ts'
import { addCook, addKitchen } from '#lib/plan/commands/add.ts'
import { addKit, removeKit, replaceKit, setHostKitchen, setKit } from '#lib/plan/commands/kitchen.ts'
import { moveCook, moveKitchen } from '#lib/plan/commands/move.ts'
import { setPresence } from '#lib/plan/commands/presence.ts'
import { remove, restore } from '#lib/plan/commands/remove.ts'
import { setFields } from '#lib/plan/commands/set.ts'
import { readPlan } from '#lib/plan/read.ts'
import { openUndo } from '#lib/plan/undo.ts'
import { loopbackRoom } from '#tests/support/loopback-room.ts'
import { readEvening } from '#tests/support/read-evening.ts'

const lamb = readEvening('a-lamb')
const [course] = lamb.courses
const [kim, lou] = lamb.cooks
if (!course || !kim || !lou) throw new Error('the evening is too small')

const edits: ((doc: Y.Doc) => { readonly ok: boolean })[] = [
  (doc) =>
    addKitchen(doc, { id: 'flat', name: 'Noor’s flat', toTable: 'PT12M', kit: templateKit('no-oven', (key) => `flat-${key}`) }),
  (doc) =>
    addKit(doc, 'flat', { id: 'flat-oven', kind: 'oven', name: 'Oven', shelves: 1, maxC: 230, upPerMin: 8.5, downPerMin: 3 }),
  (doc) => setKit(doc, 'flat', { id: 'flat-fridge', kind: 'cold', keep: 'cold', places: 5 }),
  (doc) => removeKit(doc, 'flat', 'flat-kettle'),
  (doc) =>
    replaceKit(
      doc,
      lamb.host,
      templateKit('two-ovens', (key) => `big-${key}`),
    ),
  (doc) => moveKitchen(doc, 'flat', { kind: 'first' }),
  (doc) => addCook(doc, { id: 'noor', name: 'Noor', host: false, eats: true, pace: 1.15, presence: usualPresence('flat') }),
  (doc) => setPresence(doc, 'noor', usualPresence(lamb.host)),
  (doc) => setFields(doc, 'cooks', 'noor', { pace: 0.85, host: true, eats: false }),
  (doc) => moveCook(doc, 'noor', { kind: 'first' }),
  (doc) => setFields(doc, 'courses', course.id, { lead: 'noor', pours: kim.id, clears: lou.id }),
  (doc) => remove(doc, 'cooks', 'noor'),
  (doc) => restore(doc, 'cooks', 'noor'),
  (doc) => remove(doc, 'kitchens', 'flat'),
  (doc) => restore(doc, 'kitchens', 'flat'),
]

test('R21 what is said of kitchens, kit, cooks, their hours and who leads, pours and clears is admitted, undone and redone', async () => {
  const opened = await loopbackRoom(lamb)
  const host = opened.device('m-host', 'host', kim.id)
  const cook = opened.device('m-cook', 'cook', lou.id)
  for (const device of [host, cook]) opened.connect(device)
  await opened.settle()
  const before = readPlan(host.client.doc).evening
  const undo = openUndo(cook.client.doc)
  for (const [index, edit] of edits.entries()) {
    expect(undo.edit(edit), `edit ${index}`).toMatchObject({ ok: true })
    await opened.settle()
  }
  const after = readPlan(host.client.doc)
  expect(after.evening).toEqual(readPlan(cook.client.doc).evening)
  expect(after.evening.kitchens.map((kitchen) => kitchen.id)).toEqual(['flat', lamb.host])
  expect(after.evening.cooks[0]).toMatchObject({ id: 'noor', pace: 0.85, presence: usualPresence(lamb.host) })
  expect(after.evening.courses[0]).toMatchObject({ lead: 'noor', pours: kim.id, clears: lou.id })
  for (const _ of edits) undo.undo()
  await opened.settle()
  expect(readPlan(host.client.doc).evening).toEqual(before)
  for (const _ of edits) undo.redo()
  await opened.settle()
  expect(readPlan(host.client.doc).evening).toEqual(after.evening)
  expect([host.closedWith, cook.closedWith, opened.logged]).toEqual([null, null, []])
})

test('R21 the host may put another kitchen beside the table; a cook may not, and is closed', async () => {
  const opened = await loopbackRoom(lamb)
  const host = opened.device('m-host', 'host', kim.id)
  const cook = opened.device('m-cook', 'cook', lou.id)
  for (const device of [host, cook]) opened.connect(device)
  await opened.settle()
  addKitchen(host.client.doc, { id: 'hall', name: 'The hall', toTable: 'PT5M', kit: templateKit('hall', (key) => `hall-${key}`) })
  setHostKitchen(host.client.doc, 'hall')
  await opened.settle()
  expect(readPlan(cook.client.doc)).toMatchObject({ reports: [], evening: { host: 'hall' } })
  expect(host.closedWith).toBeNull()
  setHostKitchen(cook.client.doc, lamb.host)
  await opened.settle()
  expect(cook.closedWith).not.toBeNull()
  expect(readPlan(host.client.doc).evening.host).toBe('hall')
})

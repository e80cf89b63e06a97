import 'fake-indexeddb/auto'
import { afterEach, beforeEach, expect, test } from 'vitest'
import { pageShelf } from '#app/_sync/shelf.ts'
import { renameDish } from '#lib/plan/commands/set.ts'
import { CLOSE } from '#lib/plan/wire.ts'
import { type Cable, openCable } from '#tests/support/cable.ts'
import { cook, course, dish, evening, ring, step } from '#tests/support/evening-builders.ts'
import { handClock } from '#tests/unit/planner/by-hand.ts'
import { type APage, aPage } from './a-page.ts'
import { type AServer, aServer } from './a-server.ts'

let number = 0
let plan = evening()
let server: AServer
let pages: APage[] = []
let cables: Cable[] = []

beforeEach(async () => {
  number += 1
  plan = evening(
    { id: `e${number}`, cooks: [cook('kim'), cook('noor')] },
    course('main', dish('roast', step('r1', 20, ring('medium'))), dish('salad', step('s1', 10))),
  )
  server = await aServer(plan)
  await server.seat('kim', 'host', 'kim')
  await server.seat('noor', 'cook', 'noor')
})

afterEach(async () => {
  for (const page of pages) page.close()
  for (const cable of cables) await cable.close()
  await server.close()
  pages = []
  cables = []
})

const cable = async () => {
  const opened = await openCable(() => server.port())
  cables.push(opened)
  return opened
}

const page = (user: string, port = server.port(), more: Partial<Parameters<typeof aPage>[0]> = {}) => {
  const opened = aPage({ port, eveningId: plan.id, user, shelf: pageShelf(), ...more })
  pages.push(opened)
  return opened
}

const rename = (at: APage, name: string, id = 'roast') => {
  const done = at.plan().edit((doc) => renameDish(doc, id, name))
  if (!done.ok) throw new Error(done.error.kind)
}

test('B1 an edit is seen by the other cook, and is said to be saved after it was stored', async () => {
  const kim = page('kim')
  const noor = page('noor')
  await Promise.all([kim.saved(), noor.saved()])
  expect(kim.plan().me).toMatchObject({ role: 'host', cook: 'kim' })
  rename(kim, 'Pork with crackling')
  expect(kim.nameOf('roast')).toBe('Pork with crackling')
  expect(kim.link()).toEqual({ kind: 'saving' })
  await noor.until(() => noor.nameOf('roast') === 'Pork with crackling')
  await kim.saved()
  const stored = await server.rooms().read(plan.id)
  expect(stored.dishes.find(({ id }) => id === 'roast')?.name).toBe('Pork with crackling')
})

test('B2 an edit made without a connection is unsent, and is sent and saved when the connection is back', async () => {
  const line = await cable()
  const kim = page('kim', line.port)
  const noor = page('noor')
  await Promise.all([kim.saved(), noor.saved()])
  line.pull()
  await kim.until((_, link) => link.kind === 'offline')
  expect(kim.link()).toEqual({ kind: 'offline', unsent: false })
  rename(kim, 'Lamb')
  expect(kim.link()).toEqual({ kind: 'offline', unsent: true })
  line.plugIn()
  await kim.saved()
  await noor.until(() => noor.nameOf('roast') === 'Lamb')
  expect(kim.links.slice(-2)).toEqual(['saving', 'saved'])
})

test('B1 a deletion made without a connection is not taken for saved before it is acknowledged', async () => {
  const line = await cable()
  const kim = page('kim', line.port)
  await kim.saved()
  rename(kim, 'First')
  await kim.saved()
  line.pull()
  await kim.until((_, link) => link.kind === 'offline')
  kim.plan().undo()
  expect(kim.link()).toEqual({ kind: 'offline', unsent: true })
  line.plugIn()
  await kim.saved()
  expect((await server.rooms().read(plan.id)).dishes.find(({ id }) => id === 'roast')?.name).toBe('Dish roast')
})

test('B2 an edit made offline survives a reload while offline, is shown as unsent, and reaches everybody in the end', async () => {
  const line = await cable()
  const shelf = pageShelf()
  const kim = page('kim', line.port, { shelf })
  await kim.saved()
  line.pull()
  await kim.until((_, link) => link.kind === 'offline')
  rename(kim, 'Trout')
  kim.close()

  const again = page('kim', line.port, { shelf })
  await again.until((loaded, link) => loaded !== null && link.kind === 'offline')
  expect(again.nameOf('roast')).toBe('Trout')
  expect(again.link()).toEqual({ kind: 'offline', unsent: true })
  expect(again.plan().me).toMatchObject({ cook: 'kim' })
  expect(again.links).not.toContain('saved')
  line.plugIn()
  await again.saved()
  expect((await server.rooms().read(plan.id)).dishes.find(({ id }) => id === 'roast')?.name).toBe('Trout')
  expect(shelf.keys('').filter((key) => key.includes('unsent'))).toEqual([])
})

test('B2 a restart of the server is survived by every edit, those made meanwhile included', async () => {
  const kim = page('kim')
  const noor = page('noor')
  await Promise.all([kim.saved(), noor.saved()])
  rename(kim, 'Before')
  await server.stop()
  rename(noor, 'Salad meanwhile', 'salad')
  await noor.until((_, link) => link.kind === 'offline')
  await server.start()
  await Promise.all([kim.saved(), noor.saved()])
  await kim.until(() => kim.nameOf('salad') === 'Salad meanwhile')
  await noor.until(() => noor.nameOf('roast') === 'Before')
})

test('B3 a connection that has gone dead is noticed within ten seconds of the last word, and taken up again', async () => {
  const { clock: timers, pass } = handClock()
  const line = await cable()
  const kim = page('kim', line.port, { timers })
  await kim.saved()
  line.deaden()
  pass(8_000)
  expect(kim.link().kind).toBe('saved')
  pass(2_000)
  expect(kim.link()).toEqual({ kind: 'offline', unsent: false })
  rename(kim, 'Unheard')
  expect(kim.link()).toEqual({ kind: 'offline', unsent: true })
  line.plugIn()
  pass(11_000)
  await kim.saved()
  expect((await server.rooms().read(plan.id)).dishes.find(({ id }) => id === 'roast')?.name).toBe('Unheard')
})

test('B1 an edit that goes into a dead connection is not said to be saved', async () => {
  const { clock: timers, pass } = handClock()
  const line = await cable()
  const kim = page('kim', line.port, { timers })
  await kim.saved()
  line.deaden()
  rename(kim, 'Into the void')
  expect(kim.link()).toEqual({ kind: 'saving' })
  pass(10_000)
  expect(kim.link()).toEqual({ kind: 'offline', unsent: true })
})

test('the server’s clock is known to the client', async () => {
  const { clock: timers, pass } = handClock()
  const before = Date.now()
  const kim = page('kim', server.port(), { timers })
  await kim.saved()
  pass(5_000)
  expect(kim.plan().now()).toBeGreaterThanOrEqual(before + 5_000)
  expect(kim.plan().now()).toBeLessThanOrEqual(Date.now() + 5_000)
})

test.each([
  ['signIn', 'sign-in'],
  ['removed', 'removed'],
  ['gone', 'gone'],
  ['reload', 'reload'],
] as const)('the close code %s ends the trying and says why', async (code, why) => {
  const kim = page('kim')
  await kim.saved()
  server.rooms().closeMember('m-kim', CLOSE[code])
  await kim.until((_, link) => link.kind === 'closed')
  expect(kim.link()).toEqual({ kind: 'closed', why })
})

test('B5 a document put back from a backup is not mixed with the copy of the one before', async () => {
  const shelf = pageShelf()
  const line = await cable()
  const kim = page('kim', line.port, { shelf })
  await kim.saved()
  line.pull()
  await kim.until((_, link) => link.kind === 'offline')
  rename(kim, 'Of before')
  await server.restore(plan, 'epoch-2')
  line.plugIn()
  await kim.until((_, link) => link.kind === 'closed')
  expect(kim.link()).toEqual({ kind: 'closed', why: 'other-epoch', unsent: true })
  kim.close()

  const again = page('kim', line.port, { shelf })
  await again.saved()
  expect(again.nameOf('roast')).toBe('Dish roast')
  expect(again.plan().reports.join()).toContain('earlier copy')
  expect((await server.rooms().read(plan.id)).dishes.find(({ id }) => id === 'roast')?.name).toBe('Dish roast')
  // What this device had is brought in only when it is asked for, as an edit like any other.
  await again.until((loaded) => loaded !== null && again.plan().aside?.differs === 1)
  again.plan().aside?.bringIn()
  expect(again.nameOf('roast')).toBe('Of before')
  expect(again.plan().aside).toBeNull()
  await again.saved()
  expect((await server.rooms().read(plan.id)).dishes.find(({ id }) => id === 'roast')?.name).toBe('Of before')
  again.plan().undo()
  expect(again.nameOf('roast')).toBe('Dish roast')
  again.close()
  const later = page('kim', line.port, { shelf })
  await later.saved()
  expect([later.plan().aside, later.plan().reports]).toEqual([null, []])
})

test('B5 what was saved after the backup is offered too, to a cook only as far as cooks write, and can be left out', async () => {
  const shelf = pageShelf()
  const noor = page('noor', server.port(), { shelf })
  await noor.saved()
  rename(noor, 'Saved after the backup')
  await noor.saved()
  await server.restore({ ...plan, covers: plan.covers + 1 }, 'epoch-3')
  noor.close()
  const again = page('noor', server.port(), { shelf })
  await again.until((_, link) => link.kind === 'closed')
  again.close()
  const later = page('noor', server.port(), { shelf })
  await later.until((loaded) => loaded !== null && later.plan().aside?.differs === 1)
  later.plan().aside?.leave()
  expect([later.plan().aside, later.nameOf('roast'), later.plan().evening.covers]).toEqual([null, 'Dish roast', plan.covers + 1])
})

test('B4 after a refused edit the next page starts from what the server has', async () => {
  const shelf = pageShelf()
  const noor = page('noor', server.port(), { shelf })
  await noor.saved()
  noor.plan().edit((doc) => doc.getMap('claims').set('roast', { cook: 'noor' }))
  await noor.until((_, link) => link.kind === 'closed')
  expect(noor.link()).toEqual({ kind: 'closed', why: 'refused', unsent: true })
  noor.close()
  const again = page('noor', server.port(), { shelf })
  await again.saved()
  expect(again.plan().evening.claims).toEqual([])
})

test('B6 a claim is asked for, answered, and the loser is told who has it', async () => {
  const kim = page('kim')
  const noor = page('noor')
  await Promise.all([kim.saved(), noor.saved()])
  const first = kim.plan().send({ kind: 'claim', target: 'roast', cook: 'kim' })
  expect(kim.plan().asking.get('roast')).toBe('kim')
  expect((await first).kind).toBe('done')
  expect(kim.plan().asking.size).toBe(0)
  await noor.until((loaded) => loaded?.evening.claims.length === 1)
  expect(await noor.plan().send({ kind: 'claim', target: 'roast', cook: 'noor' })).toMatchObject({
    kind: 'refused',
    why: { kind: 'taken', by: 'kim' },
  })
  expect(noor.plan().evening.claims).toEqual([{ target: 'roast', cook: 'kim' }])
})

test('R3 two claims made offline: one winner, and the loser is told after reconnecting', async () => {
  const lines = [await cable(), await cable()] as const
  const kim = page('kim', lines[0].port)
  const noor = page('noor', lines[1].port)
  await Promise.all([kim.saved(), noor.saved()])
  for (const line of lines) line.pull()
  await Promise.all([kim, noor].map((one) => one.until((_, link) => link.kind === 'offline')))
  const asked = [
    kim.plan().send({ kind: 'claim', target: 'salad', cook: 'kim' }),
    noor.plan().send({ kind: 'claim', target: 'salad', cook: 'noor' }),
  ]
  expect(noor.plan().asking.get('salad')).toBe('noor')
  for (const line of lines) line.plugIn()
  const outcomes = await Promise.all(asked)
  expect(outcomes.map(({ kind }) => kind).toSorted()).toEqual(['done', 'refused'])
  await Promise.all([kim, noor].map((one) => one.until((loaded) => loaded?.evening.claims.length === 1)))
  const winner = outcomes[0]?.kind === 'done' ? 'kim' : 'noor'
  expect(kim.plan().evening.claims).toEqual([{ target: 'salad', cook: winner }])
  expect(outcomes.find(({ kind }) => kind === 'refused')).toMatchObject({ why: { kind: 'taken', by: winner } })
})

test('B6 a claim of something that was added offline follows it, also after a reload', async () => {
  const line = await cable()
  const shelf = pageShelf()
  const kim = page('kim', line.port, { shelf })
  const noor = page('noor')
  await Promise.all([kim.saved(), noor.saved()])
  expect((await noor.plan().send({ kind: 'claim', target: 'roast', cook: 'noor' })).kind).toBe('done')
  line.pull()
  await kim.until((_, link) => link.kind === 'offline')
  void kim.plan().send({ kind: 'claim', target: 'roast', cook: 'kim' })
  void kim.plan().send({ kind: 'claim', target: 'salad', cook: 'kim' })
  kim.close()
  const again = page('kim', line.port, { shelf })
  await again.until((loaded, link) => loaded !== null && link.kind === 'offline')
  expect([...again.plan().asking]).toEqual([
    ['roast', 'kim'],
    ['salad', 'kim'],
  ])
  line.plugIn()
  await again.until((loaded) => loaded?.asking.size === 0)
  expect(again.plan().told).toMatchObject([{ command: { target: 'roast' }, outcome: { why: { kind: 'taken', by: 'noor' } } }])
  await again.until((loaded) => loaded?.evening.claims.length === 2)
  again.plan().hear(again.plan().told[0]?.command.op ?? '')
  expect(again.plan().told).toEqual([])
})

test('undo takes back one’s own edit and leaves the other’s', async () => {
  const kim = page('kim')
  const noor = page('noor')
  await Promise.all([kim.saved(), noor.saved()])
  rename(kim, 'Kim’s')
  rename(noor, 'Noor’s salad', 'salad')
  await kim.until(() => kim.nameOf('salad') === 'Noor’s salad')
  expect(kim.plan().canUndo).toBe(true)
  kim.plan().undo()
  expect(kim.nameOf('roast')).toBe('Dish roast')
  expect(kim.nameOf('salad')).toBe('Noor’s salad')
  expect(kim.plan().canRedo).toBe(true)
  kim.plan().redo()
  await kim.saved()
  await noor.until(() => noor.nameOf('roast') === 'Kim’s')
})

test('B7 closing the page is a risk only while an edit is unsent and nothing is kept here', async () => {
  const shelf = pageShelf()
  const first = page('kim', server.port(), { shelf })
  await first.saved()
  first.close()
  const kim = page('kim', server.port(), { shelf })
  await kim.saved()
  rename(kim, 'Kept')
  expect(kim.atRisk()).toBe(false)
  const kept = globalThis.indexedDB
  Reflect.deleteProperty(globalThis, 'indexedDB')
  try {
    const noor = page('noor')
    await noor.saved()
    expect(noor.atRisk()).toBe(false)
    rename(noor, 'Not kept', 'salad')
    expect(noor.atRisk()).toBe(true)
    await noor.saved()
    expect(noor.atRisk()).toBe(false)
  } finally {
    globalThis.indexedDB = kept
  }
})

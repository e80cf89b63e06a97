import 'fake-indexeddb/auto'
import { afterEach, expect, test } from 'vitest'
import type { LocalOrder } from '#app/_sync/local-order.ts'
import { pageShelf } from '#app/_sync/shelf.ts'
import { problemHash } from '#lib/order/hash.ts'
import { setFields } from '#lib/plan/commands/set.ts'
import { cook, course, dish, evening, min, ring, step } from '#tests/support/evening-builders.ts'
import { type APage, aPage } from './a-page.ts'
import { type AServer, aServer } from './a-server.ts'

let server: AServer | null = null
let pages: APage[] = []
afterEach(async () => {
  for (const page of pages) page.close()
  await server?.close()
  pages = []
})

/** Answers later, as a worker does. */
const lateOrder = (): LocalOrder => ({
  hash: (plan, answer) => void setImmediate(() => answer(problemHash(plan))),
  plan: (_plan, _last, answer) => answer(null),
  tryOut: (_evening, _last, answer) => answer(null),
  close: () => undefined,
})

test('P2 an order that is not of the plan on the screen is never shown as current, on any screen, at any moment', async () => {
  const plan = evening(
    { id: 'current', cooks: [cook('kim'), cook('noor')] },
    course('main', dish('roast', step('r1', 20, ring('medium'))), dish('salad', step('s1', 10))),
  )
  server = await aServer(plan, { withPlanner: true })
  await server.seat('kim', 'host', 'kim')
  await server.seat('noor', 'cook', 'noor')
  const port = server.port()
  pages = ['kim', 'noor'].map((user) => aPage({ port, eveningId: plan.id, user, shelf: pageShelf(), local: lateOrder() }))
  let shown = 0
  const wrong: string[] = []
  for (const page of pages)
    page.subscribe(() => {
      const seen = page.opened().plan
      if (seen?.order.kind !== 'current') return
      shown += 1
      if (seen.order.order.of.hash !== problemHash(seen.evening)) wrong.push(JSON.stringify(seen.evening.steps))
    })
  const areCurrent = () => Promise.all(pages.map((page) => page.until((seen) => seen?.order.kind === 'current')))
  await areCurrent()
  for (let edit = 1; edit <= 24; edit += 1) {
    const page = pages[edit % 2]
    const minutes = { least: min(edit), likely: min(edit), most: min(edit) }
    const [way] = page?.plan().evening.steps[0]?.ways ?? []
    if (!page || !way) throw new Error('nothing to edit')
    page.plan().edit((doc) => setFields(doc, 'steps', edit % 3 === 0 ? 's1' : 'r1', { ways: [{ ...way, takes: minutes }] }))
    expect(page.plan().order.kind).toBe('planning')
    if (edit % 8 === 0) await areCurrent()
  }
  for (const page of pages) {
    page.plan().edit((doc) => setFields(doc, 'dishes', 'roast', { notes: `Noted by ${page.plan().me?.cook}.` }))
    expect(page.plan().order.kind).toBe('current')
  }
  await Promise.all(pages.map((page) => page.saved()))
  expect(wrong).toEqual([])
  expect(shown).toBeGreaterThan(8)
})

import { randomUUID } from 'node:crypto'
import type { Browser, BrowserContextOptions, Page } from '@playwright/test'
import * as Y from 'yjs'
import type { Evening } from '#lib/domain/evening.ts'
import { LAYOUT_VERSION } from '#lib/plan/wire.ts'
import { writeEvening } from '#lib/plan/write-evening.ts'
import { openDatabase } from '#server/db/open.ts'
import { printSummary } from '#server/evenings/summary.ts'
import { openPlanTables } from '#server/sync/plan-tables.ts'
import { giveSession, ready } from './people.ts'

/** Somebody who cooks along, and how their browser comes in. */
export interface Seat {
  readonly name: string
  readonly cook: string
  /** The server's address, or that of a cable to it. */
  readonly baseURL: string
  readonly how?: BrowserContextOptions
}

export interface Seated {
  readonly eveningId: string
  /** In the order of the seats, each in a browser of their own; the first is the host. */
  readonly pages: readonly Page[]
  readonly close: () => Promise<void>
}

/**
 * People who cook an evening together, signed in as next-auth would have it, each at this screen of it. They and the evening are put
 * into the database beside the running server: it lets no one address make so many accounts in an hour.
 */
export const seated = async (browser: Browser, evening: Evening, seats: readonly Seat[], screen: string): Promise<Seated> => {
  const databaseFile = `${process.env.TABLEWARD_DATA}/tableward.db`
  const eveningId = randomUUID()
  const people = seats.map((seat) => ({ ...seat, id: randomUUID(), email: `${seat.cook}-${randomUUID()}@example.test` }))
  const db = openDatabase(databaseFile)
  await db.user.createMany({
    data: people.map(({ id, email, name }) => ({ id, email, name, passwordHash: 'nobody signs in with it' })),
  })
  await db.evening.create({ data: { id: eveningId, epoch: eveningId, summary: printSummary(evening) } })
  await db.member.createMany({
    data: people.map(({ id, cook }, at) => ({
      id: randomUUID(),
      eveningId,
      userId: id,
      role: at === 0 ? 'host' : 'cook',
      cook,
    })),
  })
  await db.$disconnect()
  const doc = new Y.Doc()
  writeEvening(doc, { ...evening, id: eveningId }, { epoch: eveningId, minClient: LAYOUT_VERSION })
  const plans = openPlanTables(databaseFile)
  plans.create(eveningId, Y.encodeStateAsUpdate(doc))
  plans.close()
  const pages = await Promise.all(
    people.map(async ({ id, baseURL, how }) => {
      const context = await browser.newContext({ ...how, baseURL })
      await giveSession(context, id, baseURL)
      const page = await context.newPage()
      await page.goto(`/evenings/${eveningId}/${screen}`)
      await ready(page)
      return page
    }),
  )
  return { eveningId, pages, close: async () => void (await Promise.all(pages.map((page) => page.context().close()))) }
}

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
  /** Their accounts, in the order of the seats. */
  readonly userIds: readonly string[]
  /** In the order of the seats, each in a browser of their own; the first is the host. */
  readonly pages: readonly Page[]
  readonly close: () => Promise<void>
}

/** Puts an evening beside the running server, with those who have a seat at it; gives its id. */
export const plant = async (
  evening: Evening,
  seats: readonly { readonly userId: string; readonly cook: string; readonly role: 'host' | 'cook' }[],
): Promise<string> => {
  const databaseFile = `${process.env.TABLEWARD_DATA}/tableward.db`
  const eveningId = randomUUID()
  const db = openDatabase(databaseFile)
  await db.evening.create({ data: { id: eveningId, epoch: eveningId, summary: printSummary(evening) } })
  await db.member.createMany({ data: seats.map((seat) => ({ ...seat, id: randomUUID(), eveningId })) })
  await db.$disconnect()
  const doc = new Y.Doc()
  writeEvening(doc, { ...evening, id: eveningId }, { epoch: eveningId, minClient: LAYOUT_VERSION })
  const plans = openPlanTables(databaseFile)
  plans.create(eveningId, Y.encodeStateAsUpdate(doc))
  plans.close()
  return eveningId
}

/**
 * People who cook an evening together, signed in as next-auth would have it, each at this screen of it. They and the evening are put
 * into the database beside the running server: it lets no one address make so many accounts in an hour.
 */
export const seated = async (browser: Browser, evening: Evening, seats: readonly Seat[], screen: string): Promise<Seated> => {
  const people = seats.map((seat) => ({ ...seat, id: randomUUID(), email: `${seat.cook}-${randomUUID()}@example.test` }))
  const db = openDatabase(`${process.env.TABLEWARD_DATA}/tableward.db`)
  await db.user.createMany({
    data: people.map(({ id, email, name }) => ({ id, email, name, passwordHash: 'nobody signs in with it' })),
  })
  await db.$disconnect()
  const eveningId = await plant(
    evening,
    people.map(({ id, cook }, at) => ({ userId: id, cook, role: at === 0 ? 'host' : 'cook' })),
  )
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
  const userIds = people.map(({ id }) => id)
  return { eveningId, userIds, pages, close: async () => void (await Promise.all(pages.map((page) => page.context().close()))) }
}

import { randomUUID } from 'node:crypto'
import { readFileSync } from 'node:fs'
import type { Browser, Page } from '@playwright/test'
import { openDatabase } from '#server/db/open.ts'
import { chores, cook, cooks, course, dish, dishWith, evening, leave, role, step } from '#tests/support/evening-builders.ts'
import { sessionCookie } from '#tests/support/session-cookie.ts'
import { bringEvening, demoPage, ready } from './people.ts'

export const EIGHT = ['Ada', 'Bo', 'Cyd', 'Dot', 'Eli', 'Fay', 'Gus', 'Hal'] as const

/** Eight cooks of one evening. All are there from noon but for Hal, who comes when the guests sit down. */
const dinner = () => {
  const early = EIGHT.slice(0, 7).map((name) => cook(name.toLowerCase(), ['home 12:00 23:30'], { name, host: name === 'Ada' }))
  const hal = cook('hal', ['home 19:25 23:30'], { name: 'Hal', host: false })
  return evening(
    { name: 'Eight at the stove', cooks: [...early, hal], covers: 10 },
    course(
      'soup',
      dish('broth', dishWith({ name: 'Broth' }), step('stir', 20), step('ladle', 4, cooks(2), role('plate'))),
      dish('relish', dishWith({ name: 'Relish' }), step('steep', 60, leave)),
    ),
    course('main', dish('pie', dishWith({ name: 'Pie' }), step('line', 25), step('fill', 15), step('cut', 6, role('plate')))),
    chores(step('lay', 15)),
  )
}

export interface Cooks {
  readonly eveningId: string
  /** In the order of EIGHT, each in a browser of their own and at the menu; Ada is the host. */
  readonly pages: readonly Page[]
  readonly close: () => Promise<void>
}

/**
 * Eight people who cook together, signed in as next-auth would have it. Their accounts are put into the database beside the
 * running server: it lets no one address make so many in an hour. `baseURL`: the server's, or that of a cable to it.
 */
export const eightCooks = async (browser: Browser, baseURL: string): Promise<Cooks> => {
  const folder = process.env.TABLEWARD_DATA ?? ''
  const host = await demoPage(browser)
  const eveningId = await bringEvening(host, dinner())
  await host.context().close()
  const people = EIGHT.map((name) => ({ id: randomUUID(), email: `${name}-${randomUUID()}@example.test`.toLowerCase(), name }))
  const db = openDatabase(`${folder}/tableward.db`)
  await db.user.createMany({ data: people.map((person) => ({ ...person, passwordHash: 'nobody signs in with it' })) })
  await db.member.deleteMany({ where: { eveningId } })
  await db.member.createMany({
    data: people.map(({ id, name }, at) => ({
      id: randomUUID(),
      eveningId,
      userId: id,
      role: at === 0 ? 'host' : 'cook',
      cook: name.toLowerCase(),
    })),
  })
  await db.$disconnect()
  const secret = readFileSync(`${folder}/secret`, 'utf8').trim()
  const pages = await Promise.all(
    people.map(async ({ id }) => {
      const context = await browser.newContext({ baseURL })
      const [name = '', value = ''] = (await sessionCookie(secret, id)).split('=')
      await context.addCookies([{ name, value, url: baseURL }])
      const page = await context.newPage()
      await page.goto(`/evenings/${eveningId}/menu`)
      await ready(page)
      return page
    }),
  )
  return { eveningId, pages, close: async () => void (await Promise.all(pages.map((page) => page.context().close()))) }
}

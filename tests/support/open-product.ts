import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { type BrowserContext, chromium, type Page } from '@playwright/test'
import type { Evening } from '#lib/domain/evening.ts'
import { dateAt, wallTimeOfMs } from '#lib/domain/time.ts'
import { make } from '#server/cli/make.ts'
import { demoEveningId, inviteHousehold } from '#tests/e2e/household.ts'
import { bringEvening, signIn } from '#tests/e2e/people.ts'
import { findBrowser } from './find-browser.ts'
import { loadEvening } from './load-evening.ts'
import { startServer } from './start-server.ts'

export interface Product {
  readonly address: string
  /** A browser that is signed in as a host of both evenings. */
  readonly context: BrowserContext
  readonly page: Page
  /** The evening that a fresh install has, and one of twelve from four kitchens that sits down soon. */
  readonly demo: string
  readonly tonight: string
  /** Where a household of the demo evening answers. */
  readonly reply: string
  /** Closes the browser, and gives the folder of its profile: another one, started there, is signed in as well. */
  letGo(): Promise<string>
  close(): Promise<void>
}

/** The evening where it is the hour before its guests sit down, give or take half an hour: on this day, in a zone of whole hours. */
const nearlyThere = (evening: Evening, nowMs: number): Evening => {
  const zones = Array.from({ length: 24 }, (_, at) => (at < 12 ? `Etc/GMT+${at + 1}` : `Etc/GMT-${at - 12}`))
  const wanted = Number(evening.sitDown.time.slice(0, 2)) - 1
  const there = zones
    .map((zone): Evening => ({ ...evening, zone, date: dateAt(zone, nowMs), night: [] }))
    .find((one) => Number(wallTimeOfMs(one, nowMs).time.slice(0, 2)) === wanted)
  if (!there) throw new Error(`nowhere is it ${wanted} o’clock`)
  return there
}

/** The product as it is built, on a data folder of its own, with something in it to look at. Builds first. */
export const openProduct = async (
  say: (line: string) => void,
  view: { readonly width: number; readonly height: number },
): Promise<Product> => {
  if ((await make(say)) !== 0) throw new Error('it could not be built')
  const executablePath = findBrowser()
  if (!executablePath) throw new Error('there is no Chromium: npx playwright install chromium')
  const server = await startServer({ kind: 'built' })
  const profile = mkdtempSync(`${tmpdir()}/tableward-browser-`)
  const isRoot = process.getuid?.() === 0
  const context = await chromium.launchPersistentContext(profile, {
    executablePath,
    baseURL: server.address,
    viewport: view,
    locale: 'en-GB',
    timezoneId: 'Europe/London',
    colorScheme: 'light',
    reducedMotion: 'reduce',
    args: ['--disable-gpu', '--hide-scrollbars', ...(isRoot ? ['--no-sandbox'] : [])],
  })
  const letGo = async () => {
    await context.close()
    return profile
  }
  const close = async () => {
    await context.close()
    await server.kill()
    await server.remove()
    rmSync(profile, { recursive: true, force: true })
  }
  try {
    const [who] = server.demo
    if (!who) throw new Error('the server printed no demo account')
    const page = await context.newPage()
    page.setDefaultTimeout(120_000)
    await signIn(page, who)
    const demo = demoEveningId(server.dataFolder)
    const reply = await inviteHousehold(page, demo, 'The Okafors', 2)
    const tonight = await bringEvening(page, nearlyThere(loadEvening('potluck'), Date.now()))
    // Planned already, as it is for whoever comes back to it.
    for (const id of [demo, tonight]) {
      await page.goto(`/evenings/${id}/order`)
      await page.locator('main[data-order="current"]').waitFor()
    }
    return { address: server.address, context, page, demo, tonight, reply, letGo, close }
  } catch (failed) {
    await close()
    throw failed
  }
}

import { readFileSync } from 'node:fs'
import { type Browser, type BrowserContext, expect, type Locator, type Page, test } from '@playwright/test'
import Database from 'libsql'
import type { Evening } from '#lib/domain/evening.ts'
import { printEvening } from '#lib/domain/parse.ts'
import { loadEvening } from '#tests/support/load-evening.ts'
import { sessionCookie } from '#tests/support/session-cookie.ts'

export interface Person {
  readonly name: string
  readonly email: string
  readonly page: Page
}

const PASSWORD = 'long table, short night'

/** The demo's accounts, as the server printed them at its start. */
export const demo = (): readonly { readonly email: string; readonly password: string }[] => {
  const printed = JSON.parse(process.env.TABLEWARD_DEMO ?? '[]') as { email: string; password: string }[]
  expect(printed.length, 'the server printed its demo sign-ins').toBeGreaterThan(1)
  return printed
}

export const firstDemo = (): { readonly email: string; readonly password: string } => {
  const [first] = demo()
  if (!first) throw new Error('no demo sign-in')
  return first
}

/** The page listens: its script runs, and on an evening's screen the plan has come and what was there to be read until then is gone. */
export const ready = (page: Page): Promise<void> =>
  page.locator('html[data-ready]:not(:has([data-look]))').waitFor({ state: 'attached' })

export const signIn = async (page: Page, { email, password }: { email: string; password: string }): Promise<void> => {
  await page.goto('/sign-in')
  await ready(page)
  await page.getByLabel('E-mail address').fill(email)
  await page.getByLabel('Password').fill(password)
  await page.getByRole('button', { name: 'Sign in' }).click()
  await page.waitForURL((url) => url.pathname === '/')
  await ready(page)
}

/** An address that nobody has yet, also when the test is run once more. */
export const freshAddress = (email: string): string => email.replace('@', `-${test.info().retry}@`)

/** A new account in this browser. */
export const signUp = async (page: Page, name: string, email: string): Promise<void> => {
  await page.goto('/sign-up')
  await ready(page)
  await page.getByLabel('Your name').fill(name)
  await page.getByLabel('E-mail address').fill(email)
  await page.getByLabel('Password').fill(PASSWORD)
  await page.getByRole('button', { name: 'Make an account' }).click()
  await page.waitForURL((url) => url.pathname === '/')
  await ready(page)
}

/** A new account in a browser of its own. */
export const newPerson = async (browser: Browser, name: string, email: string, baseURL?: string): Promise<Person> => {
  const context = await browser.newContext(baseURL === undefined ? {} : { baseURL })
  const page = await context.newPage()
  const own = freshAddress(email)
  await signUp(page, name, own)
  return { name, email: own, page }
}

/** This browser has the session of somebody, as next-auth would have it; signing in itself is looked at by E4 and E6. */
export const giveSession = async (context: BrowserContext, userId: string, address: string, version = 1): Promise<void> => {
  const secret = readFileSync(`${process.env.TABLEWARD_DATA}/secret`, 'utf8').trim()
  const [name = '', value = ''] = (await sessionCookie(secret, userId, version)).split('=')
  await context.addCookies([{ name, value, url: address }])
}

/** A demo cook in a browser of its own, at the list of evenings, for tests that need no account of their own: the server counts sign-ups. */
export const demoPage = async (browser: Browser): Promise<Page> => {
  const db = new Database(`${process.env.TABLEWARD_DATA}/tableward.db`, { timeout: 5000 })
  const [user] = db.prepare('SELECT id, sessionVersion FROM User WHERE email = ?').all([firstDemo().email]) as {
    readonly id: string
    readonly sessionVersion: number
  }[]
  db.close()
  if (!user) throw new Error('no demo account')
  const context = await browser.newContext()
  await giveSession(context, user.id, process.env.TABLEWARD_ADDRESS ?? '', user.sessionVersion)
  const page = await context.newPage()
  await page.goto('/')
  await ready(page)
  return page
}

/** Brings evening A in from its file; gives the new evening's id, its menu on the screen. */
export const bringLamb = (page: Page): Promise<string> => bringEvening(page, loadEvening('a-lamb'))

/** As `bringLamb`, of another evening. */
export const bringEvening = async (page: Page, evening: Evening): Promise<string> => {
  await page.goto('/evenings/new')
  await ready(page)
  await page
    .getByLabel('Evening file')
    .setInputFiles({ name: 'evening.json', mimeType: 'application/json', buffer: Buffer.from(printEvening(evening)) })
  await page.getByRole('button', { name: 'Bring it in' }).click()
  await page.waitForURL(/\/evenings\/[^/]+\/menu$/)
  await ready(page)
  return new URL(page.url()).pathname.split('/')[2] ?? ''
}

/** Two cooks of one evening: its host is Kim (by another address, when one is given), the other one, let in by the host, is Lou. */
export const twoCooks = async (
  browser: Browser,
  tag: string,
  kimsAddress?: string,
): Promise<{ kim: Person; lou: Person; eveningId: string }> => {
  const lou = await newPerson(browser, 'Lou', `lou-${tag}@example.test`)
  const kim = await newPerson(browser, 'Kim', `kim-${tag}@example.test`, kimsAddress)
  const eveningId = await bringLamb(kim.page)
  await kim.page.goto(`/evenings/${eveningId}/kitchens`)
  await ready(kim.page)
  const form = kim.page.getByRole('form', { name: 'Add somebody' })
  await form.getByLabel('E-mail address of their account').fill(lou.email)
  await form.getByLabel('They are').selectOption({ label: 'Lou' })
  await form.getByRole('button', { name: 'Let them in' }).click()
  await expect(kim.page.getByText(`${lou.email} is with you now`)).toBeVisible()
  await lou.page.goto(`/evenings/${eveningId}/menu`)
  await ready(lou.page)
  return { kim, lou, eveningId }
}

/** Asks for something, also when that is said to cost something: then it is pressed once more. */
export const askFor = async (page: Page, name: string, words = 'I’ll do this'): Promise<void> => {
  const button = page.getByRole('button', { name: `${words}: ${name}`, exact: true })
  const dear = page.getByRole('button', { name: `${words} all the same: ${name}`, exact: true })
  await button.click()
  await expect(button).toBeHidden()
  if (await dear.isVisible()) await dear.click()
}

/** Asks for something and gets it. */
export const takeOn = async (page: Page, name: string, words?: string): Promise<void> => {
  await askFor(page, name, words)
  await expect(page.getByRole('button', { name: new RegExp(`^(Give back|Leave) ${name}`) })).toBeVisible()
}

/** Where this device's copy stands: saved, saving, offline, closed. */
export const badge = (page: Page): Locator => page.locator('[data-link]')

export const saved = (page: Page): Promise<void> => expect(badge(page)).toHaveAttribute('data-link', 'saved')

export const openDish = async (page: Page, eveningId: string, dish: string): Promise<void> => {
  await page.goto(`/evenings/${eveningId}/menu/${dish}`)
  await ready(page)
}

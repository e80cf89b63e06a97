import { expect, type Page, test } from '@playwright/test'
import { loadEvening } from '#tests/support/load-evening.ts'
import { tonightEvening } from '#tests/support/tonight-evening.ts'
import { badge, bringEvening, demoPage, firstDemo, ready, saved, signIn } from './people.ts'

test.describe.configure({ timeout: 120_000 })

/** An evening that is being cooked: the guests sit down in an hour. */
const begunNight = async (page: Page): Promise<string> => {
  const evening = { ...loadEvening('a-lamb'), shopping: [{ id: 'own-candles', order: 'a0', text: 'Candles' }] }
  const eveningId = await bringEvening(page, tonightEvening(evening, Date.now(), 60))
  await page.goto(`/evenings/${eveningId}/tonight`)
  await ready(page)
  await page.getByRole('button', { name: 'Begin the evening' }).click()
  await expect(longer(page)).toBeVisible()
  return eveningId
}

const longer = (page: Page) => page.getByRole('button', { name: /^10 minutes longer: / }).first()

/** What the caches of this device hold: paths of pages, and how many files of those that were built are missing. */
const kept = (page: Page) =>
  page.evaluate(async () => {
    const names = await caches.keys()
    const paths = async (start: string) =>
      (await Promise.all(names.filter((name) => name.startsWith(start)).map(async (name) => (await caches.open(name)).keys())))
        .flat()
        .map(({ url }) => new URL(url).pathname)
    const program = await (await fetch('/sw.js')).text()
    const built = new Set(program.match(/\/_next\/static\/[^"']+\.(?:js|css|woff2)/g))
    const files = new Set(await paths('tableward-files-'))
    return {
      pages: (await paths('tableward-pages-')).sort(),
      built: built.size,
      missing: [...built].filter((path) => !files.has(path)),
    }
  })

/** Asked for by the page: the name of the other machine is known to the browser alone. */
const fileOf = (page: Page, eveningId: string) =>
  page.evaluate(
    async (path) => (await (await fetch(path)).json()) as { night: { extra?: string }[]; ticks?: { line: string }[] },
    `/api/evenings/${eveningId}/file`,
  )
const nightOfFile = async (page: Page, eveningId: string) => (await fileOf(page, eveningId)).night

test('U70 U74 SH15 tonight, the running order and the shopping load again without a network, a tap and a tick are not lost, and signing out takes them away', async ({
  browser,
}) => {
  const page = await demoPage(browser)
  const context = page.context()
  const eveningId = await begunNight(page)
  const [tonight, order, shopping] = ['tonight', 'order', 'shopping'].map((screen) => `/evenings/${eveningId}/${screen}`)
  await saved(page)
  await expect.poll(() => kept(page), { timeout: 60_000 }).toMatchObject({ pages: [order, shopping, tonight], missing: [] })
  expect((await kept(page)).built).toBeGreaterThan(20)

  await context.setOffline(true)
  await expect(badge(page)).toHaveAttribute('data-link', 'offline', { timeout: 20_000 })
  await longer(page).click()
  await expect(badge(page)).toContainText('one tap kept on this device')
  await page.reload()
  await ready(page)
  await expect(badge(page)).toContainText('one tap kept on this device')
  await expect(longer(page)).toBeVisible()

  // A screen that is not kept says so and leads to what is.
  await page.goto(`/evenings/${eveningId}/guests`)
  await expect(page.getByRole('heading', { name: 'This page needs a connection' })).toBeVisible()
  await page.getByRole('link', { name: /^Running order: / }).click()
  await ready(page)
  await expect(page).toHaveURL(new RegExp(`${order}$`))
  await expect(page.getByRole('navigation', { name: 'How the running order is shown' })).toBeVisible()
  await expect(page.getByText('It has not been planned yet.')).toBeHidden()

  await page.goto(shopping ?? '')
  await ready(page)
  const candles = page.getByRole('checkbox', { name: 'Candles', exact: true })
  await candles.click()
  await expect(candles).toBeChecked()
  await expect(page.getByText('All is bought', { exact: true })).toBeVisible()
  await page.reload()
  await ready(page)
  await expect(candles).toBeChecked()

  await context.setOffline(false)
  await saved(page)
  expect((await fileOf(page, eveningId)).ticks).toMatchObject([{ line: 'own-own-candles' }])
  expect((await nightOfFile(page, eveningId)).filter(({ extra }) => extra === 'PT10M')).toHaveLength(1)

  await page.goto('/account')
  await ready(page)
  await page.getByRole('button', { name: 'Sign out here' }).click()
  await page.waitForURL(/\/sign-in/)
  expect((await kept(page)).pages).toEqual([])
  await context.close()
})

test('U73 on plain http of another machine the board works, rings, and says what the browser keeps from it', async ({
  browser,
}) => {
  const { port } = new URL(process.env.TABLEWARD_ADDRESS ?? '')
  const context = await browser.newContext({ baseURL: `http://kitchen.test:${port}` })
  const page = await context.newPage()
  const errors: string[] = []
  page.on('pageerror', (error) => errors.push(error.message))
  await signIn(page, firstDemo())
  const eveningId = await begunNight(page)
  await saved(page)
  expect(await page.evaluate(() => window.isSecureContext)).toBe(false)
  await longer(page).click()
  await saved(page)
  const calls = page.getByRole('region', { name: 'How this device calls' })
  await calls.locator('summary').click()
  await expect(calls.getByText(/^This address is plain http/)).toBeVisible()
  await expect(calls.getByText(/^This device rings/)).toBeVisible()
  await expect(calls.getByLabel('While it sleeps')).toBeHidden()
  await calls.getByRole('button', { name: 'Try it' }).click()
  expect((await nightOfFile(page, eveningId)).filter(({ extra }) => extra === 'PT10M')).toHaveLength(1)
  expect(errors).toEqual([])
  await context.close()
})

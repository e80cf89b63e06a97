import { expect, type Page, test } from '@playwright/test'
import { printEvening } from '#lib/domain/parse.ts'
import { dateAt } from '#lib/domain/time.ts'
import { demoEvening } from '#prisma/demo/demo-evening.ts'
import { demoPage, ready } from './people.ts'

/** The demo evening once more, two days from now; gives its id. */
const bringDemo = async (page: Page): Promise<string> => {
  await page.goto('/evenings/new')
  await ready(page)
  const text = printEvening(demoEvening(dateAt('Europe/London', Date.now(), 2)))
  await page
    .getByLabel('Evening file')
    .setInputFiles({ name: 'two-days.json', mimeType: 'application/json', buffer: Buffer.from(text) })
  await page.getByRole('button', { name: 'Bring it in' }).click()
  await page.waitForURL(/\/evenings\/[^/]+\/menu$/)
  return new URL(page.url()).pathname.split('/')[2] ?? ''
}

/** All that the browser keeps for this site, as one text. */
const kept = (page: Page): Promise<string> =>
  page.evaluate(async () => {
    const texts = [JSON.stringify(window.localStorage), JSON.stringify(window.sessionStorage)]
    const ended = <T>(request: IDBRequest<T>): Promise<T> =>
      new Promise((resolve, reject) => {
        request.onsuccess = () => resolve(request.result)
        request.onerror = () => reject(request.error)
      })
    const text = (value: unknown): string =>
      value instanceof Uint8Array ? new TextDecoder('latin1').decode(value) : (JSON.stringify(value) ?? '')
    for (const { name = '' } of await indexedDB.databases()) {
      const database = await ended(indexedDB.open(name))
      for (const store of database.objectStoreNames)
        texts.push(...(await ended(database.transaction(store).objectStore(store).getAll())).map(text))
      database.close()
    }
    return texts.join('\n')
  })

test('U45 two days before, a host writes down a vegetarian guest, sees all that it changes on one screen, and takes it', async ({
  browser,
}, info) => {
  // biome-ignore lint/suspicious/noSkippedTests: it asks about one screen of 1280 by 800; E5 looks at phones
  test.skip(info.project.name === 'phone')
  test.setTimeout(120_000)
  const page = await demoPage(browser)
  await page.setViewportSize({ width: 1280, height: 800 })
  const id = await bringDemo(page)
  await page.goto(`/evenings/${id}/guests`)
  await ready(page)
  await expect(page.getByText('Seven come, one is not sure; the evening is for eight.')).toBeVisible()
  await expect(page.getByRole('row', { name: /^Wilma/ })).toContainText('sesame allergy')

  const name = page.getByLabel('Name of a new guest')
  await name.fill('Noor')
  expect(await kept(page), 'what is half written stands nowhere').not.toContain('Noor')
  await name.press('Enter')
  await page.getByLabel('What the new guest does not eat').selectOption('vegetarian')
  await page.getByRole('button', { name: 'Write them down' }).click()

  const late = page.getByRole('region', { name: 'What this changes' })
  await expect(late.getByRole('heading', { name: 'What this changes' })).toBeFocused()
  await expect(late.getByRole('region', { name: 'New of the guests' })).toContainText('Noor is new: comes, vegetarian.')
  await expect(late.getByRole('region', { name: 'What it changes in the menu' })).toContainText('Noor, Main')
  const shopping = late.getByRole('region', { name: 'What it changes in the shopping' })
  await expect(shopping.getByRole('listitem').filter({ hasText: 'white beans' })).toContainText(/240 g.*360 g/)
  const order = late.getByRole('region', { name: 'What it changes in the running order' })
  await expect(order.getByText('It is being worked out…')).toHaveCount(0, { timeout: 45_000 })
  await expect(order).not.toContainText('could not be worked out')
  // What comes late makes it grow: it is looked at until it stands.
  await expect(async () => {
    const box = await late.boundingBox()
    expect(box?.height, 'all of it on one screen').toBeLessThan(800)
    expect(box?.y).toBeGreaterThanOrEqual(-1)
  }).toPass({ timeout: 10_000 })

  await late.getByRole('button', { name: 'Do all of that' }).click()
  await expect(late.getByText(/^Reckoned with/)).toHaveCount(0)
  await expect(shopping.getByRole('listitem').filter({ hasText: 'white beans' })).toContainText(/240 g.*360 g/)
  await late.getByRole('button', { name: 'I have seen it' }).click()
  await expect(late).toHaveCount(0)
  await expect(page.getByRole('row', { name: /^Noor/ })).toBeVisible()
  await expect(async () =>
    expect(await kept(page), 'the plan stands in the browser’s storage').toContain('vegetable rennet'),
  ).toPass({
    timeout: 10_000,
  })
  expect(await kept(page), 'and nothing of a guest does').not.toContain('Noor')

  await page.goto(`/evenings/${id}/menu/aubergine`)
  await ready(page)
  await expect(page.getByText('for 3', { exact: true })).toBeVisible()
})

import { expect, type Locator, type Page, test } from '@playwright/test'
import { bringLamb, demoPage, firstDemo, saved, signIn } from './people.ts'

const HOLD = '[title="Drag to move"]'

const names = (page: Page): Promise<string[]> =>
  page.getByLabel(/^Name of the dish/).evaluateAll((fields) => fields.map((field) => (field as HTMLTextAreaElement).value))

const boxOf = async (place: Locator) => {
  const box = await place.boundingBox()
  if (!box) throw new Error('nothing to point at')
  return box
}

/** Goes to the lower part of a row, wherever it is by now, until it lies still and the stitched line shows below it. */
const aimBelow = (row: Locator, go: (y: number) => Promise<unknown>): Promise<void> => {
  let before = Number.NaN
  return expect
    .poll(async () => {
      const { y, height } = await boxOf(row)
      const to = y + height * 0.8
      await go(to)
      const isStill = to === before
      before = to
      return isStill && (await row.evaluate((element) => getComputedStyle(element, '::after').content !== 'none'))
    })
    .toBe(true)
}

/** The menu of evening A, open to changes, once no better order is being looked for: what an order says moves the rows. */
const changeLamb = async (page: Page): Promise<void> => {
  const id = await bringLamb(page)
  await page.goto(`/evenings/${id}/order`)
  await expect(page.locator('[data-order="current"]')).toBeVisible()
  await expect(page.getByText('A better order is being looked for.')).toHaveCount(0, { timeout: 30_000 })
  await page.goto(`/evenings/${id}/menu`)
  await page.getByRole('button', { name: 'Change the menu' }).click()
  await expect(page.getByRole('heading', { name: /last-minute minute/ })).toBeVisible()
}

const rowOf = (page: Page, name: string): Locator =>
  page
    .getByRole('listitem')
    .filter({ has: page.getByLabel(`Name of the dish ${name}`) })
    .last()

test('U10 a dish is dragged into another course by mouse, taken back with Escape, and undone', async ({ browser }) => {
  const page = await demoPage(browser)
  await page.setViewportSize({ width: 1280, height: 1600 })
  await changeLamb(page)
  const before = await names(page)
  const [, lamb = '', cheese = ''] = before
  const row = (name: string) => rowOf(page, name)
  const drag = async () => {
    const handle = row(lamb).locator(HOLD)
    await handle.hover()
    await page.mouse.down()
    const { x, y } = await boxOf(handle)
    await page.mouse.move(x + 20, y + 40)
    await aimBelow(row(cheese), (to) => page.mouse.move(x + 20, to))
  }
  await drag()
  await page.keyboard.press('Escape')
  await page.mouse.up()
  expect(await names(page)).toEqual(before)
  await drag()
  await page.mouse.up()
  const moved = [before[0], cheese, lamb, ...before.slice(3)]
  await expect.poll(() => names(page)).toEqual(moved)
  await expect(page.getByText(`${lamb} is now second of two in`)).toBeAttached()
  await saved(page)
  await page.getByRole('button', { name: 'Undo' }).click()
  await expect.poll(() => names(page)).toEqual(before)
  await page.context().close()
})

test('U10 a finger drags by the handle, and the buttons do the same by keyboard without losing the focus', async ({
  browser,
}) => {
  const page = await demoPage(browser)
  await page.setViewportSize({ width: 390, height: 1800 })
  await changeLamb(page)
  const before = await names(page)
  const [, lamb = '', cheese = ''] = before
  const row = (name: string) => rowOf(page, name)
  const handle = row(lamb).locator(HOLD)
  await handle.hover({ trial: true })
  const { x, y } = await boxOf(handle)
  const finger = await page.context().newCDPSession(page)
  const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', at?: number) =>
    finger.send('Input.dispatchTouchEvent', { type, touchPoints: at === undefined ? [] : [{ x: x + 20, y: at }] })
  await touch('touchStart', y + 20)
  await touch('touchMove', y + 40)
  await aimBelow(row(cheese), (to) => touch('touchMove', to))
  await touch('touchEnd')
  await expect.poll(() => names(page)).toEqual([before[0], cheese, lamb, ...before.slice(3)])

  await saved(page)

  await page.getByRole('button', { name: `Move ${lamb} up` }).press('Enter')
  await expect.poll(() => names(page)).toEqual(before)
  await page.keyboard.press('Enter')
  await expect(page.getByText(`${lamb} is now first of one in Lamb.`)).toBeAttached()
  await expect(page.getByRole('button', { name: `Move ${lamb} up` })).toBeFocused()
  await page.context().close()
})

test('Y6 a dish of another evening is copied with its method, and goes again by one undo', async ({ page }) => {
  await signIn(page, firstDemo())
  await changeLamb(page)
  const before = await names(page)
  await page
    .getByRole('button', { name: /^Copy a dish/ })
    .last()
    .click()
  const from = page.getByLabel('Evening to copy from')
  const other = await from.locator('option', { hasText: 'Eight at the long table' }).first().getAttribute('value')
  await from.selectOption(other)
  await page.getByLabel('Dish to copy').selectOption({ label: 'Oat crumble (Pudding)' })
  await page.getByRole('button', { name: 'Copy it' }).click()
  await expect.poll(() => names(page)).toEqual([...before, 'Oat crumble'])
  await expect(page.getByRole('link', { name: 'Method of Oat crumble' })).toHaveText('two steps')
  await page.getByRole('button', { name: 'Undo' }).click()
  await expect.poll(() => names(page)).toEqual(before)
})

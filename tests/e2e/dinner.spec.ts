import { expect, type Page, test } from '@playwright/test'
import { DINNER } from './dinner.ts'
import { tabTo, writeOver } from './keyboard.ts'
import { fits } from './look.ts'
import { freshAddress, newPerson, ready, saved, signUp } from './people.ts'
import { watch } from './tripwire.ts'

const PASTE = 'Paste a menu or recipes'

const toOrder = async (page: Page): Promise<void> => {
  await page.waitForURL(/\/evenings\/[^/]+\/order/)
  await ready(page)
  await expect(page.getByRole('heading', { name: /^This (works|clashes here)/ })).toBeVisible()
  await page.getByText('As a list').click()
}

/** From nothing to a refined step with nothing but the keyboard: paste, correct what is flagged, times, order, refine. */
const byKeyboard = async (page: Page): Promise<void> => {
  const { keyboard } = page
  await page.context().grantPermissions(['clipboard-read', 'clipboard-write'])
  await tabTo(page, /^Plan (an|another|your first) evening/)
  await keyboard.press('Enter')
  await page.waitForURL(/\/evenings\/new$/)
  await ready(page)

  await page.evaluate((text) => navigator.clipboard.writeText(text), DINNER)
  await tabTo(page, /^Paste a menu or recipes/)
  await keyboard.press('Control+V')
  await expect(page.getByText('Three courses, three dishes, three recipes.')).toBeVisible()

  // What was flagged is put right: the onions of the soup, the oven of the chicken.
  await tabTo(page, /^Look over Beetroot soup/)
  await keyboard.press('Enter')
  await expect(page.getByText('Not understood').first()).toBeVisible()
  await tabTo(page, /^onion or 2 shallots: food$/)
  await writeOver(page, 'onion')
  await tabTo(page, /^onion: right as it is$/)
  await keyboard.press('Enter')
  await tabTo(page, /^Look over Lemon chicken legs/)
  await keyboard.press('Enter')
  await tabTo(page, /^Roast at 200 for 45.*: heat$/)
  await writeOver(page, '190 to 210')
  await tabTo(page, /^Roast at 200 for 45.*: right as it is$/)
  await keyboard.press('Enter')

  await tabTo(page, /^What is it called\?$/)
  await writeOver(page, 'Supper with Noor')
  await tabTo(page, /^Sit down at$/)
  await writeOver(page, '20:00')
  await tabTo(page, /^For how many\?$/)
  await writeOver(page, '6')
  await tabTo(page, /^Who cooks with you/)
  await writeOver(page, 'Noor')
  await tabTo(page, /^Make the running order$/)
  await keyboard.press('Enter')
  await page.waitForURL(/\/evenings\/[^/]+\/order/)
  await ready(page)
  await expect(page.getByRole('heading', { name: /^This (works|clashes here)/ })).toBeVisible()
  await expect(page.getByText('Supper with Noor').first()).toBeVisible()
  await expect(page.getByText('20:00').first()).toBeVisible()

  // Then one step is refined.
  await tabTo(page, /^Menu$/)
  await keyboard.press('Enter')
  await page.waitForURL(/\/menu$/)
  await tabTo(page, /^(Method of )?Baked pears/)
  await keyboard.press('Enter')
  await page.waitForURL(/\/menu\/.+/)
  await tabTo(page, /^Bake at 180/)
  await keyboard.press('Enter')
  await tabTo(page, /: usual minutes$/)
  await writeOver(page, '50 min')
  await saved(page)
  await page.reload()
  await ready(page)
  await expect(page.getByText(/usually 50 min/).first()).toBeVisible()
}

/** The same by touch alone, but for the words themselves. */
const byTouch = async (page: Page): Promise<void> => {
  await page
    .getByRole('link', { name: /^Plan (an|another|your first) evening/ })
    .first()
    .tap()
  await page.waitForURL(/\/evenings\/new$/)
  await ready(page)
  await page.getByLabel(PASTE).tap()
  await page.keyboard.insertText(DINNER)
  await expect(page.getByText('Three courses, three dishes, three recipes.')).toBeVisible()
  await page.getByRole('button', { name: 'Look over Beetroot soup' }).tap()
  await page.getByRole('button', { name: 'onion or 2 shallots: right as it is' }).tap()
  await expect(page.getByRole('button', { name: 'onion or 2 shallots: right as it is' })).toHaveCount(0)
  const called = page.getByLabel('What is it called?')
  await called.tap()
  await called.fill('Supper with Noor')
  await called.press('Enter')
  const covers = page.getByLabel('For how many?')
  await covers.tap()
  await covers.fill('5')
  await covers.press('Enter')
  await fits(page, 'a new evening')
  await page.getByRole('button', { name: 'Make the running order' }).tap()
  await toOrder(page)
  await expect(
    page
      .getByRole('listitem')
      .filter({ hasText: /Roast at 200/ })
      .first(),
  ).toBeVisible()
  await page.getByRole('link', { name: 'Menu', exact: true }).tap()
  await page.waitForURL(/\/menu$/)
  await page
    .getByRole('link', { name: /Baked pears/ })
    .first()
    .tap()
  await page.waitForURL(/\/menu\/.+/)
  await page.getByRole('button', { name: /^Bake at 180/ }).tap()
  const usual = page.getByLabel(/: usual minutes$/)
  await usual.tap()
  await usual.fill('50 min')
  await usual.press('Enter')
  await saved(page)
  await page.reload()
  await ready(page)
  await expect(page.getByText(/usually 50 min/).first()).toBeVisible()
}

test('E8 a three-course dinner is put in from nothing: by keyboard alone on a wide screen, by touch on a phone', async ({
  page,
}, info) => {
  test.setTimeout(180_000)
  const { found } = await watch(page)
  await signUp(page, 'Ida', freshAddress(`ida-${info.project.name}@example.test`))
  await (info.project.name === 'phone' ? byTouch : byKeyboard)(page)
  expect(found).toEqual([])
})

test('E9 whatever moment the page is loaded again, what was acknowledged is there, and the rest is said to be not sent', async ({
  browser,
  baseURL,
}, info) => {
  test.setTimeout(180_000)
  const { page } = await newPerson(browser, 'Uma', `uma-again-${info.project.name}@example.test`, baseURL)
  const again = async () => {
    await page.reload()
    await ready(page)
  }
  await page.goto('/evenings/new')
  await ready(page)
  await page.getByLabel(PASTE).fill(DINNER)
  await expect(page.getByText('Three courses, three dishes, three recipes.')).toBeVisible()
  await again()
  await expect(page.getByLabel(PASTE)).toHaveValue(DINNER)
  await page.getByLabel('Name of the dish Baked pears').fill('Pears in wine')
  await page.getByLabel('Name of the dish Baked pears').press('Enter')
  const called = page.getByLabel('What is it called?')
  await called.fill('A quiet supper')
  await called.press('Enter')
  await again()
  await expect(page.getByLabel('Name of the dish Pears in wine')).toHaveValue('Pears in wine')
  await expect(called).toHaveValue('A quiet supper')
  await page.getByRole('button', { name: 'Make the running order' }).click()
  await page.waitForURL(/\/evenings\/[^/]+\/order/)
  const evening = new URL(page.url()).pathname.replace('/order', '')
  // The evening is made: the box is empty again for the next one.
  await page.goto('/evenings/new')
  await ready(page)
  await expect(page.getByLabel(PASTE)).toHaveValue('')

  // A field that was written in and not kept is still there, and says that it is not sent.
  await page.goto(`${evening}/menu`)
  await ready(page)
  await page.getByRole('button', { name: 'Change the menu' }).click()
  const soup = page.getByLabel('Name of the dish Beetroot soup')
  await soup.fill('Beetroot soup, hot')
  await saved(page)
  await page.reload()
  await ready(page)
  await expect(page.getByText(/not sent yet/).first()).toBeVisible()
  await page.getByRole('button', { name: 'Change the menu' }).click()
  const kept = page.getByLabel(/^Name of the dish Beetroot soup/)
  await expect(kept).toHaveValue('Beetroot soup, hot')
  await kept.press('Enter')
  await saved(page)
  await again()
  await expect(page.getByText('Beetroot soup, hot').first()).toBeVisible()
})

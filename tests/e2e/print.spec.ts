import { expect, type Page, test } from '@playwright/test'
import { loadEvening } from '#tests/support/load-evening.ts'
import { clean, fits } from './look.ts'
import { ready } from './people.ts'
import { seated } from './seated.ts'

/** How many pages of paper it comes to, as a browser prints it. */
const pagesOf = async (page: Page): Promise<number> => {
  const pdf = await page.pdf({ preferCSSPageSize: true })
  return (pdf.toString('latin1').match(/\/Type\s*\/Page\b/g) ?? []).length
}

test('PR6 PR7 CA9 an evening on paper takes the pages it says, and a calendar’s address lives until another is made', async ({
  browser,
  request,
}) => {
  // Far off: an address ends a week after the evening.
  const evening = { ...loadEvening('a-lamb'), date: '2099-11-14' }
  const long = 'and turn it, and look at it from every side, and put it back where it was before. '.repeat(5).slice(0, 399)
  const longWinded = { ...evening, steps: evening.steps.map((step) => ({ ...step, does: long })) }
  const kim = { name: 'Kim', cook: 'kim', baseURL: process.env.TABLEWARD_ADDRESS ?? '' }
  const printing = await seated(browser, longWinded, [kim], 'print/menu')
  const [page] = printing.pages
  if (!page) throw new Error('no page')
  const open = async (sheet: string) => {
    await page.goto(`/evenings/${printing.eveningId}/print${sheet}`)
    await ready(page)
  }

  await expect(page.getByRole('heading', { name: evening.name })).toBeVisible()
  expect(await pagesOf(page)).toBe(1)
  await page.getByLabel('How many on a page').selectOption('two')
  await expect(page.getByRole('heading', { name: evening.name })).toHaveCount(2)
  expect(await pagesOf(page)).toBe(1)

  await open('/cooks')
  const sheets = page.getByRole('article')
  await expect(sheets.first()).toBeVisible({ timeout: 30_000 })
  await page.getByLabel('Whose sheet').selectOption({ label: 'every cook' })
  await expect(sheets).toHaveCount(evening.cooks.length)
  expect(await pagesOf(page)).toBeGreaterThanOrEqual(evening.cooks.length)

  // Words as long as they can be: the wall says that one page is too little, and takes no more than it says.
  await open('/wall')
  await expect(page.getByText(/^All of it does not go on one page .* it takes .* pages\.$/)).toBeVisible()
  const pages = Number(await page.getByRole('article').getAttribute('data-pages'))
  const printed = await pagesOf(page)
  expect(printed).toBeGreaterThan(1)
  expect(printed).toBeLessThanOrEqual(pages)

  await printing.close()

  // As they are, they fit, on either paper.
  const short = await seated(browser, evening, [kim], 'print/wall')
  const [wall] = short.pages
  if (!wall) throw new Error('no page')
  for (const paper of ['a4', 'letter']) {
    await wall.getByLabel('Paper').selectOption(paper)
    await expect(wall.getByRole('article')).toHaveAttribute('data-pages', '1', { timeout: 30_000 })
    expect([paper, await pagesOf(wall)]).toEqual([paper, 1])
    // A short order is set larger: it is read from across the kitchen.
    expect(Number(await wall.getByRole('article').getAttribute('data-points'))).toBeGreaterThan(11)
  }

  await wall.goto(`/evenings/${short.eveningId}/print`)
  await ready(wall)
  await fits(wall, 'what there is to print')
  await clean(wall, 'what there is to print')
  const address = wall.getByRole('textbox', { name: 'The address for your calendar' })
  await wall.getByRole('button', { name: 'Make an address to follow' }).click()
  const first = await address.inputValue()
  expect((await request.get(first)).headers()['content-type']).toBe('text/calendar; charset=utf-8')
  await wall.getByRole('button', { name: 'Make a new address' }).click()
  await expect(address).not.toHaveValue(first)
  const second = await address.inputValue()
  expect([(await request.get(first)).status(), (await request.get(second)).status()]).toEqual([404, 200])
  await wall.getByRole('button', { name: 'Take the address back' }).click()
  await expect(wall.getByRole('button', { name: 'Make an address to follow' })).toBeVisible()
  expect((await request.get(second)).status()).toBe(404)
  await short.close()
})

import { expect, test } from '@playwright/test'
import { loadEvening } from '#tests/support/load-evening.ts'
import { tabTo } from './keyboard.ts'
import { ready, saved } from './people.ts'
import { seated } from './seated.ts'

test('E17 with the keyboard alone things are bought, taken and added, and something is offered for the table', async ({
  browser,
  baseURL,
}) => {
  test.setTimeout(120_000)
  const evening = { ...loadEvening('potluck'), date: '2099-12-19' }
  const tamsin = { name: 'Tamsin', cook: 'tamsin', baseURL: baseURL ?? '' }
  const { eveningId, pages, close } = await seated(browser, evening, [tamsin], 'shopping')
  const [page] = pages
  if (!page) throw new Error('nobody came')

  await tabTo(page, /^I’ll get these/)
  await tabTo(page, /^dill/)
  await page.keyboard.press('Space')
  await expect(page.getByRole('checkbox', { name: /^dill/ })).toBeChecked()
  await expect(page.getByText('Tamsin has it.')).toBeVisible()
  await tabTo(page, /^More about firm pears$/)
  await page.keyboard.press('Enter')
  await tabTo(page, /^I’ll get it$/)
  await page.keyboard.press('Enter')
  await expect(page.getByRole('button', { name: 'I leave it to others' })).toBeFocused()
  await tabTo(page, /^Something else to buy/)
  await page.keyboard.type('candles')
  await page.keyboard.press('Enter')
  await expect(page.getByRole('checkbox', { name: 'candles' })).toBeVisible()
  await saved(page)

  await page.goto(`/evenings/${eveningId}/bring`)
  await ready(page)
  await tabTo(page, /what it is$/)
  await page.keyboard.type('Bread')
  await page.keyboard.press('Enter')
  await tabTo(page, /^Offer it$/)
  await page.keyboard.press('Enter')
  await expect(page.getByRole('heading', { name: 'Bread you on offer' })).toBeVisible()
  await tabTo(page, /^chairs$/)
  await page.keyboard.press('Enter')
  await tabTo(page, /^The message/)
  await page.keyboard.press('Enter')
  await saved(page)
  await close()
})

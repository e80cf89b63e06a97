import { expect, test } from '@playwright/test'
import { cook, course, courseWith, dish, dishWith, evening, min, role, step } from '#tests/support/evening-builders.ts'
import { clean, fits } from './look.ts'
import { ready, saved } from './people.ts'
import { seated } from './seated.ts'

const keeps = dishWith({ keeps: { how: 'room', most: min(40), kind: 'quality', uses: [] } })
const two = evening(
  course('soup', dish('broth', keeps, step('ladle', 4, role('plate')))),
  course('main', dish('lamb', keeps, { ...step('carve', 10, role('finish')), does: 'Carve the lamb' })),
  course('sweet', courseWith({}), dish('tart', keeps, step('cut', 4, role('plate')))),
  { name: 'Two at one stove', cooks: [cook('Kim'), cook('Lou')] },
)

test('G10 G11 C27 a couple takes turns, swaps a course, keeps time and bedtime free, and the order says what came of it', async ({
  browser,
}) => {
  const { eveningId, pages, close } = await seated(
    browser,
    two,
    [{ name: 'Kim', cook: 'Kim', baseURL: process.env.TABLEWARD_ADDRESS ?? '' }],
    'kitchens',
  )
  const [page] = pages
  if (!page) throw new Error('no page')
  await page.getByRole('button', { name: 'Take turns: one leads, the other hosts' }).click()
  const leads = page.getByLabel('Course main: leads', { exact: true })
  const hosts = page.getByLabel('Course main: hosts', { exact: true })
  await expect(leads).toHaveValue('Lou')
  await expect(hosts).toHaveValue('Kim')
  await page.getByRole('button', { name: 'Swap who leads and who hosts Course main' }).click()
  await expect(leads).toHaveValue('Kim')
  await leads.selectOption('Lou')
  await expect(hosts).toHaveValue('Kim')

  await page.getByRole('button', { name: 'Keep 25 min free' }).click()
  await expect(page.getByLabel('Minutes that the hosts have to themselves before the guests come')).toHaveValue('25 min')
  await page.getByRole('button', { name: /^Kim / }).first().click()
  await page.getByLabel('Kim: a glass or none', { exact: true }).selectOption('glass')
  await page.getByRole('button', { name: 'Something else keeps Kim, such as bedtime' }).click()
  const to = page.getByLabel('Kim, kept 1: to', { exact: true })
  await expect(to).toHaveValue('19:15')
  await to.fill('18:00')
  await to.press('Enter')
  await expect(page.getByText('This would end before it begins.')).toBeVisible()
  await expect(to).toHaveValue('18:00')
  await to.fill('19:20')
  await to.press('Enter')
  await expect(page.getByText('This would end before it begins.')).toHaveCount(0)
  await saved(page)
  await fits(page, 'the cooks of a couple')
  await clean(page, 'the cooks of a couple')

  await page.goto(`/evenings/${eveningId}/order`)
  await ready(page)
  await expect(page.getByText('Never both up from the table')).toBeVisible({ timeout: 30_000 })
  await expect(page.getByText('The 25 min before the guests come are free.')).toBeVisible({ timeout: 30_000 })
  await close()
})

import { expect, type Page, test } from '@playwright/test'
import type { Evening } from '#lib/domain/evening.ts'
import type { Dish } from '#lib/domain/menu.ts'
import { loadEvening } from '#tests/support/load-evening.ts'
import { tonightEvening } from '#tests/support/tonight-evening.ts'
import { bringEvening, demoPage, ready } from './people.ts'

/** Evening A, to be sat down to in an hour and a half, with something spare for its second course. */
const lambTonight = (nowMs: number): Evening => {
  const lamb = tonightEvening(loadEvening('a-lamb'), nowMs, 90)
  const cheese = lamb.dishes.find(({ id }) => id === 'cheese')
  if (!cheese) throw new Error('there is no cheese')
  const tart: Dish = { ...cheese, id: 'tart', course: 'course-4', order: 'z', name: 'Plum tart', state: 'spare' }
  return { ...lamb, dishes: [...lamb.dishes, tart] }
}

const happened = (page: Page) => page.getByRole('region', { name: 'Something has happened' })

test('U60 U62 guests are late and a dish fails: each is answered in three taps, with its price told first', async ({
  browser,
}, info) => {
  // biome-ignore lint/suspicious/noSkippedTests: in one project
  test.skip(info.project.name !== 'phone', 'it is a phone that one has in the hand then')
  test.setTimeout(120_000)
  const page = await demoPage(browser)
  const evening = lambTonight(Date.now())
  const id = await bringEvening(page, evening)
  await page.goto(`/evenings/${id}/tonight`)
  await ready(page)
  await page.getByRole('button', { name: 'Begin the evening' }).click()
  // The order that knows of the beginning moves what is below the bar: a finger waits for it.
  await expect(page.getByText(/late, because of/)).toBeVisible({ timeout: 30_000 })
  await page.getByRole('button', { name: 'Kim', exact: true }).click()

  const open = happened(page).getByRole('button', { name: 'Something has happened' })
  await open.click()
  await happened(page).getByRole('button', { name: 'Guests are late' }).click()
  const wait = happened(page).getByRole('button', { name: /^Wait 25 min/ })
  await expect(wait).toContainText(/later|less|more|Nothing else changes/, { timeout: 30_000 })
  await wait.click()
  await expect(open).toBeVisible()

  await open.click()
  await happened(page).getByRole('button', { name: 'A dish has failed' }).click()
  await happened(page).getByLabel('Which dish has failed').selectOption('posset')
  const tart = happened(page).getByRole('button', { name: /^Plum tart/ })
  await expect(tart).toContainText('Instead of Lemon posset, shortbread.')
  await expect(happened(page).getByRole('button', { name: /^Without it/ })).toBeVisible()
  await tart.click()

  // Told to everybody, and kept: another page of the same evening has it.
  await page.goto(`/evenings/${id}/menu`)
  await ready(page)
  await expect(page.getByText('Plum tart')).toBeVisible()
  await page.context().close()
})

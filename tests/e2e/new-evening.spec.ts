import { expect, test } from '@playwright/test'
import { firstDemo, ready, saved, signIn } from './people.ts'

test('E7 an evening begins with four things, and a course, a dish and a step are added, moved, removed and brought back', async ({
  page,
}) => {
  await signIn(page, firstDemo())
  await page.goto('/evenings/new')
  await ready(page)
  await page.getByLabel('What is it called?').fill('Soup and a walk')
  await page.getByLabel('For how many?').fill('4')
  await page.getByRole('button', { name: 'Plan this evening' }).click()
  await page.waitForURL(/\/evenings\/[^/]+\/menu$/)
  await ready(page)
  await page.getByLabel('Rules by which food is judged').selectOption({ label: 'British rules' })
  await page.getByRole('button', { name: 'Add the first course' }).click()
  const course = page.getByLabel('Name of course 1')
  await course.fill('The soup')
  await course.press('Enter')
  await page.getByRole('button', { name: 'Add a dish to The soup' }).click()
  const dish = page.getByLabel(/^Name of the dish/)
  await dish.fill('Lentils with lemon')
  await dish.press('Enter')
  await page.getByRole('link', { name: 'Method of Lentils with lemon' }).click()
  await page.waitForURL(/\/menu\/.+/)
  await page.getByRole('button', { name: 'Add a step' }).click()
  await page.getByLabel('What is done').fill('Simmer the lentils')
  await page.getByLabel('What is done').press('Enter')
  await saved(page)

  // It is in the order already, and the order is of this plan.
  await page.getByRole('link', { name: 'Running order' }).click()
  await page.waitForURL(/\/order$/)
  await page.getByText('As a list').click()
  await expect(page.getByRole('listitem').filter({ hasText: 'Simmer the lentils' }).first()).toBeVisible()

  // Removed without a question, brought back from the strip; then undone by key.
  await page.getByRole('link', { name: 'Menu', exact: true }).click()
  await page.waitForURL(/\/menu$/)
  await page.getByRole('button', { name: 'Change the menu' }).click()
  await page.getByRole('button', { name: 'Remove Lentils with lemon' }).click()
  await expect(page.getByLabel(/^Name of the dish/)).toHaveCount(0)
  await page.getByRole('button', { name: 'Bring it back' }).click()
  await expect(page.getByLabel(/^Name of the dish/)).toHaveValue('Lentils with lemon')
  await page.getByRole('button', { name: 'Remove Lentils with lemon' }).click()
  await expect(page.getByLabel(/^Name of the dish/)).toHaveCount(0)
  await page.getByRole('button', { name: 'Undo' }).click()
  await expect(page.getByLabel(/^Name of the dish/)).toHaveValue('Lentils with lemon')
  await saved(page)
  await page.reload()
  await ready(page)
  await expect(page.getByRole('link', { name: /Lentils with lemon/ })).toBeVisible()
  await expect(page.getByLabel('Rules by which food is judged')).toHaveValue('uk')
})

import { expect, test } from '@playwright/test'
import { fits } from './look.ts'
import { bringLamb, demoPage, firstDemo, openDish, ready, signIn } from './people.ts'

test('E4 a wrong password is told, and what was written stays', async ({ page }) => {
  await page.goto('/sign-in')
  await ready(page)
  await page.getByLabel('E-mail address').fill(firstDemo().email)
  await page.getByLabel('Password').fill('not the password')
  await page.getByRole('button', { name: 'Sign in' }).click()
  await expect(page.getByRole('alert').filter({ hasText: /password/ })).toBeVisible()
  await expect(page.getByLabel('E-mail address')).toHaveValue(firstDemo().email)
})

test('E4 a bad evening file is refused whole, with the field named', async ({ page }) => {
  await signIn(page, firstDemo())
  await page.goto('/evenings/new')
  await ready(page)
  const file = { name: 'odd.json', mimeType: 'application/json', buffer: Buffer.from('{"format":"tableward/1","covers":"six"}') }
  await page.getByLabel('Evening file').setInputFiles(file)
  await page.getByRole('button', { name: 'Bring it in' }).click()
  await expect(page.getByText('is not an evening as it stands')).toBeVisible()
  await expect(page.getByText('covers', { exact: false }).first()).toBeVisible()
  const strange = { name: 'strange.json', mimeType: 'application/json', buffer: Buffer.from('{"title":"Soup","serves":6}') }
  await page.getByLabel('Evening file').setInputFiles(strange)
  await page.getByRole('button', { name: 'Bring it in' }).click()
  await expect(page.getByText('is no evening file from Tableward: it has no format “tableward/1”')).toBeVisible()
})

test('E4 a page that is not there, and an evening that is not yours, say so and lead on', async ({ page }) => {
  await signIn(page, firstDemo())
  for (const path of ['/evenings/none/menu', '/nowhere']) {
    const answer = await page.goto(path)
    expect(answer?.status()).toBe(404)
    await expect(page.getByRole('link', { name: /evenings/i }).first()).toBeVisible()
  }
})

test('E4 a heat that nobody can read is refused beside it, in as many lines as a phone needs', async ({ browser }) => {
  const page = await demoPage(browser)
  await page.setViewportSize({ width: 390, height: 900 })
  await openDish(page, await bringLamb(page), 'lamb')
  await page.getByRole('button', { name: 'Roast slowly' }).click()
  const heat = page.getByLabel('Roast slowly: kit 1, temperature')
  await heat.fill('rather hot')
  await heat.press('Enter')
  await expect(page.getByRole('alert').filter({ hasText: 'gas' })).toBeVisible()
  await expect(heat).toHaveValue('rather hot')
  await fits(page, 'a refused heat')
  await page.context().close()
})

import { expect, test } from '@playwright/test'
import { bringLamb, firstDemo, ready, signIn } from './people.ts'

test('DR7 SF5 a drink is suggested, poured and chilled in the order; a dish that stands too long is put in the fridge, and back', async ({
  page,
}, info) => {
  // biome-ignore lint/suspicious/noSkippedTests: one width is enough for it
  test.skip(info.project.name === 'phone', 'the same code; the phone is looked at by axe')
  test.setTimeout(120_000)
  await signIn(page, firstDemo())
  const id = await bringLamb(page)
  await page.goto(`/evenings/${id}/drinks`)
  await ready(page)
  const main = page.getByRole('listitem', { name: /Lamb|Main/ }).first()
  // Nobody has said that they drink any: none is suggested until the host says a number.
  await expect(main.getByText('so none is suggested')).toBeVisible()
  await page.getByLabel('How many drink alcohol').selectOption('4')
  await main.getByRole('button', { name: /^Pour Light red/ }).click()
  await expect(main.getByLabel(/^Name of the drink Light red/)).toHaveValue(/Light red/)
  await expect(page.getByText('one bottle of 75 cl')).toBeVisible()
  await page.getByRole('button', { name: /^Put it in the order/ }).click()
  await expect(page.getByText(/In the order: in at/)).toBeVisible({ timeout: 30_000 })

  await page.goto(`/evenings/${id}/shopping`)
  await ready(page)
  await expect(page.getByText(/^.*Drinks are for four with alcohol and for/)).toBeVisible()
  await expect(page.getByRole('checkbox', { name: /^Light red.* 75 cl$/ })).toBeVisible()

  await page.goto(`/evenings/${id}/order`)
  await ready(page)
  const safety = page.getByRole('region', { name: 'Food safety' })
  await expect(safety.getByText(/beyond the rules/).first()).toBeVisible()
  const soup = safety.getByRole('listitem').filter({ hasText: /soup/i }).first()
  await soup.getByRole('button', { name: /^Put it in the fridge after/ }).click()
  await expect(page.getByText('Done: the plan now keeps to it')).toBeVisible()
  await expect(safety.getByRole('listitem').filter({ hasText: /^Beyond the rules: .*soup/i })).toHaveCount(0, { timeout: 30_000 })
  await page.getByRole('button', { name: 'Bring it back' }).click()
  await expect(safety.getByRole('listitem').filter({ hasText: /^Beyond the rules: .*soup/i })).not.toHaveCount(0, {
    timeout: 30_000,
  })
})

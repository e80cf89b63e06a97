import { expect, test } from '@playwright/test'
import { openCable } from '#tests/support/cable.ts'
import { askFor, badge, openDish, ready, saved, takeOn, twoCooks } from './people.ts'

test.describe.configure({ timeout: 120_000 })

test('E1 two cooks change a step, see each other do it, claim dishes, and both see the order planned again', async ({
  browser,
}, info) => {
  const { kim, lou, eveningId } = await twoCooks(browser, `pair-${info.project.name}`)

  // Both look at the method of the soup; Kim changes how long it simmers.
  await openDish(kim.page, eveningId, 'soup')
  await openDish(lou.page, eveningId, 'soup')
  const simmer = 'Simmer until soft'
  await expect(lou.page.getByText(/^Keep an eye on it on a medium ring.*, usually 30 min/)).toBeVisible()
  await kim.page.getByRole('button', { name: simmer, exact: true }).click()
  const usual = kim.page.getByLabel(`${simmer}: usual minutes`)
  await usual.fill('35 min')
  await usual.press('Enter')
  await expect(lou.page.getByText(/^Keep an eye on it on a medium ring.*, usually 35 min/)).toBeVisible()
  await saved(kim.page)

  // Each takes a dish, and sees the other's.
  await kim.page.goto(`/evenings/${eveningId}/menu`)
  await lou.page.goto(`/evenings/${eveningId}/menu`)
  await takeOn(kim.page, 'Celeriac soup, sage butter')
  await expect(lou.page.getByText('Kim has this')).toBeVisible()
  await takeOn(lou.page, 'Cheese and bread')
  await expect(kim.page.getByText('Lou has this')).toBeVisible()

  // The order is planned again for both: the simmering is Kim's now and lasts to the half hour and five.
  for (const { page } of [kim, lou]) {
    await page.goto(`/evenings/${eveningId}/order?view=list`)
    await ready(page)
    const row = page.getByRole('listitem').filter({ hasText: simmer }).first()
    await expect(row).toContainText('Kim, 35 min')
    await expect(page.getByText('being planned again')).toBeHidden()
    await expect(page.getByRole('listitem').filter({ hasText: 'Set out the board' }).first()).toContainText('Lou')
  }
})

test('E2 an edit and a claim made offline are kept through a reload and sent when the connection is back', async ({
  browser,
}, info) => {
  const cable = await openCable(() => Number(new URL(process.env.TABLEWARD_ADDRESS ?? '').port))
  const { kim, lou, eveningId } = await twoCooks(browser, `away-${info.project.name}`, `http://localhost:${cable.port}`)
  await openDish(kim.page, eveningId, 'soup')
  await saved(kim.page)
  await kim.page.getByRole('button', { name: 'Blend', exact: true }).click()
  cable.pull()
  await expect(badge(kim.page)).toHaveAttribute('data-link', 'offline', { timeout: 20_000 })
  const usual = kim.page.getByLabel('Blend: usual minutes')
  await usual.fill('9 min')
  await usual.press('Enter')
  await expect(badge(kim.page)).toContainText('changes kept on this device')
  // Kim asks for it offline; Lou, who is connected, is first.
  await askFor(kim.page, 'Blend')
  await expect(kim.page.getByText('asking…')).toBeVisible()

  // Without a connection the page itself cannot come; the edit waits on the device.
  await kim.page.reload().catch((cause: unknown) => expect(String(cause)).toContain('net::ERR'))
  await openDish(lou.page, eveningId, 'soup')
  await expect(lou.page.getByText('usually 6 min')).toBeVisible()
  await lou.page.getByRole('button', { name: 'Blend', exact: true }).click()
  await takeOn(lou.page, 'Blend')
  await expect(lou.page.getByText('You have this')).toBeVisible()
  await lou.page.getByRole('button', { name: 'Fold Blend' }).click()
  cable.plugIn()
  await openDish(kim.page, eveningId, 'soup')
  await expect(kim.page.getByText('usually 9 min')).toBeVisible()
  await saved(kim.page)
  await expect(kim.page.getByText('“Blend” did not become yours.')).toContainText('did not become yours')
  await expect(kim.page.getByText('Lou has this already.')).toBeVisible()
  await expect(lou.page.getByText('usually 9 min')).toBeVisible()
  await kim.page.context().close()
  await cable.close()
})

test('E3 a cook who is removed is out at once, and told so', async ({ browser }, info) => {
  const { kim, lou, eveningId } = await twoCooks(browser, `out-${info.project.name}`)
  await expect(badge(lou.page)).toHaveAttribute('data-link', 'saved')
  await kim.page.goto(`/evenings/${eveningId}/kitchens`)
  await ready(kim.page)
  await kim.page.getByRole('listitem').filter({ hasText: lou.email }).getByRole('button', { name: 'Remove Lou' }).click()
  await kim.page.getByRole('button', { name: 'Yes, remove Lou' }).click()
  await expect(lou.page.getByRole('alert').filter({ hasText: 'You are no longer a cook of this evening.' })).toBeVisible()
  const answer = await lou.page.goto(`/evenings/${eveningId}/menu`)
  expect(answer?.status()).toBe(404)
})

import { readFile } from 'node:fs/promises'
import { expect, type Page, test } from '@playwright/test'
import { parseEvening } from '#lib/domain/parse.ts'
import { loadEvening } from '#tests/support/load-evening.ts'
import { clean, fits } from './look.ts'
import { askFor, badge, openDish, ready, saved } from './people.ts'
import { seated } from './seated.ts'

test.describe.configure({ timeout: 120_000 })

const PHONE = { viewport: { width: 390, height: 844 }, hasTouch: true }

test('E14 somebody joins by a link on two devices, is signed out by a new one, removed with an unsent edit and comes back with it; the host hands over', async ({
  browser,
}) => {
  const baseURL = process.env.TABLEWARD_ADDRESS ?? ''
  const { eveningId, pages, close } = await seated(
    browser,
    { ...loadEvening('a-lamb'), date: '2099-03-07' },
    [
      { name: 'Kim', cook: 'kim', baseURL },
      { name: 'Lou', cook: 'lou', baseURL },
    ],
    'kitchens',
  )
  const [kim, lou] = pages
  if (!kim || !lou) throw new Error('two people were to sit down')
  const device = async (how = {}) => (await browser.newContext({ baseURL, ...how })).newPage()

  /** What Kim is shown when a link is made. */
  const newLink = async (): Promise<string> => {
    const link = await kim.getByLabel('The link alone', { exact: true }).inputValue()
    expect(new URL(link).pathname).toMatch(/^\/join\/[\w-]{22}$/)
    await expect(kim.getByRole('img', { name: 'as a code for a camera' })).toBeVisible()
    await kim.getByRole('button', { name: 'I have it, put it away' }).click()
    return link
  }
  const enter = async (page: Page, link: string, button: string) => {
    await page.goto(link)
    await page.getByRole('button', { name: button }).click()
    await page.waitForURL(`**/evenings/${eveningId}/**`)
    await ready(page)
    await saved(page)
  }
  const kitchens = async (page: Page) => {
    await page.goto(`/evenings/${eveningId}/kitchens`)
    await ready(page)
  }

  // A link for somebody who is not in the plan: a phone, then a laptop, which is the same person.
  await kim.getByLabel('What they are called').fill('Noor')
  await kim.getByRole('button', { name: 'Make the link' }).click()
  const first = await newLink()
  const [phone, laptop] = [await device(PHONE), await device()]
  expect((await phone.goto(first))?.status()).toBe(200)
  await fits(phone, 'the page of a seat')
  await clean(phone, 'the page of a seat')
  await phone.getByLabel('Minutes on the way to their table').fill('20')
  await enter(phone, first, 'Sit down')
  await enter(laptop, first, 'Go on as Noor')
  await askFor(phone, 'Cheese and bread')
  for (const page of [phone, laptop])
    await expect(page.getByRole('button', { name: /^(Give back|Leave) Cheese and bread/ })).toBeVisible()

  // A new link that puts each of their devices out; the old one is dead.
  await kitchens(kim)
  await kim.getByRole('button', { name: 'New link for Noor' }).click()
  await kim.getByRole('button', { name: 'Make it and sign out every device' }).click()
  const second = await newLink()
  for (const page of [phone, laptop])
    await expect(page.getByRole('alert').filter({ hasText: 'You are signed out.' })).toBeVisible()
  expect((await laptop.goto(first))?.status()).toBe(404)
  await enter(phone, second, 'Go on as Noor')

  // Removed while an edit has not gone out: it is offered back, and goes out when they are let in again.
  await openDish(phone, eveningId, 'soup')
  await saved(phone)
  await phone.getByRole('button', { name: 'Blend', exact: true }).click()
  await phone.context().setOffline(true)
  await expect(badge(phone)).toHaveAttribute('data-link', 'offline', { timeout: 20_000 })
  await phone.getByLabel('Blend: usual minutes').fill('9 min')
  await phone.getByLabel('Blend: usual minutes').press('Enter')
  await expect(badge(phone)).toContainText('changes kept on this device')
  await kim.getByRole('button', { name: 'Remove Noor', exact: true }).click()
  await kim.getByRole('button', { name: 'Yes, remove Noor' }).click()
  await expect(kim.getByRole('button', { name: 'Remove Noor', exact: true })).toBeHidden()
  await phone.context().setOffline(false)
  const told = phone.getByRole('alert').filter({ hasText: 'You are no longer a cook of this evening.' })
  await expect(told).toContainText('has not reached the others', { timeout: 20_000 })
  const [file] = await Promise.all([
    phone.waitForEvent('download'),
    told.getByRole('button', { name: 'Save the plan as it stands here' }).click(),
  ])
  const kept = parseEvening(JSON.parse(await readFile(await file.path(), 'utf8')))
  expect(kept.ok && kept.value.steps.find(({ does }) => does === 'Blend')?.ways[0]?.takes.likely).toBe('PT9M')
  await openDish(kim, eveningId, 'soup')
  await expect(kim.getByText('usually 6 min')).toBeVisible()
  await kitchens(kim)
  await kim.getByLabel('Who the link is for').selectOption({ label: 'Noor' })
  await kim.getByRole('button', { name: 'Make the link' }).click()
  await enter(phone, await newLink(), 'Go on as Noor')
  await openDish(kim, eveningId, 'soup')
  await expect(kim.getByText('usually 9 min')).toBeVisible()

  // Kim hands over to Lou, who has an account.
  await kitchens(kim)
  await expect(kim.getByLabel('Whether Noor is a host')).toBeHidden()
  await kim.getByLabel('Whether Lou is a host').selectOption('host')
  await expect(kim.getByText('lou-').locator('..').getByText(', host')).toBeVisible()
  await kim.getByLabel('Whether you are a host').selectOption('cook')
  await expect(kim.getByRole('button', { name: 'Make the link' })).toBeHidden()
  await kitchens(lou)
  await expect(lou.getByRole('button', { name: 'Make the link' })).toBeVisible()
  await clean(lou, 'cooks and kitchens')
  await Promise.all([phone.context().close(), laptop.context().close(), close()])
})

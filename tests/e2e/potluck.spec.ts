import { expect, type Page, test } from '@playwright/test'
import { tonightEvening } from '#tests/support/tonight-evening.ts'
import { clean, fits } from './look.ts'
import { ready, saved } from './people.ts'
import { threeHomes, threePhones } from './potluck.ts'

test.describe.configure({ timeout: 180_000 })

const LONG = { timeout: 45_000 }
const press = (page: Page, name: string) => page.getByRole('button', { name, exact: true }).click(LONG)
const offer = (page: Page, name: string) =>
  page.getByRole('region', { name: 'What everybody brings' }).getByRole('listitem').filter({ hasText: name })

const home = (page: Page, name: string) =>
  page.getByRole('region', { name: 'Home by home' }).getByRole('listitem').filter({ hasText: name })

/** Writes into a blank and keeps it. */
const write = async (page: Page, label: string, words: string): Promise<void> => {
  const blank = page.getByLabel(label, { exact: true })
  await blank.fill(words)
  await blank.press('Enter')
}

test('E13 three phones play a potluck: what is missing, offers, a no with its reason, a yes, the order, a message, the way and the arrival', async ({
  browser,
}) => {
  // Bo leaves home in the next hour, whatever the time of day.
  const made = tonightEvening(threeHomes(), Date.now(), 100)
  const { eveningId, pages, close } = await threePhones(browser, made, process.env.TABLEWARD_ADDRESS ?? '')
  const [ada, bo, cyd] = pages
  if (!ada || !bo || !cyd) throw new Error('three phones')

  // What is missing is offered in two taps, and can be said better.
  await bo.getByRole('button', { name: /^I bring something small.*, for First course$/ }).click()
  await write(bo, 'What I bring: what it is', 'Bean salad')
  await press(bo, 'Offer it')
  await write(cyd, 'What I bring: what it is', 'Potato bake')
  await cyd.getByLabel('What I bring: to which course', { exact: true }).selectOption({ label: 'Main' })
  await cyd.getByLabel('What I bring: in what state it arrives', { exact: true }).selectOption({ label: 'to be heated' })
  await write(cyd, 'What I bring: shelves of the oven', '2 shelves')
  await press(cyd, 'Offer it')
  await expect(offer(cyd, 'Potato bake')).toContainText('on offer')

  // The host sees whether each fits before saying anything, and nobody else sees the trial.
  await expect(offer(ada, 'Bean salad').getByRole('status')).toHaveText('It fits.', LONG)
  await expect(offer(ada, 'Potato bake').getByRole('status')).toContainText('he oven is full', LONG)
  await clean(ada, 'who brings what')
  await fits(ada, 'who brings what')

  // No, with a reason, which its cook reads.
  await press(ada, 'Not this time: Potato bake')
  await press(ada, 'the kitchen is full then')
  await press(ada, 'Say no to Potato bake')
  await expect(offer(cyd, 'Potato bake')).toContainText('Because the kitchen is full then.')
  await press(cyd, 'chairs')
  await press(cyd, 'Offer it')

  // Yes: it is on the menu with its steps, which are Bo’s; a thing is settled.
  await press(ada, 'Yes please: Bean salad')
  await press(ada, 'Yes please: 6 chairs')
  await expect(offer(bo, 'Bean salad')).toContainText('it is wanted')
  await expect(offer(cyd, '6 chairs')).toContainText('it is wanted')
  await saved(ada)

  // The sheet of Bo’s home says when to leave and where it goes; its message is the same as words.
  await bo.getByRole('link', { name: 'Bo’s kitchen' }).click()
  await ready(bo)
  await expect(bo.getByRole('heading', { level: 1 })).toContainText('Bo’s kitchen')
  await expect(bo.getByText(/Leave at \d\d:\d\d/).first()).toBeVisible(LONG)
  await clean(bo, 'a home’s sheet')
  await fits(bo, 'a home’s sheet')

  // On the night: begun, left, arrived; the order knows.
  await ada.goto(`/evenings/${eveningId}/tonight`)
  await ready(ada)
  await press(ada, 'Begin the evening')
  await press(bo, 'I have left')
  await expect(home(cyd, 'Bo’s kitchen')).toContainText('On the way since', LONG)
  await press(bo, 'I am here')
  await expect(bo.getByText(/^You are here/)).toBeVisible(LONG)
  await expect(home(cyd, 'Bo’s kitchen')).toContainText('There since', LONG)
  await close()
})

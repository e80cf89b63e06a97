import { type Browser, expect, type Locator, type Page, test } from '@playwright/test'
import { loadEvening } from '#tests/support/load-evening.ts'
import { demoEveningId } from './household.ts'
import { tabTo } from './keyboard.ts'
import { bringEvening, demo, demoPage, ready, saved, signIn } from './people.ts'

test.describe.configure({ timeout: 180_000 })

/** Evening C, whose one oven is wanted twice: two demo cooks at its running order, its host and one who was let in. */
const twoAtTheOven = async (browser: Browser): Promise<{ host: Page; other: Page }> => {
  const [first, second] = demo()
  if (!first || !second) throw new Error('there are not two demo cooks')
  const [host, other] = [await (await browser.newContext()).newPage(), await (await browser.newContext()).newPage()]
  await Promise.all([signIn(host, first), signIn(other, second)])
  const id = await bringEvening(host, loadEvening('c-pork'))
  await host.goto(`/evenings/${id}/kitchens`)
  await ready(host)
  const form = host.getByRole('form', { name: 'Add somebody' })
  await form.getByLabel('E-mail address of their account').fill(second.email)
  await form.getByLabel('They are').selectOption({ label: 'Ben' })
  await form.getByRole('button', { name: 'Let them in' }).click()
  await expect(host.getByText(`${second.email} is with you now`)).toBeVisible()
  for (const page of [host, other]) {
    await page.goto(`/evenings/${id}/order`)
    await ready(page)
    // Ways out are looked for last, after the orders of all other evenings.
    await expect(seeButton(page)).toBeVisible({ timeout: 120_000 })
  }
  return { host, other }
}

const clashes = (page: Page): Locator => page.getByRole('list', { name: 'Clashes' })
const seeButton = (page: Page): Locator => page.getByRole('button', { name: /^See what moves: Let “Roast potatoes” be at/ })
const looking = (page: Page): Locator => page.getByRole('region', { name: 'What you are looking at' })
const aside = (page: Page): Locator => page.getByRole('complementary', { name: 'What the running order says' })

/** Of every line of the drawing: what is drawn at another moment than what the hand reaches for says. */
const ofTwoOrders = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() => {
    const targets = [...document.querySelectorAll('[data-key]')]
    if (targets.length < 5) return [`only ${targets.length} lines`]
    return targets.flatMap((target) => {
      const key = target.getAttribute('data-key') ?? ''
      const clock = document.querySelector(`[data-glides="${CSS.escape(key)}"] tspan`)?.textContent ?? 'nothing'
      const name = target.getAttribute('aria-label') ?? ''
      return name.startsWith(`${clock} `) ? [] : [`${key}: ${clock} is drawn, ${name} is reached`]
    })
  })

test('U28 U29 U76 a way out is looked at, taken and taken back, and what if is kept, before another cook’s eyes', async ({
  browser,
}, info) => {
  // biome-ignore lint/suspicious/noSkippedTests: in one project
  test.skip(info.project.name !== 'wide', 'what it shows does not depend on the width')
  const { host, other } = await twoAtTheOven(browser)

  // Looked at: the host alone sees what would come of it.
  await seeButton(host).click()
  await expect(looking(host)).toContainText('Nobody else sees it.')
  await expect(looking(host)).toContainText(/the clash about the oven is gone/i, { timeout: 30_000 })
  await expect(host.getByText('Every wish is kept.')).toBeVisible()
  await expect(clashes(other)).toBeVisible()
  await expect(looking(other)).toHaveCount(0)

  // Taken: both see it, and its clash is gone.
  await looking(host).getByRole('button', { name: 'Take it' }).click()
  const note = host.getByRole('status').filter({ hasText: 'Done: let “Roast potatoes” be at' })
  await expect(note.locator('[tabindex="-1"]')).toBeFocused()
  await expect(note).toContainText('The clash about the oven is gone.', { timeout: 30_000 })
  await expect(clashes(other)).toHaveCount(0)

  // Taken back: both have the clash again.
  await host.getByRole('button', { name: 'Take it back' }).click()
  for (const page of [host, other]) await expect(clashes(page)).toBeVisible({ timeout: 30_000 })
  for (const page of [host, other]) await expect.poll(() => ofTwoOrders(page)).toEqual([])

  // What if: private until it is kept.
  await host.getByText('What if…').click()
  const time = host.getByLabel('What if: when you sit down')
  await time.fill('20:00')
  await time.press('Enter')
  await host.getByRole('button', { name: 'Try it' }).click()
  await expect(looking(host)).toContainText('what if everybody sat down at 20:00', { timeout: 30_000 })
  await expect(looking(host)).toContainText('to table 30 min later', { timeout: 30_000 })
  await expect(aside(host)).toContainText('20:00')
  await expect(aside(other)).toContainText('19:30')
  await saved(host)
  await looking(host).getByRole('button', { name: 'Keep it' }).click()
  await expect(host.getByRole('status').filter({ hasText: 'Kept: everybody sat down at 20:00' })).toBeVisible()
  await expect(aside(other)).not.toContainText('19:30', { timeout: 30_000 })
  for (const page of [host, other]) await expect.poll(() => ofTwoOrders(page)).toEqual([])

  // The one who is not the host may look, and is told whose it is to keep.
  await other.getByText('What if…').click()
  await other.getByRole('button', { name: 'Try it' }).click()
  await expect(looking(other)).toContainText('Only a host can keep this')
  await expect(looking(other).getByRole('button', { name: 'Keep it' })).toHaveCount(0)
})

test('U27 the keyboard reaches every reason of a step, what holds it, and the steps of that again', async ({ browser }, info) => {
  // biome-ignore lint/suspicious/noSkippedTests: in one project
  test.skip(info.project.name !== 'wide', 'a phone has no keyboard')
  const page = await demoPage(browser)
  await page.goto(`/evenings/${demoEveningId()}/order`)
  await ready(page)
  const drawn = page.getByRole('group', { name: /^Steps in the drawing/ })
  await expect(drawn).toBeVisible()
  await expect(page.getByText('A better order is being looked for.')).toHaveCount(0, { timeout: 60_000 })

  // Down the first cook's steps, until one is held by something that can be followed to steps again. The demo is everybody's: while
  // this walks, an order may be planned again, and then it walks anew.
  const why = page.getByRole('list', { name: /^(Why it is there|What would hold it then)$/ })
  const said = page.getByRole('heading', { level: 2 }).and(page.locator(':focus'))
  await expect(async () => {
    await drawn.getByRole('button').first().focus()
    await page.keyboard.press('Enter')
    for (let steps = 0; steps < 20 && (await why.getByRole('button').count()) < 1; steps += 1)
      await page.keyboard.press('ArrowDown')
    const links = await why.getByRole('button').allTextContents()
    expect(links.length).toBeGreaterThan(0)
    for (const link of links) await tabTo(page, exactly(link))

    // What was followed has the focus and says what it is; from a thing it goes on to its steps.
    await page.keyboard.press('Enter')
    await expect(said).toBeVisible({ timeout: 3_000 })
    const heading = await said.textContent({ timeout: 1_000 })
    const onward = page.getByRole('region').filter({ has: said }).getByRole('listitem').getByRole('button').first()
    await tabTo(page, exactly((await onward.textContent({ timeout: 3_000 })) ?? ''))
    await page.keyboard.press('Enter')
    await expect(said).not.toHaveText(heading ?? '', { timeout: 3_000 })
  }).toPass({ timeout: 90_000 })
})

const exactly = (text: string): RegExp => new RegExp(`^${text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')}$`)

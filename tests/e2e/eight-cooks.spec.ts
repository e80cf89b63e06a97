import { expect, type Page, test } from '@playwright/test'
import { openCable } from '#tests/support/cable.ts'
import { EIGHT, eightCooks } from './eight-cooks.ts'
import { badge, ready, takeOn } from './people.ts'

test.describe.configure({ timeout: 240_000 })

const LONG = { timeout: 30_000 }
const current = (page: Page) => expect(page.locator('main')).toHaveAttribute('data-order', 'current', LONG)

test('U35 of eight who ask at once one has it and seven are told; a claim says what it costs; work is shared out and given back', async ({
  browser,
}, info) => {
  // biome-ignore lint/suspicious/noSkippedTests: once is enough
  test.skip(info.project.name !== 'phone', 'claims do not depend on the width')
  const cable = await openCable(() => Number(new URL(process.env.TABLEWARD_ADDRESS ?? '').port))
  const { eveningId, pages, close } = await eightCooks(browser, `http://localhost:${cable.port}`)
  const [ada, bo, , , , , , hal] = pages
  if (!ada || !bo || !hal) throw new Error('eight pages')

  // All press while nobody is connected, so that all are heard at once. The relish keeps nobody busy: it costs nothing.
  cable.pull()
  for (const page of pages) {
    await expect(badge(page)).toHaveAttribute('data-link', 'offline', LONG)
    await page.getByRole('button', { name: 'I’ll do this: Relish' }).click()
    await expect(page.getByText('asking…')).toBeVisible()
  }
  cable.plugIn()
  for (const page of pages) await expect(page.getByText('asking…')).toBeHidden(LONG)
  const backs = await Promise.all(pages.map((page) => page.getByRole('button', { name: 'Give back Relish' }).count()))
  expect(backs.toSorted()).toEqual([0, 0, 0, 0, 0, 0, 0, 1])
  const winner = EIGHT[backs.indexOf(1)] ?? 'nobody'
  const losers = pages.filter((_, at) => backs[at] === 0)
  for (const page of losers) {
    await expect(page.getByRole('alert').filter({ hasText: `${winner} has this already.` })).toBeVisible()
    await expect(page.getByText(`${winner} has this`, { exact: true })).toBeVisible()
  }
  for (const page of [ada, bo, hal]) {
    await page.goto(`/evenings/${eveningId}/order?view=share`)
    await ready(page)
  }

  // Hal comes when the guests sit down: the broth would be late, is said to be before he has it, and may be his all the same.
  await current(hal)
  await hal.getByRole('button', { name: 'I’ll do this: Broth' }).focus()
  await expect(hal.getByText(/^It costs: .*Course soup.* to table .* later/)).toBeVisible(LONG)
  const had = winner === 'Hal' ? 1 : 0
  await expect(ada.getByText('Hal has this')).toHaveCount(had)
  await hal.getByRole('button', { name: 'I’ll do this all the same: Broth' }).click()
  await expect(ada.getByText('Hal has this').nth(had)).toBeVisible()
  await expect(hal.getByRole('button', { name: 'Give back Broth' })).toBeVisible()

  // The ladling takes two: Bo helps, and has it alone when Hal leaves it.
  await takeOn(bo, 'Broth', 'I’ll help')
  await expect(hal.getByText('You and Bo have this')).toBeVisible()
  await hal.getByRole('button', { name: 'Leave Broth to Bo' }).click()
  await expect(bo.getByRole('button', { name: 'Give back Broth' })).toBeVisible()

  // What nobody has is shared out as suggested, and given back.
  await current(ada)
  await ada.getByRole('button', { name: 'Suggest who does what' }).click()
  const part = ada.getByRole('listitem').filter({ has: ada.getByRole('checkbox', { checked: true }) })
  await expect(part.filter({ hasText: 'Pie' })).toContainText(/has Pie: .* hands on/)
  await ada.getByRole('button', { name: 'Share it out so' }).click()
  await expect(ada.getByText(/claims? made\./)).toBeVisible()
  await expect(bo.getByText('Every step has somebody.')).toBeVisible()
  await ada.getByRole('button', { name: 'Give these back' }).click()
  await expect(bo.getByText('Every step has somebody.')).toBeHidden()
  await expect(bo.getByRole('button', { name: 'Give back Broth' })).toBeVisible()
  await close()
  await cable.close()
})

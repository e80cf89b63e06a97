import { expect, type Page, test } from '@playwright/test'
import { EIGHT, eightCooks } from './eight-cooks.ts'
import { takeOn } from './people.ts'

test.describe.configure({ timeout: 120_000 })

const current = (page: Page) => expect(page.locator('main')).toHaveAttribute('data-order', 'current', { timeout: 30_000 })

test('U35 of eight who press at once one has it and seven are told; a claim says what it costs; work is shared out and given back', async ({
  browser,
}, info) => {
  // biome-ignore lint/suspicious/noSkippedTests: once is enough
  test.skip(info.project.name !== 'phone', 'claims do not depend on the width')
  const { pages, close } = await eightCooks(browser, 'order?view=share')
  const [ada, bo, , , , , , hal] = pages
  if (!ada || !bo || !hal) throw new Error('eight pages')

  // All press at once: the relish keeps nobody busy, so that it costs nothing.
  await Promise.all(pages.map((page) => page.getByRole('button', { name: 'I’ll do this: Relish' }).click()))
  await Promise.all(pages.map((page) => expect(page.getByText(/^(You have|\w+ has) this$/).first()).toBeVisible()))
  const backs = await Promise.all(pages.map((page) => page.getByRole('button', { name: 'Give back Relish' }).count()))
  const told = await Promise.all(pages.map((page) => page.getByRole('alert').filter({ hasText: ' has this already.' }).count()))
  const winner = EIGHT[backs.indexOf(1)] ?? 'nobody'
  expect(backs.filter((count) => count === 1)).toHaveLength(1)
  expect(told.filter((count) => count === 1)).toHaveLength(7)
  for (const [at, page] of pages.entries())
    if (backs[at] === 0) await expect(page.getByRole('alert').first()).toHaveText(`${winner} has this already.`)

  // Hal comes when the guests sit down: the broth would be late, is said to be before he has it, and may be his all the same.
  await current(hal)
  await hal.getByRole('button', { name: 'I’ll do this: Broth' }).click()
  await expect(hal.getByText(/^It costs: .*Course soup.* to table .* later/)).toBeVisible({ timeout: 20_000 })
  await expect(ada.getByText('Hal has this')).toBeHidden()
  await hal.getByRole('button', { name: 'I’ll do this all the same: Broth' }).click()
  await expect(ada.getByText('Hal has this')).toBeVisible()
  await expect(hal.getByRole('button', { name: 'Give back Broth' })).toBeVisible()

  // The ladling takes two: Bo helps. The host gives the broth to Bo, who then has it alone.
  await takeOn(bo, 'Broth', 'I’ll help')
  await expect(hal.getByText('You and Bo have this')).toBeVisible()
  await hal.getByRole('button', { name: 'Leave Broth to Bo' }).click()
  await expect(bo.getByRole('button', { name: 'Give back Broth' })).toBeVisible()

  // What nobody has is shared out as suggested, and given back.
  await current(ada)
  await ada.getByRole('button', { name: 'Suggest who does what' }).click()
  const pie = ada
    .getByRole('listitem')
    .filter({ has: ada.getByRole('checkbox') })
    .filter({ hasText: 'Pie' })
  await expect(pie).toContainText(/has Pie: .* hands on/)
  await ada.getByRole('button', { name: 'Share it out so' }).click()
  await expect(ada.getByText(/claims? made\./)).toBeVisible()
  await expect(bo.getByText('Every step has somebody.')).toBeVisible()
  await ada.getByRole('button', { name: 'Give these back' }).click()
  await expect(bo.getByText('Every step has somebody.')).toBeHidden()
  await expect(bo.getByRole('button', { name: 'Give back Broth' })).toBeVisible()
  await close()
})

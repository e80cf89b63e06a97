import { expect, type Page, test } from '@playwright/test'
import { demoEveningId } from './household.ts'
import { demoPage, ready } from './people.ts'

const TARGETS = 'figure [data-key]'

const namesOf = (page: Page): Promise<string[]> =>
  page.locator(TARGETS).evaluateAll((targets) => targets.map((target) => target.getAttribute('aria-label') ?? ''))

const focused = (page: Page): Promise<string> => page.evaluate(() => document.activeElement?.getAttribute('aria-label') ?? '')

/** Presses the key until it leads nowhere new; gives what was passed. */
const walk = async (page: Page, key: string): Promise<string[]> => {
  const passed = [await focused(page)]
  for (let presses = 0; presses < 200; presses += 1) {
    await page.keyboard.press(key)
    const next = await focused(page)
    if (next === passed[passed.length - 1]) return passed
    passed.push(next)
  }
  throw new Error(`${key} never came to an end`)
}

test('U20 keys reach every step of the picture and zoom to ten minutes without losing sight of it, and the list is what is printed', async ({
  browser,
}, info) => {
  // biome-ignore lint/suspicious/noSkippedTests: one width is enough for it
  test.skip(info.project.name === 'phone', 'the same keys on one column')
  test.setTimeout(120_000)
  const page = await demoPage(browser)
  await page.setViewportSize({ width: 1280, height: 800 })
  await page.emulateMedia({ reducedMotion: 'reduce' })
  await page.goto(`/evenings/${demoEveningId()}/order`)
  await ready(page)
  await expect(page.locator('main[data-order="current"]')).toBeVisible()
  await expect(page.getByText('A better order is being looked for.')).toHaveCount(0, { timeout: 30_000 })

  const all = await namesOf(page)
  expect(all.length).toBeGreaterThan(20)
  await page.locator(`${TARGETS}[tabindex="0"]`).focus()
  const reached = await walk(page, 'ArrowDown')
  for (const key of ['ArrowRight', 'ArrowLeft']) {
    await page.keyboard.press(key)
    await page.keyboard.press('Home')
    reached.push(...(await walk(page, 'ArrowDown')))
  }
  expect([...new Set(reached)].sort()).toEqual([...new Set(all)].sort())

  const before = await focused(page)
  await page.keyboard.press('+')
  await page.keyboard.press('+')
  await expect(page.getByRole('button', { name: 'Ten minutes' })).toHaveAttribute('aria-pressed', 'true')
  expect(await focused(page)).toBe(before)
  await expect(page.locator(`${TARGETS}[aria-pressed="true"]`)).toBeInViewport()
  const size = await page
    .locator('figure [role="img"] tspan')
    .first()
    .evaluate((clock) => Number.parseFloat(getComputedStyle(clock).fontSize))
  expect(size).toBeGreaterThanOrEqual(15)

  await page.emulateMedia({ media: 'print' })
  await page.evaluate(() => window.dispatchEvent(new Event('beforeprint')))
  await expect(page.getByRole('figure')).toBeHidden()
  await expect(page.getByText('to table').first()).toBeVisible()
  expect(await page.getByRole('listitem').count()).toBeGreaterThanOrEqual(new Set(all).size)
  await page.context().close()
})

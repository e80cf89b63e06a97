import { expect, test } from '@playwright/test'
import { demoEveningId } from './household.ts'
import { demoPage, ready } from './people.ts'

/** Adds up what moves by itself, as https://web.dev/articles/cls counts it. */
const countShifts = () => {
  Reflect.set(window, 'shifted', 0)
  new PerformanceObserver((list) => {
    for (const entry of list.getEntries())
      Reflect.set(window, 'shifted', Number(Reflect.get(window, 'shifted')) + Number(Reflect.get(entry, 'value')))
  }).observe({ type: 'layout-shift', buffered: true })
}

// A page that is kept on the device would bring its scripts from there.
test.use({ serviceWorkers: 'block' })

test('E15 the menu and the running order can be read before any script runs, and nothing moves when they come alive', async ({
  browser,
}) => {
  const page = await demoPage(browser)
  const id = demoEveningId()
  // Planned and stored, so that there is an order to draw.
  await page.goto(`/evenings/${id}/order`)
  await page.locator('main[data-order="current"]').waitFor()
  let isHeld = true
  await page.route('**/*.js', (route) => (isHeld ? route.abort() : route.continue()))
  await page.addInitScript(countShifts)
  for (const [way, heading, said] of [
    ['menu', 'Menu', 'With the first glass'],
    ['order', 'Running order', 'To the table'],
  ] as const) {
    isHeld = true
    await page.goto(`/evenings/${id}/${way}`)
    const look = page.locator('div[inert]')
    await expect(look.locator('h1')).toHaveText(heading)
    await expect(look).toContainText(said)
    // No button can be pressed in vain, and it is said that the page is still opening.
    await expect(page.locator('[role="status"]:not([inert] *)')).toHaveText('Opening the evening')
    isHeld = false
    await page.goto(`/evenings/${id}/${way}`)
    await ready(page)
    await expect(page.getByRole('heading', { level: 1, name: heading })).toBeVisible()
    await expect(look).toHaveCount(0)
    expect(await page.evaluate(() => Number(Reflect.get(window, 'shifted')))).toBeLessThan(0.1)
  }
})

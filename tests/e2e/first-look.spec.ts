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

test('E18 a screen is painted before its scripts are asked for, and they come packed, to be kept for a year', async ({
  browser,
}) => {
  const page = await demoPage(browser)
  const scripts: { readonly at: string; readonly headers: Record<string, string> }[] = []
  page.on('response', (response) => {
    if (response.url().endsWith('.js')) scripts.push({ at: response.url(), headers: response.headers() })
  })
  await page.goto(`/evenings/${demoEveningId()}/menu`)
  await ready(page)
  const { painted, asked } = await page.evaluate(() => ({
    painted: performance.getEntriesByName('first-contentful-paint')[0]?.startTime ?? Number.NaN,
    asked: performance.getEntriesByType('resource').flatMap(({ name, startTime }) => (name.endsWith('.js') ? [startTime] : [])),
  }))
  expect(asked.length).toBeGreaterThan(10)
  expect(Math.min(...asked)).toBeGreaterThan(painted)
  expect(scripts.length).toBeGreaterThan(10)
  for (const { at, headers } of scripts) {
    expect([at, headers['content-encoding']]).toEqual([at, expect.stringMatching(/^(br|gzip)$/)])
    expect(headers['cache-control']).toContain('immutable')
    expect(headers['x-content-type-options']).toBe('nosniff')
  }
})

test('E18 a screen in the background comes alive, and so does one in a browser that does not say when it has painted', async ({
  browser,
}) => {
  for (const lacks of [
    () => Object.defineProperty(Document.prototype, 'hidden', { get: () => true }),
    () => Object.defineProperty(PerformanceObserver.prototype, 'observe', { value: () => undefined }),
  ]) {
    const page = await demoPage(browser)
    await page.addInitScript(lacks)
    await page.goto(`/evenings/${demoEveningId()}/menu`)
    await ready(page)
    await expect(page.locator('div[inert]')).toHaveCount(0)
    await page.context().close()
  }
})

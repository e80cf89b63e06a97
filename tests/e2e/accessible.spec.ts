import AxeBuilder from '@axe-core/playwright'
import { expect, type Page, test } from '@playwright/test'
import { bringLamb, demo, firstDemo, ready, signIn } from './people.ts'

/** Nothing that axe finds, and nothing wider than the screen. */
const clean = async (page: Page, what: string): Promise<void> => {
  const found = await new AxeBuilder({ page }).analyze()
  expect(found.passes.length, `${what}: axe saw the page`).toBeGreaterThan(5)
  expect(
    found.violations.map(({ id, nodes }) => `${what}: ${id} ${nodes.map(({ target }) => target.join(' ')).join(', ')}`),
  ).toEqual([])
  const wider = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)
  expect(wider, `${what}: no sideways scroll`).toBeLessThanOrEqual(0)
}

for (const colorScheme of ['light', 'dark'] as const) {
  test(`E5 every screen is free of what axe finds, ${colorScheme}`, async ({ page }) => {
    test.setTimeout(180_000)
    await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' })
    for (const path of ['/sign-in', '/sign-up']) {
      await page.goto(path)
      await ready(page)
      await clean(page, path)
    }
    await signIn(page, firstDemo())
    await clean(page, '/')
    const menu = await page.getByRole('link', { name: 'Menu' }).first().getAttribute('href')
    const evening = menu?.replace('/menu', '') ?? ''
    for (const path of [
      '/evenings/new',
      '/account',
      `${evening}/menu`,
      `${evening}/kitchens`,
      `${evening}/chores`,
      `${evening}/order?view=list`,
      `${evening}/order`,
    ]) {
      await page.goto(path)
      await ready(page)
      await expect(page.getByRole('heading', { level: 1 })).toBeVisible()
      if (path.includes('/order')) await expect(page.getByText('19:30').first()).toBeVisible()
      await clean(page, path)
    }
    await page.goto(`${evening}/menu`)
    await ready(page)
    await page.getByRole('button', { name: 'Change the menu' }).click()
    await clean(page, 'the menu while it is changed')
    await page
      .getByRole('link', { name: /^Method of/ })
      .nth(2)
      .click()
    await page.waitForURL(/\/menu\/.+/)
    await page
      .getByRole('listitem', { name: /^Step 1/ })
      .getByRole('button')
      .first()
      .click()
    await clean(page, 'a method with a step open')
  })
}

test('E6 the main path goes by keyboard alone: sign in, change a step, claim it, read the order', async ({ page }, info) => {
  test.setTimeout(120_000)
  const { keyboard } = page
  /** Tabs on until the thing has the focus; fails when it never comes. */
  const tabTo = async (name: RegExp): Promise<void> => {
    for (let presses = 0; presses < 200; presses += 1) {
      await keyboard.press('Tab')
      const focused = await page.evaluate(() => {
        const at = document.activeElement
        const labels = at instanceof HTMLInputElement ? Array.from(at.labels ?? [], (label) => label.textContent) : []
        return at ? [at.getAttribute('aria-label'), ...labels, at.textContent].find((text) => text?.trim()) : null
      })
      if (focused && name.test(focused.trim())) {
        const outlined = await page.evaluate(() => {
          const at = document.activeElement
          const outline = at ? getComputedStyle(at) : null
          return outline !== null && (outline.outlineStyle !== 'none' || outline.boxShadow !== 'none')
        })
        expect(outlined, `${name} shows that it has the focus`).toBe(true)
        return
      }
    }
    throw new Error(`Tab never reached ${name}`)
  }

  const who = demo()[info.project.name === 'phone' ? 0 : 1] ?? { email: '', password: '' }
  await page.goto('/sign-in')
  await ready(page)
  await tabTo(/^E-mail address/)
  await keyboard.type(who.email)
  await tabTo(/^Password/)
  await keyboard.type(who.password)
  await keyboard.press('Enter')
  await page.waitForURL((url) => url.pathname === '/')
  const eveningId = await bringLamb(page)
  await page.goto(`/evenings/${eveningId}/menu`)
  await ready(page)
  await tabTo(/^Lamb shoulder/)
  await keyboard.press('Enter')
  await page.waitForURL(/\/menu\/lamb$/)
  await tabTo(/^Peel potatoes$/)
  await keyboard.press('Enter')
  await tabTo(/^Peel potatoes: usual minutes$/)
  await keyboard.press('Control+A')
  await keyboard.type('18 min')
  await keyboard.press('Enter')
  await expect(page.locator('[data-link]')).toHaveAttribute('data-link', 'saved')
  await tabTo(/^Give Peel potatoes to Kim$/)
  await keyboard.press('Enter')
  await expect(page.getByRole('listitem', { name: /Peel potatoes/ })).toContainText('Kim has this')
  await tabTo(/^Running order$|^Menu$/)
  await page.goto(`/evenings/${eveningId}/order?view=list`)
  await ready(page)
  await tabTo(/^Peel potatoes/)
  await keyboard.press('Enter')
  await expect(page.getByRole('listitem').filter({ hasText: 'Peel potatoes' }).first()).toContainText('Kim, 18 min')
})

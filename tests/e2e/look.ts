import AxeBuilder from '@axe-core/playwright'
import { expect, type Page } from '@playwright/test'

/** Nothing wider than the screen. */
export const fits = async (page: Page, what: string): Promise<void> => {
  const wider = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)
  expect(wider, `${what}: no sideways scroll`).toBeLessThanOrEqual(0)
}

/** Nothing that axe finds. */
export const clean = async (page: Page, what: string): Promise<void> => {
  const found = await new AxeBuilder({ page }).options({ resultTypes: ['violations'] }).analyze()
  expect(found.passes.length, `${what}: axe saw the page`).toBeGreaterThan(5)
  expect(
    found.violations.map(({ id, nodes }) => `${what}: ${id} ${nodes.map(({ target }) => target.join(' ')).join(', ')}`),
  ).toEqual([])
}

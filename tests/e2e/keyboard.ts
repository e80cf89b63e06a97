import { expect, type Page } from '@playwright/test'

/** What has the focus, as a screen reader names it: its label, else its words. */
const named = (page: Page): Promise<string> =>
  page.evaluate(() => {
    const at = document.activeElement
    if (!at || at === document.body) return ''
    const labels = 'labels' in at ? Array.from((at as HTMLInputElement).labels ?? [], (label) => label.textContent ?? '') : []
    return ([at.getAttribute('aria-label'), ...labels, at.textContent].find((text) => text?.trim()) ?? '').trim()
  })

const isOutlined = (page: Page): Promise<boolean> =>
  page.evaluate(() => {
    const at = document.activeElement
    const look = at ? getComputedStyle(at) : null
    return look !== null && (look.outlineStyle !== 'none' || look.boxShadow !== 'none')
  })

/** Tabs on, or back, until the thing has the focus and shows it; fails when it never comes. */
export const tabTo = async (page: Page, name: RegExp, key: 'Tab' | 'Shift+Tab' = 'Tab'): Promise<void> => {
  for (let presses = 0; presses < 300; presses += 1) {
    await page.keyboard.press(key)
    if (!name.test(await named(page))) continue
    expect(await isOutlined(page), `${name} shows that it has the focus`).toBe(true)
    return
  }
  throw new Error(`${key} never reached ${name}`)
}

/** Writes over the field that has the focus, and keeps it. */
export const writeOver = async (page: Page, text: string): Promise<void> => {
  await page.keyboard.press('Control+A')
  await page.keyboard.type(text)
  await page.keyboard.press('Enter')
}

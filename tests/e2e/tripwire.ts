import { expect, type Page } from '@playwright/test'
import { TRIPWIRE } from '#tests/support/recipes/payloads.ts'

interface Tripwire {
  /** Whatever has happened since that should not have: run, asked, refused by the content policy, fetched from elsewhere. */
  readonly found: readonly string[]
}

/** From now on every page of this one tells when text is run, when something is loaded from elsewhere, and when the content policy is broken. */
export const watch = async (page: Page): Promise<Tripwire> => {
  const found: string[] = []
  await page.exposeFunction('tellTripwire', (what: string) => {
    found.push(what)
  })
  await page.addInitScript((name) => {
    const tell = (what: string) => void (window as unknown as { tellTripwire: (what: string) => void }).tellTripwire(what)
    const trip = (what: string) => () => {
      tell(`ran: ${what}`)
      return null
    }
    for (const each of [name, 'alert', 'confirm', 'prompt', 'print', 'open'])
      Object.defineProperty(window, each, { value: trip(each), writable: false })
    document.addEventListener('securitypolicyviolation', (event) =>
      tell(`policy: ${event.effectiveDirective} ${event.blockedURI} ${event.sourceFile ?? ''}`),
    )
  }, TRIPWIRE)
  page.on('dialog', (dialog) => {
    found.push(`dialog: ${dialog.message()}`)
    void dialog.dismiss()
  })
  page.on('pageerror', (error) => found.push(`error: ${error.message}`))
  page.on('console', (message) => {
    if (/content security policy/i.test(message.text())) found.push(`policy: ${message.text()}`)
  })
  page.on('request', (request) => {
    const url = new URL(request.url())
    const own = url.protocol === 'data:' || url.protocol === 'blob:' || url.host === new URL(page.url()).host
    if (!own && page.url() !== 'about:blank') found.push(`request: ${request.url()}`)
  })
  return { found }
}

/** The wire itself works: what is run, and what breaks the policy, is told. Leaves the page in pieces. */
export const proveTripwire = async (page: Page, { found }: Tripwire): Promise<void> => {
  const before = found.length
  await page.evaluate((name) => {
    ;(window as unknown as Record<string, () => void>)[name]?.()
    document.body.insertAdjacentHTML('beforeend', `<img src=x onerror="${name}()">`)
  }, TRIPWIRE)
  await expect.poll(() => found.slice(before).some((what) => what.startsWith('ran:'))).toBe(true)
  await expect.poll(() => found.slice(before).some((what) => what.startsWith('policy:'))).toBe(true)
}

import { existsSync } from 'node:fs'
import { chromium } from '@playwright/test'

/** Where a Chromium stands on this machine; null when there is none. CHROMIUM_PATH goes before all others. */
export const findBrowser = (): string | null => {
  const given = process.env.CHROMIUM_PATH
  if (given) return given
  const places = [
    chromium.executablePath(),
    '/usr/bin/chromium',
    '/usr/bin/chromium-browser',
    '/usr/bin/google-chrome',
    '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  ]
  return places.find((place) => existsSync(place)) ?? null
}

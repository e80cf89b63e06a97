import { defineConfig } from '@playwright/test'
import { findBrowser } from './support/find-browser.ts'

const isRoot = process.getuid?.() === 0

/** What a width does not change is looked at once, where it is wide. */
const ONCE = / (G10|E1|E2|E3|E4|E6|E9|E10|E11|E12|E14|E17|E18|Y6|U10 a dish|U70|U73|PR6) /
/** And this where it is narrow. */
const PHONE = / (E7|E13|E15|E16|U10 a finger) /

export default defineConfig({
  testDir: './e2e',
  outputDir: '../test-results',
  globalSetup: './support/global-setup.ts',
  timeout: 60_000,
  expect: { timeout: 10_000 },
  workers: 2,
  // Two browsers and the server share the machine: what passes only the second time passes, and is named at the end of the run.
  retries: 1,
  forbidOnly: true,
  reporter: [['list'], ['json', { outputFile: '../.cache/playwright.json' }]],
  use: {
    baseURL: process.env.TABLEWARD_ADDRESS,
    locale: 'en-GB',
    timezoneId: 'Europe/London',
    trace: 'on-first-retry',
    launchOptions: {
      executablePath: findBrowser() ?? undefined,
      args: [
        '--disable-gpu',
        '--disable-quic',
        '--no-first-run',
        '--disable-background-networking',
        '--disable-component-update',
        '--disable-sync',
        // An address of plain http that is not localhost, as a phone of the house has.
        '--host-resolver-rules=MAP kitchen.test 127.0.0.1',
        ...(isRoot ? ['--no-sandbox'] : []),
      ],
    },
  },
  projects: [
    { name: 'phone', grepInvert: ONCE, use: { viewport: { width: 390, height: 844 }, hasTouch: true } },
    { name: 'wide', grepInvert: PHONE, use: { viewport: { width: 1280, height: 800 } } },
  ],
})

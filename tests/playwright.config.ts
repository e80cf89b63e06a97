import { defineConfig } from '@playwright/test'
import { findBrowser } from './support/find-browser.ts'

const isRoot = process.getuid?.() === 0

export default defineConfig({
  testDir: './e2e',
  outputDir: '../test-results',
  globalSetup: './support/global-setup.ts',
  timeout: 60_000,
  expect: { timeout: 10_000 },
  workers: 2,
  retries: 0,
  forbidOnly: true,
  reporter: [['list'], ['json', { outputFile: '../.cache/playwright.json' }]],
  use: {
    baseURL: process.env.TABLEWARD_ADDRESS,
    locale: 'en-GB',
    timezoneId: 'Europe/London',
    trace: 'retain-on-failure',
    launchOptions: {
      executablePath: findBrowser() ?? undefined,
      args: [
        '--disable-gpu',
        '--disable-quic',
        '--no-first-run',
        '--disable-background-networking',
        '--disable-component-update',
        '--disable-sync',
        ...(isRoot ? ['--no-sandbox'] : []),
      ],
    },
  },
  projects: [
    { name: 'phone', use: { viewport: { width: 390, height: 844 }, hasTouch: true } },
    { name: 'wide', use: { viewport: { width: 1280, height: 800 } } },
  ],
})

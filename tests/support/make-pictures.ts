import { mkdirSync, readdirSync, rmSync, writeFileSync } from 'node:fs'
import { expect, type Page } from '@playwright/test'
import { root } from '#server/root.ts'
import { ready } from '#tests/e2e/people.ts'
import { openProduct, type Product } from './open-product.ts'

/**
 * npm run pictures: takes the guide's pictures from the product as it is, and puts them into docs/guide/pictures. Builds first.
 * `npm run pictures -- menu order` takes these alone.
 */
const FOLDER = `${root}docs/guide/pictures/`

interface Picture {
  /** Where it is taken; what is shown is at hand after `until`. */
  readonly path: (product: Product) => string
  readonly width: number
  readonly height: number
  readonly until: (page: Page) => Promise<void>
}

const WIDE = { width: 1280, height: 860 } as const
const PHONE = { width: 390, height: 760 } as const

const shown = async (page: Page): Promise<void> => {
  await ready(page)
  await page.locator('main').first().waitFor()
}

/** The order of now has come, and no better one is looked for. */
const planned = async (page: Page): Promise<void> => {
  await shown(page)
  await page.locator('main[data-order="current"]').first().waitFor()
  await expect(page.getByText('A better order is being looked for')).toHaveCount(0, { timeout: 60_000 })
}

const plain = async (page: Page): Promise<void> => {
  await page.getByRole('heading', { level: 1 }).first().waitFor()
}

const PICTURES: Readonly<Record<string, Picture>> = {
  menu: { ...WIDE, path: ({ demo }) => `/evenings/${demo}/menu`, until: shown },
  order: { ...WIDE, path: ({ demo }) => `/evenings/${demo}/order`, until: planned },
  guests: { ...WIDE, path: ({ demo }) => `/evenings/${demo}/guests`, until: shown },
  reply: { ...PHONE, path: ({ reply }) => reply, until: plain },
  bring: { ...PHONE, path: ({ tonight }) => `/evenings/${tonight}/bring`, until: shown },
  shopping: { ...PHONE, path: ({ tonight }) => `/evenings/${tonight}/shopping`, until: shown },
  cooks: { ...WIDE, path: ({ demo }) => `/evenings/${demo}/kitchens`, until: shown },
  wall: { ...WIDE, path: ({ demo }) => `/evenings/${demo}/print/wall`, until: shown },
  tonight: { ...WIDE, path: ({ tonight }) => `/evenings/${tonight}/tonight`, until: shown },
  'tonight-in-the-hand': { ...PHONE, path: ({ tonight }) => `/evenings/${tonight}/tonight`, until: shown },
}

/** The board of an evening that has begun: what should be done by now is, and it is asked for as by everybody's tablet. */
const begin = async ({ page, tonight }: Product): Promise<void> => {
  await page.goto(`/evenings/${tonight}/tonight`)
  await shown(page)
  await page.getByRole('button', { name: 'All of them are done' }).click()
  await page.getByRole('button', { name: 'Begin the evening' }).click()
  await page.getByRole('button', { name: 'Begin the evening' }).waitFor({ state: 'hidden' })
}

/** Sharper than its width, in WebP. */
const take = async (product: Product, name: string, { path, width, height, until }: Picture): Promise<number> => {
  const { page, context } = product
  const cdp = await context.newCDPSession(page)
  await cdp.send('Emulation.setDeviceMetricsOverride', {
    width,
    height,
    deviceScaleFactor: width < 600 ? 2 : 1.5,
    mobile: width < 600,
  })
  await page.goto(path(product))
  await until(page)
  await page.evaluate(() => document.fonts.ready.then(() => undefined))
  await page.waitForTimeout(2_000)
  const { data } = await cdp.send('Page.captureScreenshot', { format: 'webp', quality: 70 })
  await cdp.detach()
  const picture = Buffer.from(data, 'base64')
  writeFileSync(`${FOLDER}${name}.webp`, picture)
  return picture.length
}

const asked = process.argv.slice(2)
const unknown = asked.filter((name) => !(name in PICTURES))
if (unknown.length > 0) {
  console.error(`no picture is called ${unknown.join(', ')}; there are ${Object.keys(PICTURES).join(', ')}`)
  process.exit(2)
}
mkdirSync(FOLDER, { recursive: true })
const product = await openProduct(console.log, WIDE)
try {
  if (asked.length === 0 || asked.some((name) => name.startsWith('tonight'))) await begin(product)
  for (const [name, picture] of Object.entries(PICTURES)) {
    if (asked.length > 0 && !asked.includes(name)) continue
    console.log(`${name} ${Math.round((await take(product, name, picture)) / 1000)} kB`)
  }
  for (const file of readdirSync(FOLDER)) if (!(file.replace(/\.webp$/, '') in PICTURES)) rmSync(`${FOLDER}${file}`)
} finally {
  await product.close()
}

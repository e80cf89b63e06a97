import { readFileSync } from 'node:fs'
import { chromium } from '@playwright/test'
import { root } from '#server/root.ts'
import { findBrowser } from './find-browser.ts'

// The icons in public/icons, from public/mark.svg: node --import tsx tests/support/make-icons.ts

const NIGHT = '#241023'
const drawing = readFileSync(`${root}public/mark.svg`, 'utf8')
const asAddress = (svg: string): string => `data:image/svg+xml;base64,${Buffer.from(svg).toString('base64')}`

interface Icon {
  readonly name: string
  readonly size: number
  /** How much of it the mark takes up; systems cut up to a fifth off each side of what fills its whole square. */
  readonly share: number
  readonly ground: string
  /** Without its ground: of this one only the shape is shown, at the top of a phone. */
  readonly isShape?: true
}

const ICONS: readonly Icon[] = [
  { name: '192', size: 192, share: 0.8, ground: NIGHT },
  { name: '512', size: 512, share: 0.8, ground: NIGHT },
  { name: 'apple', size: 180, share: 0.8, ground: NIGHT },
  { name: 'badge', size: 96, share: 0.92, ground: 'transparent', isShape: true },
]

const browser = await chromium.launch({ executablePath: findBrowser() ?? undefined, args: ['--no-sandbox', '--disable-gpu'] })
const page = await browser.newPage()
for (const { name, size, share, ground, isShape } of ICONS) {
  await page.setViewportSize({ width: size, height: size })
  const side = Math.round(size * share)
  const mark = asAddress(isShape ? drawing.replace(/<rect[^>]*>/, '') : drawing)
  const shape = isShape ? 'filter:brightness(0) invert(1)' : ''
  await page.setContent(
    `<body style="margin:0;height:100vh;display:grid;place-items:center;background:${ground}"><img src="${mark}" width="${side}" height="${side}" style="${shape}">`,
  )
  await page.locator('img').evaluate((image: HTMLImageElement) => image.decode())
  await page.screenshot({ path: `${root}public/icons/${name}.png`, omitBackground: true })
}
await browser.close()

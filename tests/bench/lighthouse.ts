import { loadavg } from 'node:os'
import { launch } from 'chrome-launcher'
import lighthouse from 'lighthouse'
import desktop from 'lighthouse/core/config/desktop-config.js'
import { findBrowser } from '#tests/support/find-browser.ts'
import { openProduct, type Product } from '#tests/support/open-product.ts'
import { median } from './cpu.ts'
import type { Report } from './table.ts'

const CATEGORIES = ['performance', 'accessibility', 'best-practices'] as const
type Preset = 'laptop' | 'phone'

interface Look {
  /** 0..100 each, in the order of CATEGORIES. */
  readonly scores: readonly number[]
  /** What is not as it should be: the audit and, of some, its figure. */
  readonly faults: readonly string[]
  /** Lighthouse's measure of this machine. */
  readonly machine: number
}

/** How often a browser may fail to say when it began. */
const MOST_FAILED = 5

/** How many times slower than this machine a phone of the middle is taken to be: Lighthouse's docs/throttling.md, "Calibrating the CPU slowdown". */
const slowdownFor = (machine: number): number => (machine < 1500 ? 2 : 4)

/** In a browser of its own that nobody else steers, as Lighthouse's own program looks; a debugger beside it slows the page down. */
const look = async (url: string, profile: string, preset: Preset, slowdown: number): Promise<Look | null> => {
  const chromePath = findBrowser()
  const chrome = await launch({
    ...(chromePath !== null && { chromePath }),
    userDataDir: profile,
    logLevel: 'error',
    chromeFlags: ['--headless=new', '--hide-scrollbars', ...(process.getuid?.() === 0 ? ['--no-sandbox'] : [])],
  })
  try {
    const done = await lighthouse(
      url,
      { port: chrome.port, output: 'json', logLevel: 'error', onlyCategories: [...CATEGORIES] },
      preset === 'laptop'
        ? desktop
        : { extends: 'lighthouse:default', settings: { throttling: { cpuSlowdownMultiplier: slowdown } } },
    )
    return done ? readLook(url, done.lhr) : null
  } finally {
    chrome.kill()
  }
}

type Result = NonNullable<Awaited<ReturnType<typeof lighthouse>>>['lhr']

/** Null: the trace does not say when the page was gone to, which happens to one look in some twenty. */
const readLook = (url: string, { categories, audits, finalDisplayedUrl, runtimeError, environment }: Result): Look | null => {
  if (runtimeError?.code === 'NO_NAVSTART') return null
  if (runtimeError) throw new Error(`${url}: ${runtimeError.message}`)
  // Sent elsewhere, to the sign-in page, say, it would be that page's figures.
  if (finalDisplayedUrl !== url) throw new Error(`${url} led to ${finalDisplayedUrl}`)
  const scores = CATEGORIES.map((name) => {
    const score = categories[name]?.score
    if (typeof score !== 'number') throw new Error(`${url}: no figure for ${name}`)
    return score * 100
  })
  const faults = CATEGORIES.flatMap((name) =>
    (categories[name]?.auditRefs ?? [])
      .filter(({ id, weight }) => weight > 0 && (audits[id]?.score ?? 1) < 0.9)
      .map(({ id }) => [id, audits[id]?.displayValue].filter(Boolean).join(' ')),
  )
  return { scores, faults, machine: environment.benchmarkIndex }
}

/**
 * Lighthouse of the screens that people wait for most, as a laptop and as a phone: the medians of several looks. The phone twice: with the
 * slowdown that Lighthouse's table has for this machine, and with its default, which is for a faster one. Builds first.
 */
export const run = async (report: Report, runs: number): Promise<void> => {
  if (!(runs >= 1)) throw new Error('how often should it look? --runs 5')
  const product = await openProduct(report, { width: 1280, height: 800 })
  try {
    await lookAtAll(report, runs, product, await product.letGo())
  } finally {
    await product.close()
  }
}

const lookAtAll = async (report: Report, runs: number, product: Product, profile: string): Promise<void> => {
  const { address, demo, tonight, reply } = product
  const pages = {
    reply,
    menu: `/evenings/${demo}/menu`,
    order: `/evenings/${demo}/order`,
    tonight: `/evenings/${tonight}/tonight`,
  }
  const machines: number[] = []
  let failed = 0
  const lookOften = async (url: string, preset: Preset, slowdown: number): Promise<readonly Look[]> => {
    const looks: Look[] = []
    while (looks.length < runs) {
      const seen = await look(url, profile, preset, slowdown)
      if (seen) looks.push(seen)
      else if (++failed > MOST_FAILED) throw new Error(`${url}: ${failed} looks of this run failed`)
    }
    return looks
  }
  const lookAt = async (title: string, preset: Preset, slowdown: number): Promise<void> => {
    report(`${title}: ${CATEGORIES.join(', ')}, medians of ${runs}`)
    for (const [name, path] of Object.entries(pages)) {
      const looks = await lookOften(`${address}${path}`, preset, slowdown)
      machines.push(...looks.map(({ machine }) => machine))
      const middle = CATEGORIES.map((_, at) => median(looks.map(({ scores }) => scores[at] ?? 0)))
      const each = looks.map(({ scores }) => scores[0]?.toFixed(0)).join(' ')
      report(
        `${name.padEnd(10)}${middle.map((score) => score.toFixed(0).padStart(4)).join('')}  (performance ${each}; load of the machine ${loadavg()[0]?.toFixed(1)})`,
      )
      for (const fault of new Set(looks.flatMap(({ faults }) => faults))) report(`  ${fault}`)
    }
  }
  await lookAt('Lighthouse as a laptop', 'laptop', 1)
  const machine = median(machines)
  const slowdown = slowdownFor(machine)
  await lookAt(`as a phone, ${slowdown} x slower, as a machine of index ${machine.toFixed(0)} wants it`, 'phone', slowdown)
  if (slowdown !== 4) await lookAt('as a phone, 4 x slower, as one of 1500 to 2000 does', 'phone', 4)
  if (failed > 0) report(`${failed} looks failed and were made again`)
}

import { loadavg } from 'node:os'
import lighthouse from 'lighthouse'
import desktop from 'lighthouse/core/config/desktop-config.js'
import { openProduct } from '#tests/support/open-product.ts'
import { median } from './cpu.ts'
import type { Report } from './table.ts'

const CATEGORIES = ['performance', 'accessibility', 'best-practices'] as const
const PRESETS = { phone: undefined, desktop } as const
interface Look {
  /** 0..100 each, in the order of CATEGORIES. */
  readonly scores: readonly number[]
  /** What is not as it should be: the audit and, of some, its figure. */
  readonly faults: readonly string[]
  /** Lighthouse's measure of this machine; its phone, four times slower, is meant for one of 1500 to 2000 (its docs/throttling.md). */
  readonly machine: number
}

const look = async (url: string, port: number, preset: keyof typeof PRESETS): Promise<Look> => {
  const done = await lighthouse(
    url,
    { port, output: 'json', logLevel: 'error', onlyCategories: [...CATEGORIES] },
    PRESETS[preset],
  )
  if (!done || done.lhr.runtimeError) throw new Error(`${url}: ${done?.lhr.runtimeError?.message ?? 'nothing came of it'}`)
  const { categories, audits, finalDisplayedUrl } = done.lhr
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
  return { scores, faults, machine: done.lhr.environment.benchmarkIndex }
}

/** Lighthouse of the screens that people wait for most, as a slow phone and as a laptop: the medians of several looks. Builds first. */
export const run = async (report: Report, runs: number): Promise<void> => {
  if (!(runs >= 1)) throw new Error('how often should it look? --runs 5')
  const product = await openProduct(report, { width: 1280, height: 800 })
  try {
    const { address, demo, tonight, port } = product
    const pages = {
      reply: product.reply,
      menu: `/evenings/${demo}/menu`,
      order: `/evenings/${demo}/order`,
      tonight: `/evenings/${tonight}/tonight`,
    }
    await product.page.close()
    report(`Lighthouse, medians of ${runs}: ${CATEGORIES.join(', ')}`)
    for (const preset of ['phone', 'desktop'] as const)
      for (const [name, path] of Object.entries(pages)) {
        const looks: Look[] = []
        for (let i = 0; i < runs; i += 1) looks.push(await look(`${address}${path}`, port, preset))
        const middle = CATEGORIES.map((_, at) =>
          median(looks.map(({ scores }) => scores[at] ?? 0))
            .toFixed(0)
            .padStart(4),
        )
        const machine = median(looks.map((one) => one.machine)).toFixed(0)
        report(
          `${`${name}, ${preset}`.padEnd(18)}${middle.join('')}  (benchmark index ${machine}, load of the machine ${loadavg()[0]?.toFixed(1)})`,
        )
        for (const fault of new Set(looks.flatMap(({ faults }) => faults))) report(`  ${fault}`)
      }
  } finally {
    await product.close()
  }
}

import { existsSync, readFileSync } from 'node:fs'
import { z } from 'zod'

export interface Count {
  readonly passed: number
  readonly failed: number
  readonly skipped: number
  /** Titles of browser tests that passed only when they were run once more; they count as passed, and are told. */
  readonly again: readonly string[]
}

const Vitest = z
  .object({ numPassedTests: z.int(), numFailedTests: z.int(), numPendingTests: z.int(), numTodoTests: z.int() })
  .transform((found) => ({
    passed: found.numPassedTests,
    failed: found.numFailedTests,
    skipped: found.numPendingTests + found.numTodoTests,
    again: [],
  }))

const Spec = z.object({ title: z.string(), tests: z.array(z.object({ status: z.string() })) })
interface Suite {
  readonly specs: readonly z.infer<typeof Spec>[]
  readonly suites?: readonly Suite[] | undefined
}
const Suite: z.ZodType<Suite> = z.object({
  specs: z.array(Spec),
  get suites() {
    return z.array(Suite).optional()
  },
})

const secondTime = (suite: Suite): readonly string[] => [
  ...suite.specs.filter(({ tests }) => tests.some(({ status }) => status === 'flaky')).map(({ title }) => title),
  ...(suite.suites ?? []).flatMap(secondTime),
]

const Playwright = z
  .object({
    stats: z.object({ expected: z.int(), unexpected: z.int(), flaky: z.int(), skipped: z.int() }),
    suites: z.array(Suite),
  })
  .transform(({ stats, suites }) => ({
    passed: stats.expected + stats.flaky,
    failed: stats.unexpected,
    skipped: stats.skipped,
    again: suites.flatMap(secondTime),
  }))

const COUNTS = { vitest: Vitest, playwright: Playwright } as const

/** What a runner's own report says; null when it wrote none. */
export const countTests = (runner: keyof typeof COUNTS, report: string): Count | null =>
  existsSync(report) ? COUNTS[runner].parse(JSON.parse(readFileSync(report, 'utf8'))) : null

/** A stage that failed has at least one failure, and one in which nothing ran has failed. */
export const countStage = (exitCode: number, count: Count | null): Count => {
  if (count === null) return { passed: 0, failed: 1, skipped: 0, again: [] }
  const ran = count.passed + count.failed > 0
  return exitCode === 0 && ran ? count : { ...count, failed: Math.max(1, count.failed) }
}

import { existsSync, readFileSync } from 'node:fs'
import { z } from 'zod'

export interface Count {
  readonly passed: number
  readonly failed: number
  readonly skipped: number
}

const Vitest = z
  .object({ numPassedTests: z.int(), numFailedTests: z.int(), numPendingTests: z.int(), numTodoTests: z.int() })
  .transform((found) => ({
    passed: found.numPassedTests,
    failed: found.numFailedTests,
    skipped: found.numPendingTests + found.numTodoTests,
  }))

const Playwright = z
  .object({ stats: z.object({ expected: z.int(), unexpected: z.int(), flaky: z.int(), skipped: z.int() }) })
  .transform(({ stats }) => ({ passed: stats.expected, failed: stats.unexpected + stats.flaky, skipped: stats.skipped }))

const COUNTS = { vitest: Vitest, playwright: Playwright } as const

/** What a runner's own report says; null when it wrote none. */
export const countTests = (runner: keyof typeof COUNTS, report: string): Count | null =>
  existsSync(report) ? COUNTS[runner].parse(JSON.parse(readFileSync(report, 'utf8'))) : null

/** A stage that failed has at least one failure, and one in which nothing ran has failed. */
export const countStage = (exitCode: number, count: Count | null): Count => {
  if (count === null) return { passed: 0, failed: 1, skipped: 0 }
  const ran = count.passed + count.failed > 0
  return exitCode === 0 && ran ? count : { ...count, failed: Math.max(1, count.failed) }
}

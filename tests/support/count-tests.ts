import { existsSync, readFileSync } from 'node:fs'
import { stripVTControlCharacters } from 'node:util'
import { z } from 'zod'

export interface Count {
  readonly passed: number
  readonly failed: number
  readonly skipped: number
  /** Titles of browser tests that passed only when they were run once more; they count as passed, and are told. */
  readonly again: readonly string[]
  /** What failed, also the first of two times: its title and the first lines of each error. */
  readonly why: readonly string[]
}

/** The end of a log is read first, so an error is told there once more, in a few lines without colours. */
const inShort = (title: string, messages: readonly string[]): string =>
  [title, ...messages.map((message) => stripVTControlCharacters(message).split('\n').slice(0, 12).join('\n'))].join('\n    ')

const Vitest = z
  .object({
    numPassedTests: z.int(),
    numFailedTests: z.int(),
    numPendingTests: z.int(),
    numTodoTests: z.int(),
    testResults: z.array(
      z.object({ assertionResults: z.array(z.object({ fullName: z.string(), failureMessages: z.array(z.string()) })) }),
    ),
  })
  .transform((found) => ({
    passed: found.numPassedTests,
    failed: found.numFailedTests,
    skipped: found.numPendingTests + found.numTodoTests,
    again: [],
    why: found.testResults
      .flatMap(({ assertionResults }) => assertionResults)
      .filter(({ failureMessages }) => failureMessages.length > 0)
      .map(({ fullName, failureMessages }) => inShort(fullName, failureMessages)),
  }))

const Result = z.object({ errors: z.array(z.object({ message: z.string().optional() })) })
const Spec = z.object({ title: z.string(), tests: z.array(z.object({ status: z.string(), results: z.array(Result) })) })
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

const specsOf = (suite: Suite): readonly z.infer<typeof Spec>[] => [...suite.specs, ...(suite.suites ?? []).flatMap(specsOf)]

const errorsOf = ({ tests }: z.infer<typeof Spec>): readonly string[] =>
  tests.flatMap(({ results }) => results.flatMap(({ errors }) => errors.map(({ message }) => message ?? 'no message')))

const Playwright = z
  .object({
    stats: z.object({ expected: z.int(), unexpected: z.int(), flaky: z.int(), skipped: z.int() }),
    suites: z.array(Suite),
  })
  .transform(({ stats, suites }) => {
    const specs = suites.flatMap(specsOf)
    return {
      passed: stats.expected + stats.flaky,
      failed: stats.unexpected,
      skipped: stats.skipped,
      again: specs.filter(({ tests }) => tests.some(({ status }) => status === 'flaky')).map(({ title }) => title),
      why: specs.filter((spec) => errorsOf(spec).length > 0).map((spec) => inShort(spec.title, errorsOf(spec))),
    }
  })

const COUNTS = { vitest: Vitest, playwright: Playwright } as const

/** What a runner's own report says; null when it wrote none. */
export const countTests = (runner: keyof typeof COUNTS, report: string): Count | null =>
  existsSync(report) ? COUNTS[runner].parse(JSON.parse(readFileSync(report, 'utf8'))) : null

/** A stage that failed has at least one failure, and one in which nothing ran has failed. */
export const countStage = (exitCode: number, count: Count | null): Count => {
  if (count === null) return { passed: 0, failed: 1, skipped: 0, again: [], why: [] }
  const ran = count.passed + count.failed > 0
  return exitCode === 0 && ran ? count : { ...count, failed: Math.max(1, count.failed) }
}

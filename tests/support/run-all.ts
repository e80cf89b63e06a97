import { mkdirSync, rmSync } from 'node:fs'
import { prisma } from '#prisma/generate.ts'
import { runNode } from '#server/cli/run.ts'
import { root } from '#server/root.ts'
import { type Count, countStage, countTests } from './count-tests.ts'
import { getBrowser } from './get-browser.ts'

// npm test: every stage, also after one has failed, so that one run tells everything. The last line counts.

const bin = (path: string): string => `${root}node_modules/${path}`

/** Runs one of the tools with its arguments; a stage of several stops at the first that fails. */
const run = async (...commands: readonly (readonly string[])[]): Promise<number> => {
  for (const command of commands) {
    const code = await runNode(command, {})
    if (code !== 0) return code
  }
  return 0
}

const reports = { vitest: `${root}.cache/vitest.json`, playwright: `${root}.cache/playwright.json` }

const unit = (): Promise<number> =>
  run([
    bin('vitest/vitest.mjs'),
    'run',
    '-c',
    'tests/vitest.config.ts',
    '--reporter=default',
    '--reporter=json',
    `--outputFile.json=${reports.vitest}`,
  ])

const browser = async (): Promise<number> => {
  const found = getBrowser(console.log)
  if (!found) return 1
  return runNode([bin('@playwright/test/cli.js'), 'test', '-c', 'tests/playwright.config.ts'], { CHROMIUM_PATH: found })
}

interface Stage {
  readonly name: string
  readonly run: () => Promise<number>
  readonly counts?: keyof typeof reports
}

const STAGES: readonly Stage[] = [
  {
    name: 'generate',
    run: async () => {
      prisma('validate')
      prisma('generate')
      return 0
    },
  },
  {
    name: 'types',
    run: async () => {
      const made = await run([bin('next/dist/bin/next'), 'typegen'])
      const checks = [[], ['-p', 'lib'], ['-p', 'app/_worker']].map((of) => run([bin('typescript/bin/tsc'), ...of]))
      return Math.max(made, ...(await Promise.all(checks)))
    },
  },
  { name: 'lint', run: () => run([bin('@biomejs/biome/bin/biome'), 'check', '.']) },
  { name: 'build', run: () => run(['--import', 'tsx', 'server/cli/build.ts']) },
  { name: 'unit', run: unit, counts: 'vitest' },
  { name: 'browser', run: browser, counts: 'playwright' },
]

const attempt = async (stage: Stage): Promise<number> => {
  try {
    return await stage.run()
  } catch (cause) {
    console.error(cause)
    return 1
  }
}

mkdirSync(`${root}.cache`, { recursive: true })
for (const report of Object.values(reports)) rmSync(report, { force: true })

const lines: string[] = []
let total: Count = { passed: 0, failed: 0, skipped: 0, again: [], why: [] }
for (const stage of STAGES) {
  console.log(`\n── ${stage.name}`)
  const began = performance.now()
  const code = await attempt(stage)
  const count = stage.counts
    ? countStage(code, countTests(stage.counts, reports[stage.counts]))
    : { passed: 0, failed: code === 0 ? 0 : 1, skipped: 0, again: [], why: [] }
  total = {
    passed: total.passed + count.passed,
    failed: total.failed + count.failed,
    skipped: total.skipped + count.skipped,
    again: [...total.again, ...count.again],
    why: [...total.why, ...count.why],
  }
  const seconds = Math.round((performance.now() - began) / 1000)
  const tests = stage.counts ? `, ${count.passed} passed, ${count.failed} failed, ${count.skipped} skipped` : ''
  lines.push(`${count.failed === 0 ? 'ok    ' : 'FAILED'} ${stage.name} (${seconds} s${tests})`)
  console.log(lines.at(-1))
}

if (total.why.length > 0) lines.push('', 'what failed, also what passed the second time:', ...total.why)
if (total.again.length > 0) lines.push(`passed only the second time: ${total.again.join('; ')}`)
console.log(`\n${lines.join('\n')}\n${total.passed} passed, ${total.failed} failed`)
process.exitCode = total.failed === 0 ? 0 : 1

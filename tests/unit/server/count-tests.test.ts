import { rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { countStage, countTests } from '#tests/support/count-tests.ts'

test('A15 a stage that ran no test, wrote no report or ended badly counts as failed', () => {
  expect(countStage(0, { passed: 3, failed: 0, skipped: 1, again: [], why: [] })).toEqual({
    passed: 3,
    failed: 0,
    skipped: 1,
    again: [],
    why: [],
  })
  expect(countStage(1, { passed: 3, failed: 2, skipped: 0, again: [], why: [] })).toEqual({
    passed: 3,
    failed: 2,
    skipped: 0,
    again: [],
    why: [],
  })
  expect(countStage(1, { passed: 3, failed: 0, skipped: 0, again: [], why: [] }).failed).toBe(1)
  expect(countStage(0, { passed: 0, failed: 0, skipped: 9, again: [], why: [] }).failed).toBe(1)
  expect(countStage(0, null).failed).toBe(1)
  expect(countTests('vitest', '/no/such/report.json')).toBeNull()
})

test('A15 what passed only the second time is counted as passed and named, and what failed says why', () => {
  const spec = (title: string, status: string, ...messages: string[]) => ({
    title,
    tests: [{ status, results: [{ errors: messages.map((message) => ({ message })) }, { errors: [] }] }],
  })
  const report = join(tmpdir(), `tableward-report-${process.pid}.json`)
  const inner = [spec('two', 'flaky', '\u001b[31mtoo late\u001b[39m'), spec('three', 'unexpected', 'not there', 'nor here')]
  const suites = [{ specs: [spec('one', 'expected')], suites: [{ specs: inner }] }]
  writeFileSync(report, JSON.stringify({ stats: { expected: 1, unexpected: 1, flaky: 1, skipped: 0 }, suites }))
  try {
    expect(countTests('playwright', report)).toEqual({
      passed: 2,
      failed: 1,
      skipped: 0,
      again: ['two'],
      why: ['two\n    too late', 'three\n    not there\n    nor here'],
    })
    const one = { fullName: 'adds up', failureMessages: ['2 is not 3'] }
    const counts = { numPassedTests: 4, numFailedTests: 1, numPendingTests: 0, numTodoTests: 0 }
    writeFileSync(report, JSON.stringify({ ...counts, testResults: [{ assertionResults: [one] }] }))
    expect(countTests('vitest', report)?.why).toEqual(['adds up\n    2 is not 3'])
  } finally {
    rmSync(report)
  }
})

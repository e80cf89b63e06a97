import { rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { countStage, countTests } from '#tests/support/count-tests.ts'

test('A15 a stage that ran no test, wrote no report or ended badly counts as failed', () => {
  expect(countStage(0, { passed: 3, failed: 0, skipped: 1, again: [] })).toEqual({ passed: 3, failed: 0, skipped: 1, again: [] })
  expect(countStage(1, { passed: 3, failed: 2, skipped: 0, again: [] })).toEqual({ passed: 3, failed: 2, skipped: 0, again: [] })
  expect(countStage(1, { passed: 3, failed: 0, skipped: 0, again: [] }).failed).toBe(1)
  expect(countStage(0, { passed: 0, failed: 0, skipped: 9, again: [] }).failed).toBe(1)
  expect(countStage(0, null).failed).toBe(1)
  expect(countTests('vitest', '/no/such/report.json')).toBeNull()
})

test('A15 what passed only the second time is counted as passed and named', () => {
  const spec = (title: string, status: string) => ({ title, tests: [{ status }] })
  const report = join(tmpdir(), `tableward-report-${process.pid}.json`)
  const suites = [{ specs: [spec('one', 'expected')], suites: [{ specs: [spec('two', 'flaky'), spec('three', 'unexpected')] }] }]
  writeFileSync(report, JSON.stringify({ stats: { expected: 1, unexpected: 1, flaky: 1, skipped: 0 }, suites }))
  try {
    expect(countTests('playwright', report)).toEqual({ passed: 2, failed: 1, skipped: 0, again: ['two'] })
  } finally {
    rmSync(report)
  }
})

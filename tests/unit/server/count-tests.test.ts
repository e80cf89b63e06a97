import { expect, test } from 'vitest'
import { countStage, countTests } from '#tests/support/count-tests.ts'

test('A15 a stage that ran no test, wrote no report or ended badly counts as failed', () => {
  expect(countStage(0, { passed: 3, failed: 0, skipped: 1 })).toEqual({ passed: 3, failed: 0, skipped: 1 })
  expect(countStage(1, { passed: 3, failed: 2, skipped: 0 })).toEqual({ passed: 3, failed: 2, skipped: 0 })
  expect(countStage(1, { passed: 3, failed: 0, skipped: 0 }).failed).toBe(1)
  expect(countStage(0, { passed: 0, failed: 0, skipped: 9 }).failed).toBe(1)
  expect(countStage(0, null).failed).toBe(1)
  expect(countTests('vitest', '/no/such/report.json')).toBeNull()
})

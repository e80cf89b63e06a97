import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import { whenCalm } from '#app/_sync/when-idle.ts'

let idle: (() => void)[] = []
beforeEach(() => {
  idle = []
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] })
  vi.stubGlobal('requestIdleCallback', (run: () => void) => idle.push(run))
  vi.stubGlobal('cancelIdleCallback', (asked: number) => idle.splice(asked - 1, 1))
})
afterEach(() => {
  vi.useRealTimers()
  vi.unstubAllGlobals()
})

test('U74 what is kept for later waits two seconds, and then for the page to be idle', () => {
  const run = vi.fn()
  whenCalm(run)
  vi.advanceTimersByTime(1_999)
  expect(idle).toHaveLength(0)
  vi.advanceTimersByTime(1)
  expect(run).not.toHaveBeenCalled()
  for (const one of idle) one()
  expect(run).toHaveBeenCalledOnce()
})

test('U74 and is called off at any time', () => {
  const run = vi.fn()
  const early = whenCalm(run)
  const late = whenCalm(run)
  early()
  vi.advanceTimersByTime(2_000)
  expect(idle).toHaveLength(1)
  late()
  expect(idle).toHaveLength(0)
})

import { afterEach, expect, test, vi } from 'vitest'
import { claimFrame, isTaken } from '#app/_order/frames.ts'

afterEach(() => {
  vi.useRealTimers()
  vi.unstubAllGlobals()
})

test('U76 what a key has done has the next frame for itself, and three in a row at the most', () => {
  vi.useFakeTimers()
  const painted: (() => void)[] = []
  vi.stubGlobal('requestAnimationFrame', (call: () => void) => painted.push(call))
  let time = 0
  /** A frame is painted: whether what takes turns, of which two ask, has to wait for another. */
  const frame = (): boolean => {
    time += 16
    for (const call of painted.splice(0)) call()
    const answers = [isTaken(time), isTaken(time)]
    expect(answers[0]).toBe(answers[1])
    vi.runAllTimers()
    return answers[0] ?? false
  }
  expect(frame()).toBe(false)
  claimFrame()
  expect(frame()).toBe(true)
  expect(frame()).toBe(false)
  // A key that is held down.
  const held = Array.from({ length: 8 }, () => {
    claimFrame()
    return frame()
  })
  expect(held).toEqual([true, true, true, false, true, true, true, false])
})

import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import { inGaps } from '#app/_sync/gaps.ts'

let now = 0
let waiting: (() => void)[] = []
beforeEach(() => {
  now = 0
  waiting = []
  vi.spyOn(performance, 'now').mockImplementation(() => now)
  vi.stubGlobal('setTimeout', (run: () => void) => waiting.push(run))
})
afterEach(() => {
  vi.unstubAllGlobals()
  vi.restoreAllMocks()
})

/** The page's next turn. */
const turn = async () => {
  waiting.shift()?.()
  await Promise.resolve()
}

/** Ten pieces that take 2 ms each. */
function* work(done: number[]): Generator<undefined, void> {
  for (let piece = 0; piece < 10; piece += 1) {
    now += 2
    done.push(piece)
    yield
  }
}

test('E18 long work stops after five milliseconds, and goes on when the page had its turn', async () => {
  const done: number[] = []
  const then = vi.fn()
  inGaps(work(done), then)
  expect(done).toEqual([])
  await turn()
  expect(done).toEqual([0, 1, 2])
  await turn()
  expect(done).toEqual([0, 1, 2, 3, 4, 5])
  await turn()
  expect(then).not.toHaveBeenCalled()
  await turn()
  expect(done).toHaveLength(10)
  expect(then).toHaveBeenCalledOnce()
  expect(waiting).toEqual([])
})

test('E18 work that was called off ends, and nothing follows it', async () => {
  const done: number[] = []
  const then = vi.fn()
  const callOff = inGaps(work(done), then)
  await turn()
  callOff()
  await turn()
  expect(done).toEqual([0, 1, 2])
  expect(then).not.toHaveBeenCalled()
  expect(waiting).toEqual([])
})

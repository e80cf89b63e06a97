import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import { type Asked, openLocalOrder, type Told } from '#app/_sync/local-order.ts'
import { orderOf, toast } from '#tests/unit/planner/by-hand.ts'

/** Stands in for the browser's Worker: what it is asked waits here until the test answers. */
const handWorkers = () => {
  const workers: { asked: Asked[]; isEnded: boolean; tell: (told: Told) => void; breakDown: () => void }[] = []
  const spawn = (): Worker => {
    const worker = {
      onmessage: null as ((event: { data: Told }) => void) | null,
      onerror: null as ((event: { message?: string }) => void) | null,
      postMessage: (asked: Asked) => void one.asked.push(asked),
      terminate: () => {
        one.isEnded = true
      },
    }
    const one = {
      asked: [] as Asked[],
      isEnded: false,
      tell: (told: Told) => worker.onmessage?.({ data: told }),
      breakDown: () => worker.onerror?.({}),
    }
    workers.push(one)
    return worker as unknown as Worker
  }
  return { spawn, workers }
}

const warned = vi.spyOn(console, 'warn')
beforeEach(() => {
  warned.mockReset().mockImplementation(() => undefined)
})
afterEach(() => {
  warned.mockReset()
})

const at = <T>(list: readonly T[], index: number): T => {
  const found = list[index]
  if (found === undefined) throw new Error(`there is no number ${index}`)
  return found
}

/** Nothing is fetched before it is asked for. */
const neverIdle = () => () => undefined

const hashFor = (asked: Asked, hash: string): Told => ({ job: asked.job, kind: 'hash', hash })

test('the planner is fetched once a hash was told and the page is idle, so that a plan can be made when the connection has gone', () => {
  const { spawn, workers } = handWorkers()
  const waiting: (() => void)[] = []
  const local = openLocalOrder(spawn, Date.now, (run) => {
    waiting.push(run)
    return () => undefined
  })
  local.hash(toast('e1', 1), () => undefined)
  expect([workers.length, waiting.length]).toEqual([1, 0])
  const worker = at(workers, 0)
  worker.tell(hashFor(at(worker.asked, 0), 'a'))
  expect([workers.length, waiting.length]).toEqual([1, 1])
  at(waiting, 0)()
  expect(workers).toHaveLength(2)
  local.plan(toast('e1', 1), null, () => undefined)
  expect(at(at(workers, 1).asked, 0).kind).toBe('quick')
  expect(workers).toHaveLength(2)
})

test('of the plans asked for while one is under way only the newest is worked out and answered', () => {
  const { spawn, workers } = handWorkers()
  const local = openLocalOrder(spawn, Date.now, neverIdle)
  const answers: (string | null)[] = []
  for (const minutes of [1, 2, 3]) local.hash(toast('e1', minutes), (hash) => answers.push(`${minutes} ${hash}`))
  const worker = at(workers, 0)
  expect(worker.asked).toHaveLength(1)
  worker.tell(hashFor(at(worker.asked, 0), 'a'))
  expect(answers).toEqual([])
  expect(worker.asked).toHaveLength(2)
  expect(at(worker.asked, 1).evening).toEqual(toast('e1', 3))
  worker.tell(hashFor(at(worker.asked, 1), 'c'))
  expect(answers).toEqual(['3 c'])
})

const orderFor = (asked: Asked, total: number): Told => ({
  job: asked.job,
  kind: 'plan',
  known: { hash: 'h', order: orderOf(asked.evening, 'quick', total) },
})

test('P4 on a device too a first answer is given at once, and a better one that begins from it', () => {
  const { spawn, workers } = handWorkers()
  const local = openLocalOrder(spawn, Date.now, neverIdle)
  const answers: [total: number | undefined, more: boolean][] = []
  const last = orderOf(toast('e1', 3), 'better', 90)
  local.plan(toast('e1', 5), last, (known) => answers.push([known?.order.total, known?.more ?? false]))
  const worker = at(workers, 1)
  expect(at(worker.asked, 0)).toMatchObject({ kind: 'quick', last, order: null })
  worker.tell(orderFor(at(worker.asked, 0), 100))
  expect(at(worker.asked, 1)).toMatchObject({ kind: 'better', last, order: { total: 100 } })
  worker.tell(orderFor(at(worker.asked, 1), 80))
  expect(answers).toEqual([
    [100, true],
    [80, false],
  ])
})

test('P4 on a device a plan that is asked for meanwhile goes before the better answer to the one before', () => {
  const { spawn, workers } = handWorkers()
  const local = openLocalOrder(spawn, Date.now, neverIdle)
  const answers: string[] = []
  const plan = (minutes: number) =>
    local.plan(toast('e1', minutes), null, (known) => answers.push(`${minutes} ${known?.order.total}`))
  plan(1)
  plan(2)
  const worker = at(workers, 1)
  worker.tell(orderFor(at(worker.asked, 0), 10))
  worker.tell(orderFor(at(worker.asked, 1), 20))
  plan(3)
  worker.tell(orderFor(at(worker.asked, 2), 19))
  worker.tell(orderFor(at(worker.asked, 3), 30))
  expect(worker.asked.map((one) => one.kind)).toEqual(['quick', 'quick', 'better', 'quick', 'better'])
  expect(answers).toEqual(['2 20', '3 30'])
})

test('U25 what is tried is planned in a worker of its own, which is started when it is first wanted', () => {
  const { spawn, workers } = handWorkers()
  const local = openLocalOrder(spawn, Date.now, neverIdle)
  const answers: (number | null)[] = []
  const last = orderOf(toast('e1', 3), 'better', 90)
  local.plan(toast('e1', 4), null, () => undefined)
  expect(workers).toHaveLength(2)
  local.tryOut(toast('e1', 5), last, (known) => answers.push(known?.order.total ?? null))
  expect(workers).toHaveLength(3)
  const worker = at(workers, 2)
  expect(at(worker.asked, 0)).toMatchObject({ kind: 'trial', last })
  worker.tell(orderFor(at(worker.asked, 0), 30))
  expect(answers).toEqual([30])
  worker.breakDown()
  local.tryOut(toast('e1', 5), last, (known) => answers.push(known?.order.total ?? null))
  expect(workers).toHaveLength(4)
})

test('a worker that cannot be loaded is answered for with null, and the other one goes on', () => {
  const { spawn, workers } = handWorkers()
  const local = openLocalOrder(spawn, Date.now, neverIdle)
  const answers: unknown[] = []
  local.plan(toast('e1', 1), null, (known) => answers.push(known))
  at(workers, 1).breakDown()
  local.plan(toast('e1', 2), null, (known) => answers.push(known))
  expect(answers).toEqual([null, null])
  expect(warned).toHaveBeenCalledWith(expect.stringContaining('cannot be planned on this device'), expect.anything())
  local.hash(toast('e1', 1), (hash) => answers.push(hash))
  at(workers, 0).tell(hashFor(at(at(workers, 0).asked, 0), 'a'))
  expect(answers).toEqual([null, null, 'a'])
})

test('a browser without such workers is answered for with null', () => {
  const answers: unknown[] = []
  const local = openLocalOrder(() => {
    throw new TypeError('module workers are not supported')
  })
  local.hash(toast('e1', 1), (hash) => answers.push(hash))
  local.plan(toast('e1', 1), null, (known) => answers.push(known))
  expect(answers).toEqual([null, null])
  expect(warned).toHaveBeenCalledTimes(2)
})

test('closing ends both workers', () => {
  const { spawn, workers } = handWorkers()
  const local = openLocalOrder(spawn, Date.now, neverIdle)
  local.plan(toast('e1', 1), null, () => undefined)
  local.close()
  expect(workers).toHaveLength(2)
  expect(workers.every(({ isEnded }) => isEnded)).toBe(true)
})

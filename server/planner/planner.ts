import { isDeepStrictEqual } from 'node:util'
import type { Evening } from '#lib/domain/evening.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { problemHash } from '#lib/order/hash.ts'
import { type Start, startOf } from '#lib/order/start.ts'
import type { OrderMessage } from '#lib/plan/wire.ts'
import type { Planner } from '#server/live.ts'
import { type Clock, systemClock } from '#server/sync/clock.ts'
import { nextStage } from './next-stage.ts'
import type { Kept, OrderStore } from './order-store.ts'
import { openQueue } from './queue.ts'
import type { Report, Runner, Slice } from './runner.ts'
import type { Stage } from './stage.ts'
import { threadRunner } from './thread-runner.ts'

/** An edit is planned for when nothing has been edited for `quiet` ms, and `most` ms after it at the latest. */
const GATHER = { quiet: 80, most: 400 }

/** Stands for the hash of a plan that no problem could be made of: a bug, told to the people as a failure. */
const NO_PROBLEM = 'none'

const FAILED = 'The running order could not be worked out this time. Your plan is safe; the next change to it is planned again.'

/** What is known of one evening while people are at it. */
interface Desk {
  evening: Evening
  /** That of `evening`; null until it is looked at. */
  hash: string | null
  answer: ({ readonly kind: 'order' } & Kept) | { readonly kind: 'failed'; readonly hash: string } | null
  /** The last order that people saw, of whatever plan. */
  last: RunningOrder | null
  /** How they were told of it; null when that was not since they came. */
  shown: OrderMessage | null
  /** The problem that is being planned, what from, and the stages that are over. `again`: its order is there already. */
  work: { readonly hash: string; readonly start: Start; readonly over: Set<Stage>; readonly again: boolean } | null
  /** The problem whose thread has crashed once. */
  crashed: string | null
  gathering: { readonly since: number; readonly cancel: () => void } | null
  /** What is being gathered is planned from now also when it comes to the same problem. */
  anyway: boolean
  /** Resolves when the stored order has been looked up. */
  readonly looked: Promise<void>
  /** Nobody is there any more: the desk is cleared when the first answer is in. */
  leaving: boolean
}

interface Parts {
  readonly orders: OrderStore
  readonly send: (eveningId: string, message: OrderMessage) => void
  readonly log?: (what: string, why: unknown) => void
  /** How many worker threads; as many as there are cores, four at the most, when absent. */
  readonly workers?: number
  readonly runner?: Runner
  readonly clock?: Clock
}

/** Whether people see nothing new in it: how long was looked is not shown. */
const isOldNews = (before: OrderMessage | null, after: OrderMessage & { readonly kind: 'order' }, again: boolean): boolean =>
  before?.kind === 'order' &&
  before.hash === after.hash &&
  (before.more === after.more || (again && !before.more)) &&
  (before.looking === after.looking || (again && !before.looking)) &&
  isDeepStrictEqual({ ...before.order, of: null }, { ...after.order, of: null })

/** Plans every evening that is told to it in worker threads, and says so to the people at it. */
export const startPlanner = (parts: Parts): Planner => {
  const { orders, send, clock = systemClock } = parts
  const log = parts.log ?? ((what, why) => console.error(what, why))
  const runner = parts.runner ?? threadRunner({ workers: parts.workers, log, clock })
  const desks = new Map<string, Desk>()
  const orderListeners: ((eveningId: string, order: RunningOrder) => void)[] = []
  const hashes = new WeakMap<Evening, string>()
  /** The end of each evening's line of writes: a newer order is never overwritten by an older one. */
  const writes = new Map<string, Promise<void>>()

  const hashed = (evening: Evening): string => {
    try {
      return problemHash(evening)
    } catch (why) {
      log('a plan does not make a problem', why)
      return NO_PROBLEM
    }
  }

  const hashOf = (evening: Evening): string => {
    const known = hashes.get(evening)
    if (known !== undefined) return known
    const hash = hashed(evening)
    hashes.set(evening, hash)
    return hash
  }

  const wanted = (desk: Desk): string => {
    desk.hash ??= hashOf(desk.evening)
    return desk.hash
  }

  const messageOf = (answer: NonNullable<Desk['answer']>, work: Desk['work']): OrderMessage => {
    const { hash } = answer
    if (answer.kind === 'failed') return { kind: 'failed', hash, why: FAILED }
    const over = work?.hash === hash ? work.over : new Set<Stage>()
    const next = nextStage(answer.order, over, false)
    return {
      kind: 'order',
      hash,
      order: answer.order,
      ...(next === 'better' ? { more: true } : {}),
      ...(next === 'ways' ? { looking: true } : {}),
    }
  }

  const keep = (eveningId: string, kept: Kept) => {
    const write = (writes.get(eveningId) ?? Promise.resolve())
      .then(() => orders.save(eveningId, kept))
      .catch((why: unknown) => log(`the running order of evening ${eveningId} was not stored`, why))
      .then(() => {
        if (writes.get(eveningId) === write) writes.delete(eveningId)
      })
    writes.set(eveningId, write)
  }

  const fail = (eveningId: string, desk: Desk, hash: string, why: unknown) => {
    log(`evening ${eveningId} could not be planned`, why)
    desk.answer = { kind: 'failed', hash }
    show(eveningId, desk, messageOf(desk.answer, desk.work))
  }

  const adopt = ({ eveningId, hash, kind }: Slice, desk: Desk, order: RunningOrder, whole: boolean) => {
    const before = desk.answer?.kind === 'order' && desk.answer.hash === hash ? desk.answer.order : null
    // What was stopped half way stands only when it is better than what is shown. A first answer is of another moment.
    if (before && kind !== 'quick' && !whole && (kind === 'ways' || order.total >= before.total)) return
    const kept: Kept = { hash, order }
    desk.answer = { kind: 'order', ...kept }
    desk.last = order
    if (!before || !isDeepStrictEqual(before, order)) keep(eveningId, kept)
  }

  /** What its problem is planned from: the same for all stages, so that they differ in nothing but how long they look. */
  const workOf = (desk: Desk, hash: string): NonNullable<Desk['work']> => {
    if (desk.work?.hash !== hash) desk.work = freshWork(desk, hash, false)
    return desk.work
  }

  const freshWork = (desk: Desk, hash: string, again: boolean): NonNullable<Desk['work']> => ({
    hash,
    start: startOf(desk.evening, desk.last, clock.now()),
    over: new Set(),
    again,
  })

  const show = (eveningId: string, desk: Desk, message: OrderMessage) => {
    desk.shown = message
    send(eveningId, message)
    if (message.kind === 'order') for (const listener of orderListeners) listener(eveningId, message.order)
  }

  const hear = (slice: Slice, report: Report) => {
    const { eveningId, hash, kind } = slice
    const desk = desks.get(eveningId)
    if (!desk) return
    // The plan has moved on: its own slice is in line, or will be when the gathering is over.
    if (wanted(desk) !== hash) return
    const before = desk.shown ?? (desk.answer && messageOf(desk.answer, desk.work))
    if (report.kind === 'order') adopt(slice, desk, report.order, report.whole)
    else if (kind === 'quick' && report.kind === 'crashed' && desk.crashed !== hash) {
      desk.crashed = hash
      log(`planning evening ${eveningId} is tried once more`, report.why)
      return queue.put(slice)
    } else if (desk.answer?.kind === 'order' && desk.answer.hash === hash)
      log(`evening ${eveningId} keeps its running order: ${kind} failed`, report.why)
    else fail(eveningId, desk, hash, report.why)
    const { over, again: isAgain } = workOf(desk, hash)
    if (kind === 'quick' || report.kind !== 'order' || report.whole) over.add(kind)
    // What the prover found may have other clashes.
    if (kind === 'proof') over.delete('ways')
    const after = desk.answer && messageOf(desk.answer, desk.work)
    if (after?.kind === 'order' && !isOldNews(before, after, isAgain)) show(eveningId, desk, after)
    if (desk.leaving) clear(eveningId, desk)
    else goOn(eveningId, desk, hash)
  }

  /** Puts the next stage of what is shown in line, if there is one. */
  const goOn = (eveningId: string, desk: Desk, hash: string) => {
    const { answer, evening } = desk
    if (answer?.kind !== 'order' || answer.hash !== hash) return
    const { over, start } = workOf(desk, hash)
    const kind = nextStage(answer.order, over, runner.canProve)
    if (kind) queue.put({ eveningId, hash, evening, kind, start, order: answer.order })
  }
  const queue = openQueue(runner, hear)

  const clear = (eveningId: string, desk: Desk) => {
    desk.gathering?.cancel()
    queue.drop(eveningId)
    if (desks.get(eveningId) === desk) desks.delete(eveningId)
  }

  /** The gathering is over: does this plan need another running order? */
  const look = (eveningId: string, desk: Desk) => {
    const { anyway } = desk
    desk.gathering = null
    desk.anyway = false
    if (desks.get(eveningId) !== desk) return
    const hash = wanted(desk)
    if (hash === NO_PROBLEM) {
      queue.drop(eveningId)
      return fail(eveningId, desk, hash, 'see above')
    }
    const { answer, evening } = desk
    if (anyway && answer?.hash === hash) return again(eveningId, desk)
    const underWay = queue.of(eveningId)
    if (underWay?.hash === hash) return
    if (answer?.hash !== hash) {
      show(eveningId, desk, { kind: 'planning', hash })
      const { start } = workOf(desk, hash)
      return queue.put({ eveningId, hash, evening, kind: 'quick', start, order: null })
    }
    // Back to a plan that has its order: nobody wants the one under way any more.
    if (underWay) {
      queue.drop(eveningId)
      show(eveningId, desk, messageOf(answer, desk.work))
    }
    goOn(eveningId, desk, hash)
  }

  const gather = (eveningId: string, desk: Desk) => {
    const since = desk.gathering?.since ?? clock.now()
    desk.gathering?.cancel()
    const wait = Math.max(0, Math.min(GATHER.quiet, since + GATHER.most - clock.now()))
    const over = () => {
      void desk.looked.then(() => look(eveningId, desk))
    }
    desk.gathering = { since, cancel: clock.after(wait, over) }
  }

  const sitDown = (eveningId: string, evening: Evening): Desk => {
    const found = orders.load(eveningId).catch((why: unknown) => {
      log(`the stored running order of evening ${eveningId} could not be read`, why)
      return null
    })
    const desk: Desk = {
      evening,
      hash: null,
      answer: null,
      last: null,
      shown: null,
      work: null,
      crashed: null,
      gathering: null,
      anyway: false,
      leaving: false,
      looked: found.then((kept) => {
        if (!kept || desk.answer) return
        desk.answer = { kind: 'order', ...kept }
        desk.last = kept.order
      }),
    }
    desks.set(eveningId, desk)
    return desk
  }

  const plan = (eveningId: string, evening: Evening): Desk => {
    const desk = desks.get(eveningId) ?? sitDown(eveningId, evening)
    desk.leaving = false
    if (desk.evening !== evening) {
      desk.evening = evening
      desk.hash = null
    }
    gather(eveningId, desk)
    return desk
  }

  const again = (eveningId: string, desk: Desk) => {
    if (desks.get(eveningId) !== desk || desk.leaving) return
    if (desk.gathering) {
      desk.anyway = true
      return
    }
    // What has just begun to be planned is planned from now already.
    if (queue.of(eveningId)?.kind === 'quick') return
    const hash = wanted(desk)
    if (hash === NO_PROBLEM) return
    queue.drop(eveningId)
    if (desk.answer?.hash === hash) desk.shown ??= messageOf(desk.answer, desk.work)
    desk.work = freshWork(desk, hash, true)
    queue.put({ eveningId, hash, evening: desk.evening, kind: 'quick', start: desk.work.start, order: null })
  }

  return {
    plan(eveningId, evening) {
      plan(eveningId, evening)
    },
    again(eveningId) {
      const desk = desks.get(eveningId)
      if (desk) void desk.looked.then(() => again(eveningId, desk))
    },
    onOrder(listener) {
      orderListeners.push(listener)
    },
    async current(eveningId, evening) {
      const desk = desks.get(eveningId)?.evening === evening ? desks.get(eveningId) : plan(eveningId, evening)
      await desk?.looked
      const hash = hashOf(evening)
      return desk?.answer?.hash === hash ? messageOf(desk.answer, desk.work) : { kind: 'planning', hash }
    },
    async peek(eveningId, evening) {
      const desk = desks.get(eveningId)
      await desk?.looked
      const kept = desk ? null : await orders.load(eveningId)
      const answer = desk?.answer ?? (kept && { kind: 'order' as const, ...kept })
      const isOfPlan = answer?.hash === hashOf(evening)
      return {
        last: desk?.last ?? kept?.order ?? null,
        message: answer && isOfPlan ? messageOf(answer, desk?.work ?? null) : null,
      }
    },
    forget(eveningId) {
      const desk = desks.get(eveningId)
      if (!desk) return
      const underWay = queue.of(eveningId)
      desk.leaving = true
      if (underWay?.kind !== 'quick') clear(eveningId, desk)
    },
    async close() {
      for (const [eveningId, desk] of desks) clear(eveningId, desk)
      await runner.close()
      await Promise.all(writes.values())
    },
  }
}

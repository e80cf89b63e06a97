import type { Evening } from '#lib/domain/evening.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import type { HashAsked, HashTold } from './hash-worker.ts'
import type { Known } from './order-state.ts'
import type { PlanAsked, PlanTold } from './order-worker.ts'
import { whenIdle } from './when-idle.ts'

/** Works out on this device what the server works out: the hash of a plan's problem, and without a connection its order. */
export interface LocalOrder {
  /** Only the newest one asked for is answered. Null: this device cannot. */
  readonly hash: (evening: Evening, answer: (hash: string | null) => void) => void
  /** Answered at once and, unless another plan is asked for, again with a better order. `last`: what was shown before. */
  readonly plan: (evening: Evening, last: RunningOrder | null, answer: (known: Known | null) => void) => void
  /** The order of a plan that is only being tried, as good as it gets in a moment. `last`: the order that is shown. */
  readonly tryOut: (evening: Evening, last: RunningOrder, answer: (known: Known | null) => void) => void
  readonly close: () => void
}

export type Asked = HashAsked | PlanAsked
export type Told = HashTold | PlanTold
export type Task = 'hash' | 'plan' | 'trial'

/** Without the one the server's word is taken for which order is current, without the other nothing is planned offline. */
const CANNOT: Readonly<Record<Task, string>> = {
  hash: 'the running order cannot be checked on this device:',
  plan: 'the evening cannot be planned on this device:',
  trial: 'nothing can be tried out on this device:',
}

type Hear = (told: Told | null) => void
type Question = (job: number) => Asked

interface Line {
  readonly worker: Worker
  /** The one under way, and the newest that waits for it. */
  under: { readonly job: number; readonly hear: Hear } | null
  next: { readonly question: Question; readonly hear: Hear } | null
}

/**
 * Hashes, plans and trials have a worker each: a plan takes a second, and the next edit does not wait for it. The first is started at
 * once, for no order is shown without it; the second when that has answered and the page is idle, for without a connection its
 * program cannot be fetched any more; the third when something is first tried. Planned is from the moment that `now` says.
 */
export const openLocalOrder = (
  spawn: (task: Task) => Worker,
  now: () => number = Date.now,
  idle: (run: () => void) => () => void = whenIdle,
): LocalOrder => {
  let jobs = 0
  let callOff: (() => void) | null = null
  const lines = new Map<Task, Line>()

  const give = (line: Line, question: Question, hear: Hear) => {
    jobs += 1
    line.under = { job: jobs, hear }
    line.worker.postMessage(question(jobs))
  }

  const open = (task: Task) => {
    try {
      const line: Line = { worker: spawn(task), under: null, next: null }
      line.worker.onmessage = ({ data }: MessageEvent<Told>) => {
        const { under, next } = line
        if (data.job !== under?.job) return
        line.under = null
        line.next = null
        if (next) give(line, next.question, next.hear)
        else under.hear(data)
        callOff ??= idle(openPlan)
      }
      line.worker.onerror = (event) => {
        const newest = line.next ?? line.under
        lines.delete(task)
        line.worker.terminate()
        console.warn(CANNOT[task], event.message ?? 'its program could not be loaded')
        newest?.hear(null)
      }
      lines.set(task, line)
    } catch (why) {
      // A browser without module workers, or one that forbids them.
      console.warn(CANNOT[task], why)
    }
  }
  let isPlanOpen = false
  const openPlan = () => {
    if (!isPlanOpen) open('plan')
    isPlanOpen = true
  }
  open('hash')

  const ask = (task: Task, question: Question, hear: Hear) => {
    if (task === 'trial' && !lines.has(task)) open(task)
    if (task === 'plan') openPlan()
    const line = lines.get(task)
    if (!line) hear(null)
    else if (line.under) line.next = { question, hear }
    else give(line, question, hear)
  }

  const known = (told: Told | null) => (told?.kind === 'plan' ? told.known : null)

  const plan: LocalOrder['plan'] = (evening, last, answer) => {
    const nowMs = now()
    ask(
      'plan',
      (job) => ({ job, evening, kind: 'quick', last, nowMs, order: null }),
      (told) => {
        const first = known(told)
        answer(first && { ...first, more: true })
        if (!first) return
        ask(
          'plan',
          (job) => ({ job, evening, kind: 'better', last, nowMs, order: first.order }),
          (again) => {
            answer(known(again) ?? first)
          },
        )
      },
    )
  }

  return {
    hash: (evening, answer) =>
      ask(
        'hash',
        (job) => ({ job, evening, kind: 'hash' }),
        (told) => answer(told?.kind === 'hash' ? told.hash : null),
      ),
    plan,
    tryOut: (evening, last, answer) =>
      ask(
        'trial',
        (job) => ({ job, evening, kind: 'trial', last, nowMs: now(), order: null }),
        (told) => answer(known(told)),
      ),
    close() {
      callOff?.()
      for (const { worker } of lines.values()) worker.terminate()
      lines.clear()
    },
  }
}

export const browserOrder = (now?: () => number): LocalOrder =>
  openLocalOrder(
    (task) =>
      task === 'hash'
        ? new Worker(new URL('./hash-worker.ts', import.meta.url), { type: 'module' })
        : new Worker(new URL('./order-worker.ts', import.meta.url), { type: 'module' }),
    now,
  )

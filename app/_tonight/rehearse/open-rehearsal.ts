import * as Y from 'yjs'
import type { LocalOrder } from '#app/_sync/local-order.ts'
import type { OrderState, Plan, Wanted } from '#app/_sync/plan.ts'
import type { Timers } from '#app/_sync/timers.ts'
import { openTrials } from '#app/_sync/trial.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { GRACE } from '#lib/night/told.ts'
import { carryOutClaim } from '#lib/plan/carry-out-claim.ts'
import { afterWrites, carryOutTell, writeTold } from '#lib/plan/carry-out-tell.ts'
import { decideTell, type Tell } from '#lib/plan/decide-tell.ts'
import { readPlan } from '#lib/plan/read.ts'
import type { TellDecision } from '#lib/plan/tell-decision.ts'
import { openUndo } from '#lib/plan/undo.ts'
import type { Outcome } from '#lib/plan/wire.ts'
import { openPlayClock } from './play-clock.ts'
import { dueBy, type Happened, nextMoment, startOfRehearsal } from './played.ts'

export interface Played {
  /** The evening as it is played: a plan like any other, on this device alone. */
  readonly plan: Plan
  readonly speed: number
  readonly isPaused: boolean
  /** Whether everybody does their part on time without telling. */
  readonly byItself: boolean
}

export interface Rehearsal {
  readonly subscribe: (listener: () => void) => () => void
  readonly played: () => Played
  readonly setSpeed: (speed: number) => void
  readonly pause: (isPaused: boolean) => void
  readonly setByItself: (byItself: boolean) => void
  /** To the next moment at which anybody is wanted or anything ends; false when all is over. */
  readonly jump: () => boolean
  readonly close: () => void
}

export interface Stage {
  readonly from: Plan
  readonly order: RunningOrder
  /** Plans by the rehearsal's clock. */
  readonly local: (now: () => number) => LocalOrder
  readonly timers: Timers
}

const TICK_MS = 250
const FIRST_SPEED = 60
const LINK = { kind: 'saved' } as const

/**
 * Plays an evening on this device: a copy of the plan without anything told, a clock of its own, and an order that is planned here.
 * When it is closed nothing is left of it.
 */
export const openRehearsal = ({ from, order: first, local: spawn, timers }: Stage): Rehearsal => {
  const doc = new Y.Doc()
  Y.applyUpdate(doc, Y.encodeStateAsUpdate(from.doc))
  doc.getMap('night').clear()
  const undoing = openUndo(doc)
  const clock = openPlayClock(timers.now, startOfRehearsal(from.evening, first), FIRST_SPEED)
  const local = spawn(clock.now)
  const asker = { role: from.me?.role ?? 'cook', cook: from.me?.cook ?? null }
  const listeners = new Set<() => void>()
  let byItself = true
  let evening = readPlan(doc).evening
  let order: OrderState = { kind: 'current', order: first }
  /** What was already late when the rest was last planned: it is not planned again for the same. */
  let late = ''
  /** What was written for each thing that a person told here, and when by the rehearsal's clock. */
  const earlier = new Map<string, { readonly told: string; readonly was?: string | undefined; readonly atMs: number }>()
  let stopped = false

  const shown = (): RunningOrder => (order.kind === 'none' ? first : (order.order ?? first))

  const planAgain = () => {
    const last = shown()
    const of = evening
    order = { kind: 'planning', order: last }
    publish()
    local.plan(of, last, (known) => {
      if (stopped || of !== evening) return
      order = known ? { kind: 'current', order: known.order } : { kind: 'failed', order: last, why: 'it cannot be planned here' }
      publish()
    })
  }
  /** The plan reads otherwise now, by what a person did. */
  const changed = () => {
    evening = readPlan(doc).evening
    planAgain()
  }

  const tellAll = (all: readonly Happened[]) => {
    let reads = evening
    const writes = all.flatMap(({ say, atMs }) => {
      const decision = decideTell(reads, asker, { say }, atMs)
      if (decision.kind !== 'write') return []
      reads = afterWrites(reads, decision.writes)
      return decision.writes
    })
    writeTold(doc, writes)
    evening = readPlan(doc).evening
  }

  const tellAs = (op: string, tell: Tell): TellDecision => {
    // A minute to think is a minute at the table, not one of the evening's.
    const atMs = (tell.say.kind === 'take-back' ? earlier.get(tell.say.of)?.atMs : undefined) ?? clock.now()
    const decision = carryOutTell(doc, asker, tell, atMs, (of) => earlier.get(of) ?? null)
    if (decision.kind === 'write') earlier.set(op, { told: decision.told, was: decision.was, atMs })
    return decision
  }
  let ops = 0
  const newOp = (): string => {
    ops += 1
    return `rehearsal-${ops}`
  }
  const carryOut = (op: string, wanted: Wanted): Promise<Outcome> => {
    const decision = wanted.kind === 'tell' ? tellAs(op, wanted) : carryOutClaim(doc, asker, wanted)
    if (decision.kind === 'refused') return Promise.resolve({ op, kind: 'refused', why: decision.why })
    if (decision.kind !== 'nothing') changed()
    return Promise.resolve({ op, kind: 'done' })
  }

  const trials = openTrials(doc, local, () => order)
  const doing: Omit<Plan, 'evening' | 'order' | 'canUndo' | 'canRedo'> = {
    ...from,
    doc,
    link: LINK,
    asking: new Map(),
    told: [],
    waitingTells: 0,
    send: (wanted) => carryOut(newOp(), wanted),
    tell(say, as) {
      const op = newOp()
      return { op, answered: carryOut(op, { kind: 'tell', at: clock.now(), say, ...(as === undefined ? {} : { as }) }) }
    },
    hear: () => undefined,
    edit(change, run) {
      const made = undoing.edit(change, run)
      changed()
      return made
    },
    tryOut: trials.tryOut,
    undo() {
      if (undoing.undo()) changed()
    },
    redo() {
      if (undoing.redo()) changed()
    },
    onGuests: () => () => undefined,
    onAlerts: () => () => undefined,
    now: clock.now,
  }
  const snapshot = (): Played => ({
    plan: { ...doing, evening, order, canUndo: undoing.canUndo(), canRedo: undoing.canRedo() },
    speed: clock.speed(),
    isPaused: clock.isPaused(),
    byItself,
  })
  let played = snapshot()
  const publish = () => {
    played = snapshot()
    for (const listener of listeners) listener()
    trials.look()
  }

  /** Tells what has come about by itself, or plans the rest again when somebody has gone past the grace without a word. */
  const play = () => {
    if (order.kind !== 'current') return
    const due = dueBy(evening, order.order, clock.now() - (byItself ? 0 : GRACE))
    if (byItself) {
      if (due.length === 0) return
      tellAll(due)
      return publish()
    }
    const now = due.map(({ say }) => JSON.stringify(say)).join()
    if (now === late) return
    late = now
    if (due.length > 0) planAgain()
  }

  let stop: () => void = () => undefined
  const tick = () => {
    play()
    stop = timers.after(TICK_MS, tick)
  }
  const begin = () => {
    const startMs = clock.now()
    // What is done ahead is done when the rehearsal begins.
    tellAll([...dueBy(evening, first, startMs), { say: { kind: 'begin' }, atMs: startMs }])
    played = snapshot()
    stop = timers.after(TICK_MS, tick)
  }
  begin()

  return {
    subscribe(listener) {
      listeners.add(listener)
      return () => void listeners.delete(listener)
    },
    played: () => played,
    setSpeed(speed) {
      clock.setSpeed(speed)
      publish()
    },
    pause(isPaused) {
      clock.pause(isPaused)
      publish()
    },
    setByItself(next) {
      byItself = next
      publish()
    },
    jump() {
      const next = nextMoment(shown(), clock.now())
      if (next === null) return false
      clock.jump(next)
      play()
      publish()
      return true
    },
    close() {
      stopped = true
      stop()
      trials.close()
      local.close()
      undoing.close()
      doc.destroy()
    },
  }
}

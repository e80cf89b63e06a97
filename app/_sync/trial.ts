import * as Y from 'yjs'
import type { Evening } from '#lib/domain/evening.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { readPlan } from '#lib/plan/read.ts'
import type { LocalOrder } from './local-order.ts'
import type { OrderState, Trial, TryOut } from './plan.ts'

export interface Trials {
  readonly tryOut: TryOut
  /** The order may be the last word now. */
  readonly look: () => void
  readonly close: () => void
}

interface Asked {
  readonly change: (doc: Y.Doc) => void
  readonly asker: string
  readonly answer: (trial: Trial | null) => void
  readonly fail: (why: unknown) => void
}

/** `over` lays over the plan what is not in the document yet. */
export const openTrials = (
  doc: Y.Doc,
  local: LocalOrder,
  state: () => OrderState,
  over: (evening: Evening) => Evening = (evening) => evening,
): Trials => {
  const waiting = new Map<string, Asked>()
  let under: Asked | null = null

  const begin = (asked: Asked, before: RunningOrder) => {
    const evening = over(changedPlan(doc, asked.change))
    under = asked
    local.tryOut(evening, before, (known) => {
      if (under !== asked) return
      under = null
      const isOld = waiting.has(asked.asker)
      asked.answer(known === null || isOld ? null : { before, after: known.order, evening })
      look()
    })
  }

  const look = () => {
    const now = state()
    if (now.kind === 'failed') giveUp()
    if (under || now.kind !== 'current' || now.more) return
    const [first] = waiting.values()
    if (!first) return
    waiting.delete(first.asker)
    try {
      begin(first, now.order)
    } catch (why) {
      first.fail(why)
      look()
    }
  }

  const giveUp = () => {
    for (const { answer } of waiting.values()) answer(null)
    waiting.clear()
  }

  return {
    tryOut: (change, asker = '') =>
      new Promise((answer, fail) => {
        waiting.get(asker)?.answer(null)
        waiting.set(asker, { change, asker, answer, fail })
        look()
      }),
    look,
    close() {
      under?.answer(null)
      under = null
      giveUp()
    },
  }
}

/** The plan as it would read with a change. */
export const changedPlan = (doc: Y.Doc, change: (doc: Y.Doc) => void): Evening => {
  const scratch = new Y.Doc()
  try {
    Y.applyUpdate(scratch, Y.encodeStateAsUpdate(doc))
    change(scratch)
    return readPlan(scratch).evening
  } finally {
    scratch.destroy()
  }
}

'use client'

import { useEffect, useMemo, useRef, useState } from 'react'
import { newId } from '#app/_frame/new-id.ts'
import type { Trial } from '#app/_sync/plan.ts'
import { changedPlan } from '#app/_sync/trial.ts'
import { usePlan } from '#app/_sync/use-plan.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { Guest } from '#lib/domain/people.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { type Proposal, takeAll } from './proposals.ts'

/** How things stood when this page was opened, or when the host had seen what was new. */
export interface Stood {
  readonly guests: readonly Guest[]
  readonly evening: Evening
  /** null: no running order of that plan was there. */
  readonly order: RunningOrder | null
}

export interface Late {
  readonly stood: Stood
  readonly seen: () => void
  /** The plan with all proposals taken. */
  readonly proposed: Evening
  /** The order as it stood; null when there was none. */
  readonly before: RunningOrder | null
  /** The order with them; null while it is worked out, or when that cannot be. */
  readonly order: RunningOrder | null
  readonly isPlanning: boolean
}

/** What the guests' answers change against how things stood, and what would come of taking every proposal. */
export const useLate = (guests: readonly Guest[], isNew: (stood: Stood) => boolean, proposals: readonly Proposal[]): Late => {
  const plan = usePlan()
  const { evening, doc, tryOut } = plan
  const current = plan.order.kind === 'current' && plan.order.more !== true ? plan.order.order : null
  const [stood, setStood] = useState<Stood>({ guests, evening, order: current })
  const changes = isNew(stood)
  // As long as nothing is new the plan that others change is how things stand.
  useEffect(() => {
    if (!changes)
      setStood((before) =>
        before.evening === evening && before.order === current ? before : { guests, evening, order: current },
      )
  }, [changes, guests, evening, current])

  const key = JSON.stringify(proposals)
  const proposed = useMemo(() => {
    const wanted = JSON.parse(key) as readonly Proposal[]
    return wanted.length === 0 ? evening : changedPlan(doc, (copy) => void takeAll(copy, wanted, newId))
  }, [doc, evening, key])

  const [trial, setTrial] = useState<{
    readonly of: string
    readonly against: RunningOrder
    readonly result: Trial | null
  } | null>(null)
  const latest = useRef(0)
  useEffect(() => {
    const wanted = JSON.parse(key) as readonly Proposal[]
    const mine = ++latest.current
    if (!changes || wanted.length === 0 || current === null) return
    const note = (result: Trial | null) => {
      if (mine === latest.current) setTrial({ of: key, against: current, result })
    }
    void tryOut((copy) => void takeAll(copy, wanted, newId), 'guests').then(note, (why: unknown) => {
      console.error('what the guests ask for could not be tried', why)
      note(null)
    })
  }, [changes, key, current, tryOut])

  const isTried = trial !== null && trial.of === key && trial.against === current
  const isEmpty = proposals.length === 0
  return {
    stood,
    seen: () => setStood({ guests, evening, order: current }),
    proposed,
    before: stood.order ?? trial?.result?.before ?? null,
    order: isEmpty ? current : isTried ? (trial.result?.after ?? null) : null,
    isPlanning: plan.order.kind !== 'failed' && (current === null || !(isEmpty || isTried)),
  }
}

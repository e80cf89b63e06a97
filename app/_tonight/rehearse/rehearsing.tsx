'use client'

import { type ReactNode, useCallback, useEffect, useMemo, useState, useSyncExternalStore } from 'react'
import { browserOrder } from '#app/_sync/local-order.ts'
import { realTimers } from '#app/_sync/timers.ts'
import { PlanContext, usePlan } from '#app/_sync/use-plan.ts'
import { NightSourceContext } from '#app/_tonight/night-source.ts'
import { usePlanSource } from '#app/_tonight/use-plan-source.ts'
import { openRehearsal, type Rehearsal } from './open-rehearsal.ts'
import { RehearsalBar } from './rehearsal-bar.tsx'
import { RehearsalContext } from './use-rehearsal.ts'

const nothing = () => () => undefined
const none = () => null

/** While a rehearsal plays, all that stands below it is that of the rehearsal; otherwise the evening itself. */
export function Rehearsing({ children }: { readonly children: ReactNode }) {
  const plan = usePlan()
  const [rehearsal, setRehearsal] = useState<Rehearsal | null>(null)
  const order = plan.order.kind === 'none' ? null : plan.order.order
  useEffect(() => () => rehearsal?.close(), [rehearsal])
  const played = useSyncExternalStore(rehearsal?.subscribe ?? nothing, rehearsal?.played ?? none, none)

  const leave = useCallback(() => setRehearsal(null), [])
  const start = useMemo(
    () =>
      order === null ? null : () => setRehearsal(openRehearsal({ from: plan, order, local: browserOrder, timers: realTimers })),
    [plan, order],
  )
  const value = useMemo(() => ({ played, rehearsal, start, leave }), [played, rehearsal, start, leave])
  return (
    <RehearsalContext value={value}>
      {played && rehearsal ? (
        <PlanContext value={played.plan}>
          <Source>
            <RehearsalBar />
            {children}
          </Source>
        </PlanContext>
      ) : (
        children
      )}
    </RehearsalContext>
  )
}

/** Faster than the evening itself, the board looks at the clock more often. */
const EVERY_MS = 1_000

function Source({ children }: { readonly children: ReactNode }) {
  const plain = usePlanSource()
  const source = useMemo(() => ({ ...plain, everyMs: EVERY_MS, isRehearsal: true }), [plain])
  return <NightSourceContext value={source}>{children}</NightSourceContext>
}

'use client'

import { useEffect, useRef, useState } from 'react'
import type { Plan } from '#app/_sync/plan.ts'
import { browserShelf } from '#app/_sync/shelf.ts'
import { usePlan } from '#app/_sync/use-plan.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { type Alert, alertsOf } from '#lib/night/alerts.ts'
import type { Fired } from '#lib/plan/wire.ts'
import { alarmCalls, type Due, dueOf, isLive, isOpen, ringsOf } from './ringing.ts'
import { openRung, type Rung } from './rung.ts'
import { hearWorker } from './worker-line.ts'

/** How often a device without a connection looks whether something is due. */
const LOOK_MS = 1_000

/** What the last order calls for, worked out once for each. */
const openAlerts = () => {
  let of: { readonly evening: Evening; readonly order: RunningOrder; readonly alerts: readonly Alert[] } | null = null
  return (evening: Evening, order: RunningOrder): readonly Alert[] => {
    if (of?.evening !== evening || of.order !== order) of = { evening, order, alerts: alertsOf(evening, order) }
    return of.alerts
  }
}

interface Ringing {
  /** What rang while the device was away and is not seen to yet. */
  readonly missed: readonly Due[]
  readonly seen: () => void
  /** What rang last. */
  readonly last: readonly Due[]
}

/** Rings on this device: for what the server says has rung, for alarms, and without a connection for what its own plan says is due. */
export const useRinging = (
  eveningId: string,
  cook: string | null,
  ring: (due: readonly Due[]) => void,
  canRing: () => boolean,
): Ringing => {
  const plan = usePlan()
  const latest = useRef({ plan, cook, ring, canRing })
  latest.current = { plan, cook, ring, canRing }
  const rung = useRef<Rung | null>(null)
  const [missed, setMissed] = useState<readonly Due[]>([])
  const [last, setLast] = useState<readonly Due[]>([])

  const hear = useRef((due: readonly Due[]) => {
    const now = latest.current
    const { evening } = now.plan
    const nowMs = now.plan.now()
    const known = rung.current?.known(nowMs)
    if (!known) return
    const found = ringsOf(due, evening, known, now.cook, nowMs)
    rung.current?.add(found.settled, nowMs)
    if (found.missed.length > 0) setMissed((before) => [...before, ...found.missed])
    if (found.ring.length === 0) return
    setLast(found.ring)
    now.ring(found.ring)
  })

  const { onAlerts } = plan
  useEffect(() => {
    const book = openRung(browserShelf(), eveningId)
    book.known(latest.current.plan.now())
    rung.current = book
    const toRing = (fired: readonly Fired[]) => hear.current(fired)
    const stopHearing = onAlerts(toRing)
    const alerts = openAlerts()
    const dueHere = ({ evening, order, link, now }: Plan): readonly Due[] =>
      link.kind === 'offline' && order.kind !== 'none' && order.order ? dueOf(alerts(evening, order.order), now()) : []
    const look = () => {
      const { plan: now } = latest.current
      const due = [...alarmCalls(now.evening), ...(isLive(now.evening) ? dueHere(now) : [])]
      if (due.length > 0) hear.current(due)
    }
    const timer = setInterval(look, LOOK_MS)
    return () => {
      clearInterval(timer)
      stopHearing()
    }
  }, [eveningId, onAlerts])

  // What was told by a notification is not rung for again, and the other way round.
  useEffect(
    () =>
      hearWorker(
        () => latest.current.canRing(),
        (alert) => rung.current?.add([alert], latest.current.plan.now()),
      ),
    [],
  )

  return { missed: missed.filter((call) => isOpen(plan.evening, call)), seen: () => setMissed([]), last }
}

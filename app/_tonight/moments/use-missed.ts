'use client'

import { useMemo, useRef } from 'react'
import { useNight } from '#app/_tonight/use-night.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { type CatchUp, catchUpOf } from '#lib/night/catch-up.ts'

/**
 * What should have begun or ended by now and was not told. A new order pushes what is not begun along with the clock, so the order of
 * when somebody last told something is kept, as far as this page has seen it.
 */
export const useMissed = (): readonly CatchUp[] => {
  const { evening, order, nowMs } = useNight()
  const told = JSON.stringify(evening.night)
  const kept = useRef<{ readonly told: string; readonly order: RunningOrder | null } | null>(null)
  if (kept.current === null || kept.current.told !== told || kept.current.order === null) kept.current = { told, order }
  const before = kept.current.order
  return useMemo(
    () => (order === null ? [] : catchUpOf(evening, order, nowMs, before ? { before } : {})),
    [evening, order, nowMs, before],
  )
}

'use client'

import { useMemo } from 'react'
import { usePlan } from '#app/_sync/use-plan.ts'
import type { NightSource } from './night-source.ts'

const EVERY_MS = 5_000

/** The night as the shared plan and the server's clock have it. */
export const usePlanSource = (): NightSource => {
  const { evening, order, link, me, now, tell } = usePlan()
  return useMemo(
    () => ({
      evening,
      order,
      link,
      own: me?.cook ?? null,
      isHost: me?.role === 'host',
      now,
      everyMs: EVERY_MS,
      tell,
      isRehearsal: false,
    }),
    [evening, order, link, me, now, tell],
  )
}

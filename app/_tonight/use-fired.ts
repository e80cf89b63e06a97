'use client'

import { useEffect, useState } from 'react'
import { usePlan } from '#app/_sync/use-plan.ts'

/** When alerts fired, by their id: since when something is due, however often the order was made anew. */
export const useFired = (): ReadonlyMap<string, number> => {
  const { onAlerts } = usePlan()
  const [fired, setFired] = useState<ReadonlyMap<string, number>>(new Map())
  useEffect(
    () => onAlerts((alerts) => setFired((before) => new Map([...before, ...alerts.map(({ id, at }) => [id, at] as const)]))),
    [onAlerts],
  )
  return fired
}

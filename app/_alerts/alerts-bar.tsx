'use client'

import { useParams } from 'next/navigation'
import { useNight } from '#app/_tonight/use-night.ts'
import { Alerts } from './alerts.tsx'

/** How this device calls, below the board of the night; a rehearsal rings nothing. */
export function AlertsBar() {
  const { cook, shape, isRehearsal } = useNight()
  const { id } = useParams<{ readonly id: string }>()
  // Who has not said whose board it is hears what concerns everybody.
  return isRehearsal ? null : <Alerts eveningId={id} cook={shape === 'worktop' ? null : (cook ?? '')} shape={shape} />
}

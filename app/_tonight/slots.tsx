'use client'

import dynamic from 'next/dynamic'
import { laterPiece } from '#app/_ui/later.tsx'

/** Sound, the screen kept on, alerts while the phone sleeps. */
export const AlertsBar = dynamic(
  laterPiece(() => import('#app/_alerts/alerts-bar.tsx').then((module) => module.AlertsBar)),
  { ssr: false, loading: () => null },
)

'use client'

import dynamic from 'next/dynamic'

/** Sound, the screen kept on, alerts while the phone sleeps. */
export const AlertsBar = dynamic(() => import('#app/_alerts/alerts-bar.tsx').then((module) => module.AlertsBar), {
  ssr: false,
  loading: () => null,
})

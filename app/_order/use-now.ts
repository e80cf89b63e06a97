'use client'

import { useEffect, useState } from 'react'

const STEP_MS = 60_000

/** The server's clock, once a minute: the now-line steps, it does not crawl. */
export const useNow = (serverNow: () => number): number => {
  const [now, setNow] = useState(serverNow)
  useEffect(() => {
    setNow(serverNow())
    const timer = setInterval(() => setNow(serverNow()), STEP_MS)
    return () => clearInterval(timer)
  }, [serverNow])
  return now
}

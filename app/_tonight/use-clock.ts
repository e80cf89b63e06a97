'use client'

import { useEffect, useState } from 'react'

/** A clock, looked at every so often, and again when the page comes back into sight. */
export const useClock = (now: () => number, everyMs: number): number => {
  const [time, setTime] = useState(now)
  useEffect(() => {
    const look = () => setTime(now())
    look()
    const timer = setInterval(look, everyMs)
    document.addEventListener('visibilitychange', look)
    return () => {
      clearInterval(timer)
      document.removeEventListener('visibilitychange', look)
    }
  }, [now, everyMs])
  return time
}

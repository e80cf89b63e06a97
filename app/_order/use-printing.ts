'use client'

import { useEffect, useState } from 'react'
import { flushSync } from 'react-dom'

/** Whether the page is being printed: what is only for paper is made only then. */
export const usePrinting = (): boolean => {
  const [printing, setPrinting] = useState(false)
  useEffect(() => {
    // The browser takes its picture as soon as this event is over, so React must have painted by then.
    const before = () => flushSync(() => setPrinting(true))
    const after = () => setPrinting(false)
    window.addEventListener('beforeprint', before)
    window.addEventListener('afterprint', after)
    return () => {
      window.removeEventListener('beforeprint', before)
      window.removeEventListener('afterprint', after)
    }
  }, [])
  return printing
}

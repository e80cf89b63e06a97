'use client'

import { useEffect, useState } from 'react'

const READ_AFTER_MS = 350

/** Runs `read` a moment after the text last changed, so that typing and a large paste stay light. */
export const useReading = (text: string, again: string, read: (text: string) => void): boolean => {
  const [busy, setBusy] = useState(false)
  // biome-ignore lint/correctness/useExhaustiveDependencies: `again` stands for everything else that it is read by
  useEffect(() => {
    setBusy(true)
    const timer = setTimeout(() => {
      read(text)
      setBusy(false)
    }, READ_AFTER_MS)
    return () => clearTimeout(timer)
  }, [text, again])
  return busy
}

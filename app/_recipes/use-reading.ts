'use client'

import { useEffect, useState } from 'react'

const READ_AFTER_MS = 350
/** Reading grows with the text: what is long is read when the typing rests. */
const waitFor = (text: string): number => READ_AFTER_MS + Math.min(2000, Math.floor(text.length / 40))

/** Runs `read` a moment after the text last changed, so that typing and a large paste stay light. */
export const useReading = (text: string, again: string, read: (text: string) => void): boolean => {
  const [busy, setBusy] = useState(false)
  // biome-ignore lint/correctness/useExhaustiveDependencies: `again` stands for everything else that it is read by
  useEffect(() => {
    setBusy(true)
    const timer = setTimeout(() => {
      read(text)
      setBusy(false)
    }, waitFor(text))
    return () => clearTimeout(timer)
  }, [text, again])
  return busy
}

'use client'

import { useCallback, useSyncExternalStore } from 'react'
import type { Measures } from '#lib/domain/unit-words.ts'

const KEY = 'tableward-measures'
const CHANGED = 'tableward-measures'
const KNOWN: readonly Measures[] = ['metric', 'uk', 'us', 'au']

const stored = (): string => {
  try {
    return window.localStorage.getItem(KEY) ?? ''
  } catch {
    // Storage is refused in some private windows: the recipe's own measures then.
    return ''
  }
}

const subscribe = (onChange: () => void): (() => void) => {
  window.addEventListener(CHANGED, onChange)
  window.addEventListener('storage', onChange)
  return () => {
    window.removeEventListener(CHANGED, onChange)
    window.removeEventListener('storage', onChange)
  }
}

/** In whose measures this person reads amounts, kept on the device; null: in the recipe's own. */
export const useReader = (): readonly [Measures | null, (measures: Measures | null) => void] => {
  const kept = useSyncExternalStore(subscribe, stored, () => '')
  const keep = useCallback((measures: Measures | null) => {
    try {
      window.localStorage.setItem(KEY, measures ?? '')
    } catch {
      return
    }
    window.dispatchEvent(new Event(CHANGED))
  }, [])
  return [KNOWN.find((each) => each === kept) ?? null, keep]
}

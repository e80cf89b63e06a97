'use client'

import { useEffect, useSyncExternalStore } from 'react'

/** Something a person is writing, kept on this device until it is made. */
export interface Kept<T> {
  readonly get: () => T
  readonly set: (next: T) => void
  /** Whether what stands there now is on the device; false when the device keeps nothing, or no more. */
  readonly isKept: () => boolean
  readonly subscribe: (listener: () => void) => () => void
  /** Forgets it here and on the device. */
  readonly clear: () => void
  /** Writes it down at once. */
  readonly flush: () => void
}

const WRITE_MS = 300

/** As much of localStorage as is needed; a browser may refuse any of it. */
export interface Shelf {
  getItem(key: string): string | null
  setItem(key: string, value: string): void
  removeItem(key: string): void
}

/**
 * Opens what is kept under a key. What another version of the page kept is handed to `rescue`, and so is what cannot be read; what
 * it gives back is where one begins.
 */
export const openKept = <T>(
  shelf: Shelf | null,
  key: string,
  version: number,
  start: T,
  rescue: (old: unknown) => T,
): Kept<T> => {
  let value = start
  let kept = shelf !== null
  let timer: ReturnType<typeof setTimeout> | null = null
  const listeners = new Set<() => void>()
  const tell = () => {
    for (const listener of listeners) listener()
  }
  try {
    const found = shelf?.getItem(key) ?? null
    if (found !== null) {
      const read = JSON.parse(found) as { version?: unknown; value?: unknown }
      value = read.version === version ? (read.value as T) : rescue(read.value)
    }
  } catch {
    value = start
  }
  const flush = () => {
    if (timer !== null) clearTimeout(timer)
    timer = null
    if (value === start) return
    const before = kept
    try {
      shelf?.setItem(key, JSON.stringify({ version, value }))
      kept = shelf !== null
    } catch {
      // No room, or none is given: it stays on the page, and that is said.
      kept = false
    }
    if (before !== kept) tell()
  }
  return {
    get: () => value,
    set: (next) => {
      value = next
      timer ??= setTimeout(flush, WRITE_MS)
      tell()
    },
    isKept: () => kept,
    subscribe: (listener) => {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
    clear: () => {
      if (timer !== null) clearTimeout(timer)
      timer = null
      value = start
      try {
        shelf?.removeItem(key)
      } catch {
        kept = false
      }
      tell()
    },
    flush,
  }
}

/** This browser's own; null where it gives none. */
export const browserShelf = (): Shelf | null => {
  try {
    return typeof window === 'undefined' ? null : window.localStorage
  } catch {
    return null
  }
}

/** What is kept, as it stands; a word that is being written is taken in, and all of it written down, when the page goes. */
export const useKept = <T>(kept: Kept<T>, start: T): { readonly value: T; readonly isKept: boolean } => {
  const value = useSyncExternalStore(kept.subscribe, kept.get, () => start)
  const isKept = useSyncExternalStore(kept.subscribe, kept.isKept, () => true)
  useEffect(() => {
    const leave = () => {
      if (document.activeElement instanceof HTMLElement) document.activeElement.blur()
      kept.flush()
    }
    const hide = () => {
      if (document.visibilityState === 'hidden') kept.flush()
    }
    window.addEventListener('pagehide', leave)
    document.addEventListener('visibilitychange', hide)
    return () => {
      kept.flush()
      window.removeEventListener('pagehide', leave)
      document.removeEventListener('visibilitychange', hide)
    }
  }, [kept])
  return { value, isKept }
}

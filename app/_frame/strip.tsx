'use client'

import { createContext, type ReactNode, useCallback, useContext, useEffect, useMemo, useState } from 'react'
import css from './strip.module.css'

interface Strip {
  readonly id: number
  readonly text: string
  readonly undo: (() => void) | null
}

type Show = (text: string, undo: (() => void) | null) => void

const StripContext = createContext<Show>(() => undefined)

/** Shows the strip: what was just done, and for 20 s the way back. */
export const useStrip = (): Show => useContext(StripContext)

const SHOWN_MS = 20_000

export function StripProvider({ children }: { readonly children: ReactNode }) {
  const [strip, setStrip] = useState<Strip | null>(null)
  const show = useCallback<Show>((text, undo) => setStrip((before) => ({ id: (before?.id ?? 0) + 1, text, undo })), [])
  useEffect(() => {
    if (!strip) return
    const timer = setTimeout(() => setStrip((now) => (now?.id === strip.id ? null : now)), SHOWN_MS)
    return () => clearTimeout(timer)
  }, [strip])
  const content = useMemo(
    () => (
      <div className={css.place} role="status">
        {strip ? (
          <div className={css.strip}>
            <span>{strip.text}</span>
            {strip.undo ? (
              <button
                type="button"
                onClick={() => {
                  strip.undo?.()
                  setStrip(null)
                }}
              >
                Bring it back
              </button>
            ) : (
              <button type="button" onClick={() => setStrip(null)}>
                All right
              </button>
            )}
          </div>
        ) : null}
      </div>
    ),
    [strip],
  )
  return (
    <StripContext value={show}>
      {children}
      {content}
    </StripContext>
  )
}

'use client'

import { useCallback, useEffect, useState } from 'react'
import { useWindowWidth } from '#app/_sync/first-look.tsx'
import { browserShelf } from '#app/_sync/shelf.ts'

/** How this device shows the night: on the worktop for everybody, in a cook's hand, or beside a plate. */
export type Shape = 'worktop' | 'mine' | 'table'
export const SHAPES: readonly Shape[] = ['worktop', 'mine', 'table']

export interface Device {
  readonly shape: Shape
  /** Whose it is, where its member has no cook of their own, or takes another's place. */
  readonly cook: string | null
  readonly setShape: (shape: Shape) => void
  readonly setCook: (cook: string) => void
}

/** From here on there is room for everybody's work. */
const WORKTOP_FROM_PX = 700
const WORKTOP_FROM = `(min-width: ${WORKTOP_FROM_PX}px)`

const keyOf = (eveningId: string, what: string): string => `tableward/${eveningId}/tonight/${what}`

/** What was chosen on this device, for this evening. */
export const useDevice = (eveningId: string): Device => {
  const [shelf] = useState(browserShelf)
  const [chosen, setChosen] = useState(() => SHAPES.find((shape) => shape === shelf.get(keyOf(eveningId, 'shape'))) ?? null)
  const [cook, keepCook] = useState(() => shelf.get(keyOf(eveningId, 'cook')))
  const width = useWindowWidth()
  const [isWide, setWide] = useState(width >= WORKTOP_FROM_PX)
  useEffect(() => {
    const query = window.matchMedia(WORKTOP_FROM)
    const look = () => setWide(query.matches)
    look()
    query.addEventListener('change', look)
    return () => query.removeEventListener('change', look)
  }, [])
  return {
    shape: chosen ?? (isWide ? 'worktop' : 'mine'),
    cook,
    setShape: useCallback(
      (shape: Shape) => {
        shelf.set(keyOf(eveningId, 'shape'), shape)
        setChosen(shape)
      },
      [shelf, eveningId],
    ),
    setCook: useCallback(
      (id: string) => {
        shelf.set(keyOf(eveningId, 'cook'), id)
        keepCook(id)
      },
      [shelf, eveningId],
    ),
  }
}

'use client'

import { createContext, useContext, useMemo, useState } from 'react'
import { type Plating, platingOf } from '#lib/night/plating.ts'
import type { Night } from './use-night.ts'

export interface PlatingPage {
  /** Of the course that is near; null when none is. */
  readonly plating: Plating | null
  readonly isOpen: boolean
  readonly open: () => void
  readonly close: () => void
}

const NONE: PlatingPage = { plating: null, isOpen: false, open: () => undefined, close: () => undefined }

export const PlatingContext = createContext<PlatingPage>(NONE)
export const usePlatingPage = (): PlatingPage => useContext(PlatingContext)

/** The page opens by itself for who plates now, unless they have closed it; everybody else opens it by hand. */
export const usePlating = ({ evening, order, board, nowMs }: Night): PlatingPage => {
  const [chosen, setChosen] = useState<{ readonly course: string; readonly isOpen: boolean } | null>(null)
  const course = board?.plateNear?.course ?? null
  const plating = useMemo(
    () => (order && course !== null ? platingOf(evening, order, course, nowMs) : null),
    [evening, order, course, nowMs],
  )
  if (!board || !plating || course === null) return NONE
  const plates = board.now.some(({ hands }) => hands?.role === 'plate' && hands.course === course)
  return {
    plating,
    isOpen: chosen?.course === course ? chosen.isOpen : plates,
    open: () => setChosen({ course, isOpen: true }),
    close: () => setChosen({ course, isOpen: false }),
  }
}

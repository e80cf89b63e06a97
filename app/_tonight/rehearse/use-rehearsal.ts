'use client'

import { createContext, useContext } from 'react'
import type { Played, Rehearsal } from './open-rehearsal.ts'

export interface Rehearsing {
  /** Null: it is the evening itself that is shown. */
  readonly played: Played | null
  readonly rehearsal: Rehearsal | null
  /** Null: there is no order to play. */
  readonly start: (() => void) | null
  readonly leave: () => void
}

export const RehearsalContext = createContext<Rehearsing>({
  played: null,
  rehearsal: null,
  start: null,
  leave: () => undefined,
})

/** Whether what is shown is a rehearsal, and how one begins and ends. */
export const useRehearsing = (): Rehearsing => useContext(RehearsalContext)

/** What is being played; null where it is the evening itself. */
export const useRehearsal = (): Played | null => useRehearsing().played

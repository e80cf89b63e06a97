'use client'

import { createContext, useContext } from 'react'
import type { Change } from '#lib/night/changes.ts'

/** What a new order changes for one cook. */
export interface CookChanges {
  readonly cook: string
  readonly changes: readonly Change[]
}

export const ChangesContext = createContext<readonly CookChanges[]>([])

/** What the last new order changed for those whose board it is; nothing after a minute. */
export const useChanges = (): readonly CookChanges[] => useContext(ChangesContext)

/** Whether a step has just been moved. */
export const useChanged = (step: string): boolean =>
  useChanges().some(({ changes }) => changes.some((change) => 'step' in change && change.step === step))

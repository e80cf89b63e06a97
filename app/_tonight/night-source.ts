'use client'

import { createContext, useContext } from 'react'
import type { Link, OrderState } from '#app/_sync/plan.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { Say } from '#lib/plan/say.ts'
import type { Outcome } from '#lib/plan/wire.ts'

/** Where a night comes from: the evening itself, or a rehearsal of it with its own clock. */
export interface NightSource {
  readonly evening: Evening
  readonly order: OrderState
  readonly link: Link
  /** The cook that this device's member is. */
  readonly own: string | null
  readonly isHost: boolean
  /** Milliseconds since 1970. */
  readonly now: () => number
  /** How often the clock is looked at. */
  readonly everyMs: number
  /** `as`: the cook who says it, where the device is not one cook's own. The operation is known at once; the answer may take its time. */
  readonly tell: (say: Say, as?: string) => { readonly op: string; readonly answered: Promise<Outcome> }
  /** Nothing of it reaches anybody else. */
  readonly isRehearsal: boolean
}

export const NightSourceContext = createContext<NightSource | null>(null)

/** Where this night comes from. Only below a `NightSourceContext`. */
export const useNightSource = (): NightSource => {
  const source = useContext(NightSourceContext)
  if (!source) throw new Error('useNightSource needs a NightSourceContext above it')
  return source
}

'use client'

import { createContext, useContext } from 'react'
import type { Link, OrderState } from '#app/_sync/plan.ts'
import type { Names } from '#app/_words/names.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import type { Board } from '#lib/night/board.ts'
import type { Said, Say } from '#lib/plan/say.ts'
import type { Shape } from './device.ts'

/** What was told last on this device, for as long as it may be taken back with one tap. */
export interface Last {
  readonly op: string
  readonly say: Said
  readonly atMs: number
}

export interface Night {
  readonly evening: Evening
  /** The newest that there is, also when it is being planned again. */
  readonly order: RunningOrder | null
  readonly orderState: OrderState
  /** The order is from before the evening began: its times are past, and it is being planned again. */
  readonly isFromBefore: boolean
  /** Null without an order. */
  readonly board: Board | null
  readonly nowMs: number
  /** Whose board it is; null: everybody's. */
  readonly cook: string | null
  readonly own: string | null
  readonly isHost: boolean
  readonly shape: Shape
  readonly setShape: (shape: Shape) => void
  readonly setCook: (cook: string) => void
  /** Tells the others what happened; `as`: the cook who says it, on a device that is everybody's. */
  readonly tell: (say: Say, as?: string) => void
  readonly takeBack: () => void
  readonly last: Last | null
  /** Why the last thing told was refused, in words that say what to do. */
  readonly refused: string | null
  readonly link: Link
  readonly names: Names
  readonly isRehearsal: boolean
}

export const NightContext = createContext<Night | null>(null)

/** The night as this device shows it. Only below a `NightProvider`. */
export const useNight = (): Night => {
  const night = useContext(NightContext)
  if (!night) throw new Error('useNight needs a NightProvider above it')
  return night
}

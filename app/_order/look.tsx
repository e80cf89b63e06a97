'use client'

import { createContext, type ReactNode, useCallback, useContext, useEffect, useMemo, useState } from 'react'
import type * as Y from 'yjs'
import type { Trial } from '#app/_sync/plan.ts'
import { usePlan } from '#app/_sync/use-plan.ts'

/** A change that one person looks at before it is made. */
export interface Look {
  /** The same for the same change. */
  readonly key: string
  /** What one is looking at: "what if everybody sat down at 20:00". */
  readonly title: string
  /** Makes the change in a copy of the plan; gives what is wrong with it, or null. */
  readonly make: (copy: Y.Doc) => string | null
  readonly keepWords: string
  readonly keep: () => void
  /** Why this person cannot keep it; null: they can. */
  readonly barred: string | null
}

/** What has come of looking. `again`: the plan has changed meanwhile, and what is shown is of before. */
export type Seen =
  | { readonly kind: 'trying' }
  | { readonly kind: 'seen'; readonly trial: Trial; readonly again: boolean }
  | { readonly kind: 'wrong'; readonly why: string }

interface Looking {
  readonly look: Look | null
  readonly seen: Seen
  readonly lookAt: (look: Look) => void
  readonly leave: () => void
}

const LookContext = createContext<Looking | null>(null)

/** What this person looks at. Only below a `LookProvider`. */
export const useLook = (): Looking => {
  const looking = useContext(LookContext)
  if (!looking) throw new Error('useLook needs a LookProvider above it')
  return looking
}

const CANNOT = 'This device cannot work it out just now. Leave it and look again in a moment.'

interface Came {
  readonly look: Look
  /** The plan and the order that it was tried on. */
  readonly of: unknown
  readonly seen: Exclude<Seen, { kind: 'trying' }>
}

/** Tries what is looked at on the newest plan, again whenever that or its order changes. Nobody else sees anything of it. */
export function LookProvider({ children }: { readonly children: ReactNode }) {
  const { evening, order, tryOut } = usePlan()
  const [look, setLook] = useState<Look | null>(null)
  const [came, setCame] = useState<Came | null>(null)
  const shown = order.kind === 'current' && !order.more ? order.order : null
  const of = useMemo(() => ({ evening, shown }), [evening, shown])

  useEffect(() => {
    if (!look) return
    let isOver = false
    let wrong: string | null = null
    const note = (seen: Came['seen']) => {
      if (!isOver) setCame({ look, of, seen })
    }
    void tryOut((copy) => {
      wrong = look.make(copy)
    }, 'look').then(
      (trial) => {
        if (wrong !== null) note({ kind: 'wrong', why: wrong })
        else note(trial ? { kind: 'seen', trial, again: false } : { kind: 'wrong', why: CANNOT })
      },
      (why: unknown) => {
        console.error('a change could not be tried', why)
        note({ kind: 'wrong', why: CANNOT })
      },
    )
    return () => {
      isOver = true
    }
  }, [look, of, tryOut])

  const leave = useCallback(() => {
    setLook(null)
    setCame(null)
  }, [])
  const seen = useMemo((): Seen => {
    if (!came || came.look.key !== look?.key) return { kind: 'trying' }
    return came.seen.kind === 'seen' ? { ...came.seen, again: came.of !== of } : came.seen
  }, [came, look, of])
  const looking = useMemo(() => ({ look, seen, lookAt: setLook, leave }), [look, seen, leave])
  return <LookContext value={looking}>{children}</LookContext>
}

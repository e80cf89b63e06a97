'use client'

import { useState } from 'react'
import { usePlan } from '#app/_sync/use-plan.ts'
import { refusalText } from '#app/_words/link.ts'
import { namesOf } from '#app/_words/names.ts'
import type { Wish } from '#lib/plan/decide-claim.ts'
import { usePrice } from './use-price.ts'

export interface Claiming {
  /** `looking`: its price is being worked out; `asking`: the server decides. */
  readonly phase: 'idle' | 'looking' | 'asking'
  /** What the wish that was looked at last would make worse. */
  readonly worse: readonly string[]
  /** That wish, when it has a price: it is granted when asked for again. */
  readonly dear: Wish | null
  readonly refused: string | null
  /** Asks for it, unless it turns out to have a price that was not said yet; whether it was granted. */
  readonly ask: (wish: Wish) => Promise<boolean>
  /** Works out the price alone. */
  readonly look: (wish: Wish) => void
}

/** So long somebody waits for a price who has pressed, and who only rests on a button. */
const PRESSED_MS = 4_000
const RESTING_MS = 30_000

/** Whether it asks something of a cook: giving back never makes an evening worse. */
const binds = ({ kind }: Wish): boolean => kind === 'claim' || kind === 'reassign' || kind === 'join'

export const sameWish = (a: Wish, b: Wish | null): boolean => JSON.stringify(a) === JSON.stringify(b)

/** Asking for claims of one thing: what one would make worse is said before it is asked for, and may be asked for all the same. */
export const useClaim = (target: string): Claiming => {
  const plan = usePlan()
  const price = usePrice(`claim ${target}`)
  const [refused, setRefused] = useState<string | null>(null)
  const [busy, setBusy] = useState<Claiming['phase']>('idle')
  const [offered, setOffered] = useState<Wish | null>(null)
  const phase = busy === 'idle' && plan.asking.has(target) ? 'asking' : busy
  const worse = offered && phase === 'idle' ? (price.known([offered])?.worse ?? []) : []
  const dear = worse.length > 0 ? offered : null

  const isDear = async (wish: Wish, patienceMs: number): Promise<boolean> => {
    const found = await price.find([wish], patienceMs).catch((why: unknown) => {
      // What it costs cannot be told: it may be asked for all the same.
      console.error('a claim could not be tried', why)
      return null
    })
    if (found === null || found.worse.length === 0) return false
    setOffered(wish)
    return true
  }
  const ask = async (wish: Wish): Promise<boolean> => {
    if (phase !== 'idle') return false
    setRefused(null)
    if (binds(wish) && !sameWish(wish, dear)) {
      setBusy('looking')
      if (await isDear(wish, PRESSED_MS)) {
        setBusy('idle')
        return false
      }
    }
    setBusy('asking')
    const outcome = await plan.send(wish)
    setBusy('idle')
    setOffered(null)
    setRefused(outcome.kind === 'refused' ? refusalText(outcome.why, namesOf(plan.evening)) : null)
    return outcome.kind === 'done'
  }
  const look = (wish: Wish) => {
    if (binds(wish) && phase === 'idle') void isDear(wish, RESTING_MS)
  }
  return { phase, worse, dear, refused, ask, look }
}

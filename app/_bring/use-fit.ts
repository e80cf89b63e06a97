'use client'

import { useEffect, useRef, useState } from 'react'
import { newId } from '#app/_frame/new-id.ts'
import type { Trial } from '#app/_sync/plan.ts'
import { usePlan } from '#app/_sync/use-plan.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { Offer } from '#lib/domain/offer.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { fitOf, type Tried, type Verdict, verdictOf } from '#lib/potluck/fit.ts'
import { variantsOf } from '#lib/potluck/variant.ts'
import { tryOffer } from './try-offer.ts'

export type Fitted =
  | { readonly kind: 'idle' }
  | { readonly kind: 'looking' }
  /** This device could not work it out. */
  | { readonly kind: 'unknown' }
  /** `told`: the evening with it as offered, of which the verdict speaks; `trial`: with the form in which it fits, or else as offered. */
  | { readonly kind: 'found'; readonly verdict: Verdict; readonly told: Evening; readonly trial: Trial }

/**
 * Tries an offer on this device alone: as it is and, while that does not fit, in its other forms. `atOnce`: without being asked, and again
 * whenever the plan or the offer has changed.
 */
export const useFit = (offer: Offer, atOnce: boolean): { readonly fitted: Fitted; readonly look: () => void } => {
  const { evening, order: state, tryOut } = usePlan()
  const order = state.kind === 'current' ? state.order : null
  const said = JSON.stringify(offer)
  const [last, setLast] = useState<{ readonly said: string; readonly order: RunningOrder; readonly fitted: Fitted } | null>(null)
  const isSame = last !== null && last.said === said && last.order === order
  const newest = useRef('')

  const look = async () => {
    if (order === null) return
    const key = newId()
    newest.current = key
    const settle = (fitted: Fitted) => setLast({ said, order, fitted })
    settle({ kind: 'looking' })
    const tried: Tried[] = []
    let told: Evening | null = null
    let shown: Trial | null = null
    for (const variant of variantsOf(evening, offer)) {
      const trial = await tryOut((copy) => tryOffer(copy, offer, variant, newId), `offer ${offer.id}`)
      if (newest.current !== key) return
      if (trial === null) break
      const dish = trial.evening.offers?.find(({ id }) => id === offer.id)?.dish
      const fit = dish === undefined ? null : fitOf(trial.before, trial.after, trial.evening, dish)
      if (fit === null) break
      tried.push({ variant, fit })
      told ??= trial.evening
      if (shown === null || fit.kind === 'fits') shown = trial
      if (fit.kind === 'fits') break
    }
    settle(
      shown === null || told === null ? { kind: 'unknown' } : { kind: 'found', verdict: verdictOf(tried), told, trial: shown },
    )
  }
  const looking = useRef(look)
  useEffect(() => {
    looking.current = look
  })
  const due = atOnce && order !== null && !isSame
  useEffect(() => {
    if (due) void looking.current()
  }, [due])
  useEffect(
    () => () => {
      newest.current = ''
    },
    [],
  )
  return { fitted: isSame ? last.fitted : { kind: 'idle' }, look: () => void look() }
}

'use client'

import { useEffect, useRef, useState } from 'react'
import { newId } from '#app/_frame/new-id.ts'
import type { Trial } from '#app/_sync/plan.ts'
import { usePlan } from '#app/_sync/use-plan.ts'
import type { Offer } from '#lib/domain/offer.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { AS_OFFERED } from '#lib/potluck/variant.ts'
import { tryOffer } from './try-offer.ts'

export type Tried =
  | { readonly kind: 'idle' }
  | { readonly kind: 'looking' }
  /** This device could not work it out. */
  | { readonly kind: 'unknown' }
  | { readonly kind: 'found'; readonly trial: Trial }

/** Tries an offer on this device alone. `atOnce`: without being asked, and again whenever the plan or the offer has changed. */
export const useTrial = (offer: Offer, atOnce: boolean): { readonly tried: Tried; readonly look: () => void } => {
  const { order: state, tryOut } = usePlan()
  const order = state.kind === 'current' ? state.order : null
  const said = JSON.stringify(offer)
  const [last, setLast] = useState<{ readonly said: string; readonly order: RunningOrder; readonly tried: Tried } | null>(null)
  const isSame = last !== null && last.said === said && last.order === order
  const newest = useRef('')

  const look = async () => {
    if (order === null) return
    const key = newId()
    newest.current = key
    setLast({ said, order, tried: { kind: 'looking' } })
    const trial = await tryOut((copy) => tryOffer(copy, offer, AS_OFFERED, newId), `offer ${offer.id}`)
    if (newest.current === key) setLast({ said, order, tried: trial === null ? { kind: 'unknown' } : { kind: 'found', trial } })
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
  return { tried: isSame ? last.tried : { kind: 'idle' }, look: () => void look() }
}

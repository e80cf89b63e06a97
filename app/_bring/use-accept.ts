'use client'

import { useState } from 'react'
import { newId } from '#app/_frame/new-id.ts'
import { useStrip } from '#app/_frame/strip.tsx'
import { usePlan } from '#app/_sync/use-plan.ts'
import { faultText } from '#app/_words/fault.ts'
import { refusalText } from '#app/_words/link.ts'
import type { Names } from '#app/_words/names.ts'
import { offerName } from '#app/_words/offer.ts'
import type { Offer } from '#lib/domain/offer.ts'
import type { Variant } from '#lib/potluck/variant.ts'
import { acceptAs } from './accept.ts'

export interface Accepting {
  /** Says yes to an offer in this form: its dish and steps come into the plan, and what only its cook can do is claimed for them. */
  readonly accept: (offer: Offer, variant: Variant) => Promise<void>
  readonly busy: boolean
}

export const useAccept = (names: Names): Accepting => {
  const { evening, edit, send } = usePlan()
  const show = useStrip()
  const [busy, setBusy] = useState(false)
  const accept = async (offer: Offer, variant: Variant) => {
    const made = edit((doc) => acceptAs(doc, evening, offer, variant, newId))
    if (!made.ok) return show(faultText(made.error), null)
    const name = offerName(offer)
    show(offer.kind === 'dish' ? `${name} is on the menu.` : `${name}: that is settled.`, null)
    const own = made.value?.own ?? []
    if (own.length === 0) return
    setBusy(true)
    const outcomes = await Promise.all(own.map((target) => send({ kind: 'claim', target, cook: offer.cook })))
    setBusy(false)
    const refused = outcomes.find((outcome) => outcome.kind === 'refused')
    if (refused?.kind === 'refused') show(`${name} is on the menu. ${refusalText(refused.why, names)}`, null)
  }
  return { accept, busy }
}

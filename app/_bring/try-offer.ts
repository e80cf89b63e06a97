import type * as Y from 'yjs'
import type { Offer } from '#lib/domain/offer.ts'
import { carryOutClaim } from '#lib/plan/carry-out-claim.ts'
import { makeOffer } from '#lib/plan/commands/offer.ts'
import { readPlan } from '#lib/plan/read.ts'
import type { Variant } from '#lib/potluck/variant.ts'
import { acceptAs } from './accept.ts'
import { offeredOf } from './offer-edit.ts'

const A_HOST = { role: 'host', cook: null } as const

/** On a copy of the plan, the offer as it would be once a host has said yes to it in this form, its cook's steps claimed. */
export const tryOffer = (copy: Y.Doc, offer: Offer, variant: Variant, newId: () => string): void => {
  const { evening } = readPlan(copy)
  if (!evening.offers?.some(({ id }) => id === offer.id)) makeOffer(copy, offeredOf(offer))
  const made = acceptAs(copy, evening, offer, variant, newId)
  if (!made.ok) return
  for (const target of made.value?.own ?? []) carryOutClaim(copy, A_HOST, { kind: 'claim', target, cook: offer.cook })
}

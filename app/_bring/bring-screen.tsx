'use client'

import { useMemo, useRef, useState } from 'react'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Cloth } from '#app/_ui/cloth.tsx'
import { Ready } from '#app/_ui/ready.tsx'
import { bringLead } from '#app/_words/bring.ts'
import { namesOf } from '#app/_words/names.ts'
import type { Offer } from '#lib/domain/offer.ts'
import css from './bring.module.css'
import { Homes } from './homes.tsx'
import type { MissingByNeed } from './missing-by-need.ts'
import { MissingList } from './missing-list.tsx'
import { NewOffer } from './new-offer.tsx'
import { OfferList } from './offer-list.tsx'

/** Who brings what: what is missing, one sentence to offer something, what is on offer and how it stands, and a sheet for each home. */
export function BringScreen({ eveningId, byNeed }: { readonly eveningId: string; readonly byNeed: MissingByNeed }) {
  const { evening, me } = usePlan()
  const names = useMemo(() => namesOf(evening), [evening])
  const [draft, setDraft] = useState<Offer | null>(null)
  const head = useRef<HTMLHeadingElement>(null)
  const begin = (offer: Offer) => {
    setDraft(offer)
    head.current?.closest('section')?.scrollIntoView({ block: 'nearest' })
    head.current?.focus({ preventScroll: true })
  }
  const own = <NewOffer key="own" ref={head} eveningId={eveningId} names={names} draft={draft} onDraft={setDraft} />
  const offers = (
    <div key="offers" className={css.list}>
      <Cloth label="What everybody brings">
        <OfferList eveningId={eveningId} names={names} />
      </Cloth>
    </div>
  )
  // One below the other on a phone: hosts have to answer, the others to offer.
  const isHost = me?.role === 'host'
  return (
    <main id="main" className={css.main}>
      <Ready />
      <div className={css.top}>
        <div className={css.head}>
          <div>
            <h1>Who brings what</h1>
            <p className={css.lead}>{bringLead(evening)}</p>
          </div>
          <MissingList names={names} byNeed={byNeed} onBring={begin} />
        </div>
        {isHost ? [offers, own] : [own, offers]}
      </div>
      <Homes eveningId={eveningId} names={names} />
    </main>
  )
}

'use client'

import { useState } from 'react'
import { Here } from '#app/_frame/here.tsx'
import { useStrip } from '#app/_frame/strip.tsx'
import { useEdit } from '#app/_frame/use-edit.ts'
import { useWhere } from '#app/_frame/where.tsx'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Button } from '#app/_ui/button.tsx'
import { Entry } from '#app/_ui/drafts.tsx'
import { Fold } from '#app/_ui/fold.tsx'
import { Link } from '#app/_ui/link.tsx'
import type { DishColour } from '#app/_ui/plate.tsx'
import { type PlateStanding, PlateState } from '#app/_ui/plate-state.tsx'
import { Sentence } from '#app/_ui/sentence.tsx'
import type { Names } from '#app/_words/names.ts'
import { offerName, offerStateWords } from '#app/_words/offer.ts'
import { type Offer, stateOf } from '#lib/domain/offer.ts'
import { changeOffer, declineOffer, standByOffer, takeBackAcceptance, withdrawOffer } from '#lib/plan/commands/offer.ts'
import { AS_OFFERED } from '#lib/potluck/variant.ts'
import css from './bring.module.css'
import { Decline } from './decline.tsx'
import { Fitting } from './fitting.tsx'
import type { OfferPatch } from './offer-edit.ts'
import { moreParts } from './offer-more.ts'
import { offerParts, offerText } from './offer-sentence.ts'
import { takeForm } from './take-form.ts'
import { useAccept } from './use-accept.ts'

const STANDING: Readonly<Record<ReturnType<typeof stateOf>, PlateStanding>> = {
  offered: 'not-confirmed',
  accepted: 'fits',
  declined: 'does-not',
  withdrawn: 'does-not',
}

interface Props {
  readonly eveningId: string
  readonly offer: Offer
  readonly colour: DishColour
  readonly names: Names
}

/** One offer: what it is, how it stands, whether it fits, and what may be done about it by whoever looks. */
export function OfferItem({ eveningId, offer, colour, names }: Props) {
  const { evening, me } = usePlan()
  const { change, tell } = useEdit()
  const show = useStrip()
  const { accept, busy } = useAccept(names)
  const [open, setOpen] = useState(false)
  const [saysNo, setSaysNo] = useState(false)
  useWhere(open ? offer.id : null)
  const isHost = me?.role === 'host'
  const isMine = me?.cook === offer.cook
  const name = offerName(offer)
  const state = stateOf(offer)
  const isOut = state === 'withdrawn'
  const isOpen = state === 'offered'
  const mayChange = (isHost || isMine) && offer.state !== 'accepted' && !isOut
  const scene = { evening, names, called: name, mine: me?.cook ?? null, isHost }
  const about = offerText(offer, scene)
  // Whose it is does not change once it is offered: a host writes another one down.
  const edit = ({ cook: _, ...patch }: OfferPatch) => change((doc) => changeOffer(doc, offer.id, patch))

  return (
    <li className={css.offer} data-offer={offer.id} data-state={state}>
      <PlateState standing={STANDING[state]} colour={colour} size={46} />
      <div className={css.offerWords}>
        <h4>
          {name} <small>{offer.cook === me?.cook ? 'you' : names.cookName(offer.cook)}</small>{' '}
          <span className={css.state}>{offerStateWords[state]}</span>
          <Here target={offer.id} />
        </h4>
        {about === '' || open ? null : <p className={css.about}>{about}</p>}
        {isHost && isOut && offer.dish && offer.state === 'accepted' ? (
          <p className={css.why}>It is still on the menu until you take the yes back.</p>
        ) : null}
        {offer.why && offer.state === 'declined' ? <p className={css.why}>Because {offer.why}.</p> : null}
        {open ? (
          <Entry id={offer.id}>
            <Sentence of={offer.id} parts={offerParts(offer, { ...scene, isHost: false })} onEdit={edit} />
            {offer.kind === 'dish' ? (
              <Fold title="The box, the fridge, the dish it comes in">
                <Sentence of={`${offer.id} more`} parts={moreParts(offer, scene)} onEdit={edit} />
              </Fold>
            ) : null}
          </Entry>
        ) : null}
        {isOpen && offer.kind === 'dish' && (isHost || isMine) ? (
          <Fitting
            offer={offer}
            atOnce={isHost}
            take={
              isHost
                ? { words: 'Yes please, so', as: (variant) => void accept(offer, variant) }
                : { words: 'I bring it so', as: (variant) => tell((doc) => takeForm(doc, evening, offer, variant)) }
            }
          />
        ) : null}
        {saysNo ? (
          <Decline
            name={name}
            onLeave={() => setSaysNo(false)}
            onDecline={(why) => {
              const problem = change((doc) => declineOffer(doc, offer.id, why))
              if (problem === null) setSaysNo(false)
              return problem
            }}
          />
        ) : (
          <p className={css.does}>
            {isHost && offer.state !== 'accepted' && !isOut ? (
              <Button disabled={busy} onClick={() => accept(offer, AS_OFFERED)} aria-label={`Yes please: ${name}`}>
                Yes, please
              </Button>
            ) : null}
            {isHost && isOpen ? (
              <Button tone="word" onClick={() => setSaysNo(true)} aria-label={`Not this time: ${name}`}>
                Not this time…
              </Button>
            ) : null}
            {isHost && offer.state === 'accepted' ? (
              <Button
                tone="word"
                onClick={() => tell((doc) => takeBackAcceptance(doc, offer.id)) && show(`${name} is open again.`, null)}
                aria-label={`Take the yes back: ${name}`}
              >
                Take the yes back
              </Button>
            ) : null}
            {mayChange ? (
              <Button
                tone="word"
                aria-expanded={open}
                onClick={() => setOpen(!open)}
                aria-label={`${open ? 'Close' : 'Change'} ${name}`}
              >
                {open ? 'That is all' : 'Change it'}
              </Button>
            ) : null}
            {isMine && !isOut ? (
              <Button
                tone="quiet"
                onClick={() => tell((doc) => withdrawOffer(doc, offer.id))}
                aria-label={`I do not bring it after all: ${name}`}
              >
                I do not bring it after all
              </Button>
            ) : null}
            {isMine && isOut ? (
              <Button
                tone="word"
                onClick={() => tell((doc) => standByOffer(doc, offer.id))}
                aria-label={`I bring it after all: ${name}`}
              >
                I bring it after all
              </Button>
            ) : null}
            {offer.dish && offer.state === 'accepted' ? (
              <Link className={css.way} href={`/evenings/${eveningId}/menu/${offer.dish}`}>
                Its steps and ingredients
              </Link>
            ) : null}
          </p>
        )}
      </div>
    </li>
  )
}

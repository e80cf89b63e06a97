'use client'

import { forwardRef, useState } from 'react'
import { newId } from '#app/_frame/new-id.ts'
import { useStrip } from '#app/_frame/strip.tsx'
import { useEdit } from '#app/_frame/use-edit.ts'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Button } from '#app/_ui/button.tsx'
import { Fold } from '#app/_ui/fold.tsx'
import { Link } from '#app/_ui/link.tsx'
import { Sentence } from '#app/_ui/sentence.tsx'
import type { Names } from '#app/_words/names.ts'
import { offerName, thingWords } from '#app/_words/offer.ts'
import { type Offer, TableThing } from '#lib/domain/offer.ts'
import { makeOffer } from '#lib/plan/commands/offer.ts'
import type { Variant } from '#lib/potluck/variant.ts'
import css from './bring.module.css'
import { Fitting } from './fitting.tsx'
import { HomeLine } from './home-line.tsx'
import { homeOf, newDish, newThing, offeredOf, patched, withHome } from './offer-edit.ts'
import { moreParts } from './offer-more.ts'
import { offerParts } from './offer-sentence.ts'
import { comeEarlier, formPatch } from './take-form.ts'

interface Props {
  readonly eveningId: string
  readonly names: Names
  /** What is being written; null: nothing said yet. */
  readonly draft: Offer | null
  readonly onDraft: (offer: Offer | null) => void
}

const CALLED = 'What I bring'

/** One sentence that offers something: a dish or a thing, from where, in what state. Tried and sent by a tap each. */
export const NewOffer = forwardRef<HTMLHeadingElement, Props>(function NewOffer({ eveningId, names, draft, onDraft }, head) {
  const { evening, me } = usePlan()
  const { change } = useEdit()
  const show = useStrip()
  const [freshId, setFreshId] = useState(newId)
  const [wrong, setWrong] = useState<string | null>(null)
  const cook = evening.cooks.find(({ id }) => id === (draft?.cook ?? me?.cook))
  const isHost = me?.role === 'host'
  const shown = draft ?? (cook ? newDish(evening, cook.id, freshId, evening.courses[0]?.id) : null)
  if (!shown || !cook)
    return (
      <section className={css.new} aria-labelledby="i-bring">
        <h2 id="i-bring" ref={head} tabIndex={-1}>
          I bring
        </h2>
        <p className={css.quiet}>
          Whoever brings something is one of the cooks.{' '}
          <Link href={`/evenings/${eveningId}/kitchens`}>Say which of them you are</Link>
        </p>
      </section>
    )
  const home = shown.kitchen ?? homeOf(evening, cook.id)
  const send = () => {
    if (shown.kind === 'dish' && shown.name === '') return setWrong('Write what you bring first, such as a big salad.')
    if (shown.kind === 'dish' && shown.course === undefined) return setWrong('Say to which course it comes.')
    const problem = change((doc) => makeOffer(doc, offeredOf(shown)))
    setWrong(problem)
    if (problem !== null) return
    show(`${offerName(shown)}: offered. A host answers it.`, null)
    setFreshId(newId())
    onDraft(null)
  }
  const takeAs = (variant: Variant) => {
    if (variant.kind === 'earlier') setWrong(change((doc) => comeEarlier(doc, evening, shown, variant.by)))
    else onDraft(patched(shown, formPatch(shown, variant)))
  }
  const things = TableThing.options.filter((thing) => thing !== shown.thing)
  const scene = { evening, names, called: CALLED, mine: me?.cook ?? null, isHost }
  const put = (next: Offer) => {
    setWrong(null)
    onDraft(next)
    return null
  }
  return (
    <section className={css.new} aria-labelledby="i-bring">
      <h2 id="i-bring" ref={head} tabIndex={-1}>
        I bring
      </h2>
      <Sentence of={shown.id} parts={offerParts(shown, scene)} onEdit={(patch) => put(patched(shown, patch))} />
      {shown.kind === 'dish' ? (
        <HomeLine
          eveningId={eveningId}
          cook={cook}
          kitchen={home}
          onHome={(kitchen) => onDraft({ ...shown, ...withHome(kitchen) })}
        />
      ) : null}
      {shown.kind === 'dish' ? (
        <Fold title="The box, the fridge, the dish it comes in">
          <Sentence of={`${shown.id} more`} parts={moreParts(shown, scene)} onEdit={(patch) => put(patched(shown, patch))} />
        </Fold>
      ) : null}
      {wrong ? (
        <p className={css.refused} role="alert">
          {wrong}
        </p>
      ) : null}
      <p className={css.does}>
        <Button onClick={send}>Offer it</Button>
        {draft ? (
          <Button tone="word" onClick={() => onDraft(null)}>
            Begin again
          </Button>
        ) : null}
      </p>
      {shown.kind === 'dish' && shown.name !== '' && shown.course !== undefined ? (
        <Fitting offer={shown} take={{ words: 'I bring it so', as: takeAs }} />
      ) : null}
      <p className={css.presses}>
        <span>{shown.kind === 'dish' ? 'Or something that is not food:' : 'Or:'}</span>
        {shown.kind === 'dish' ? null : (
          <button
            type="button"
            className={css.press}
            onClick={() => onDraft(newDish(evening, cook.id, freshId, evening.courses[0]?.id))}
          >
            something to eat
          </button>
        )}
        {things.map((thing) => (
          <button
            key={thing}
            type="button"
            className={css.press}
            onClick={() => put(newThing(evening, cook.id, freshId, thing, thing === 'ice' ? 2 : evening.covers))}
          >
            {thingWords[thing]}
          </button>
        ))}
      </p>
    </section>
  )
})

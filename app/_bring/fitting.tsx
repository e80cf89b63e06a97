'use client'

import { Comparing } from '#app/_order/comparing.tsx'
import { Button } from '#app/_ui/button.tsx'
import { verdictText } from '#app/_words/fit.ts'
import { namesOf } from '#app/_words/names.ts'
import { offerName } from '#app/_words/offer.ts'
import type { Offer } from '#lib/domain/offer.ts'
import type { Verdict } from '#lib/potluck/fit.ts'
import type { Variant } from '#lib/potluck/variant.ts'
import css from './bring.module.css'
import { type Fitted, useFit } from './use-fit.ts'

interface Props {
  readonly offer: Offer
  /** Tried without being asked. */
  readonly atOnce?: boolean
  /** Takes it in the form in which it fits, and what that is called. */
  readonly take?: { readonly words: string; readonly as: (variant: Variant) => void }
}

const LOOKS: Readonly<Record<Verdict['kind'], string | undefined>> = {
  fits: css.fits,
  'fits-if': css.fitsIf,
  'does-not': css.fitsNot,
}

/** Whether an offer fits, or in which other form it would, by a trial that nobody else sees; and what it would change. */
export function Fitting({ offer, atOnce = false, take }: Props) {
  const { fitted, look } = useFit(offer, atOnce)
  const name = offerName(offer)
  if (fitted.kind === 'idle')
    return (
      <p className={css.fit}>
        <Button tone="word" onClick={look} aria-label={`See whether it fits: ${name}`}>
          See whether it fits
        </Button>
      </p>
    )
  const verdict = fitted.kind === 'found' ? fitted.verdict : null
  const other = verdict?.kind === 'fits-if' ? verdict.variant : null
  return (
    <div className={css.fit}>
      <p role="status" className={verdict ? LOOKS[verdict.kind] : css.looking}>
        {fitsText(fitted)}
      </p>
      {other && take ? (
        <Button tone="soft" onClick={() => take.as(other)} aria-label={`${take.words}: ${name}`}>
          {take.words}
        </Button>
      ) : null}
      {fitted.kind === 'found' ? (
        <details className={css.changes}>
          <summary>{other ? 'What that would change' : 'What it would change'}</summary>
          <Comparing trial={fitted.trial} />
        </details>
      ) : null}
    </div>
  )
}

const fitsText = (fitted: Fitted): string => {
  switch (fitted.kind) {
    case 'idle':
      return ''
    case 'looking':
      return 'Seeing whether it fits…'
    case 'unknown':
      return 'Whether it fits cannot be worked out on this device.'
    case 'found':
      return verdictText(fitted.verdict, namesOf(fitted.told), fitted.told.zone)
  }
}

'use client'

import { Comparing } from '#app/_order/comparing.tsx'
import { Button } from '#app/_ui/button.tsx'
import { comparedText } from '#app/_words/compare.ts'
import type { Names } from '#app/_words/names.ts'
import { offerName } from '#app/_words/offer.ts'
import type { Offer } from '#lib/domain/offer.ts'
import css from './bring.module.css'
import { useTrial } from './use-trial.ts'

interface Props {
  readonly offer: Offer
  readonly names: Names
  /** Tried without being asked. */
  readonly atOnce?: boolean
}

/** Whether an offer fits, by a trial that nobody else sees, and what it would change. */
export function Fitting({ offer, names, atOnce = false }: Props) {
  const { tried, look } = useTrial(offer, atOnce)
  if (tried.kind === 'idle')
    return (
      <Button tone="word" onClick={look} aria-label={`See whether it fits: ${offerName(offer)}`}>
        See whether it fits
      </Button>
    )
  const worse = tried.kind === 'found' ? comparedText(tried.trial.before, tried.trial.after, names).worse : []
  return (
    <div className={css.fit}>
      <p role="status" className={tried.kind === 'found' ? (worse.length === 0 ? css.fits : css.fitsNot) : css.looking}>
        {tried.kind === 'looking'
          ? 'Seeing whether it fits…'
          : tried.kind === 'unknown'
            ? 'Whether it fits cannot be worked out on this device.'
            : worse.length === 0
              ? 'It fits.'
              : 'It would cost something.'}
      </p>
      {tried.kind === 'found' ? <Comparing trial={tried.trial} /> : null}
    </div>
  )
}

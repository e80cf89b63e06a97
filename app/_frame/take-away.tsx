'use client'

import { usePlan } from '#app/_sync/use-plan.ts'
import css from './take-away.module.css'

/** The evening as a file, below every screen of it. Guests' answers are in the host's alone. */
export function TakeAway({ eveningId }: { readonly eveningId: string }) {
  const { me, link } = usePlan()
  return (
    <footer className={css.foot}>
      <a href={`/api/evenings/${eveningId}/file`} download>
        Take this evening away as a file
      </a>
      <span>
        {me?.role === 'host'
          ? 'With your guests and what they answered: give it only to those who may read that.'
          : 'Without the guests: what they answered is in the host’s file only.'}
        {link.kind === 'saved' ? '' : ' What is not saved yet is not in it.'}
      </span>
      {me?.role === 'host' ? <a href={`/evenings/${eveningId}/history`}>Who changed what</a> : null}
    </footer>
  )
}

'use client'

import { usePlan } from '#app/_sync/use-plan.ts'
import { Fold } from '#app/_ui/fold.tsx'
import { DEFER, donenessMore, donenessText } from '#app/_words/safety.ts'
import { donenessOf } from '#lib/safety/doneness.ts'
import css from './safety.module.css'

/** How warm it is to be inside, at the step that cooks it; nothing at any other step. */
export function Doneness({ step }: { readonly step: string }) {
  const { evening } = usePlan()
  const found = donenessOf(evening, step)
  if (!found) return null
  return (
    <div className={css.doneness}>
      <p className={found.low ? css.low : undefined}>{donenessText(found)}</p>
      <p>{DEFER}</p>
      <Fold title="Whose figures, and what is worth as much">
        {donenessMore(found).map((line) => (
          <p key={line}>{line}</p>
        ))}
      </Fold>
    </div>
  )
}

'use client'

import { usePlan } from '#app/_sync/use-plan.ts'
import { DEFER, donenessText } from '#app/_words/safety.ts'
import { donenessOf } from '#lib/safety/doneness.ts'
import css from './safety.module.css'

/** How warm it is to be inside, at the step that cooks it; nothing at any other step. */
export function Doneness({ step }: { readonly step: string }) {
  const { evening } = usePlan()
  const found = donenessOf(evening, step)
  if (!found) return null
  const lines = donenessText(found)
  return (
    <div className={css.doneness}>
      {lines.map((line, at) => (
        <p key={line} className={found.low && at === 0 ? css.low : undefined}>
          {line}
        </p>
      ))}
      <p>{DEFER}</p>
    </div>
  )
}

'use client'

import { useEdit } from '#app/_frame/use-edit.ts'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Button } from '#app/_ui/button.tsx'
import { numberText } from '#app/_words/amount.ts'
import { countText } from '#app/_words/clock.ts'
import { setEvening } from '#lib/plan/commands/set.ts'
import { type AtTable, coversWanted } from './at-table.ts'
import { coversText } from './guest-changes.ts'
import css from './guests.module.css'

/** For how many the evening is and how many come: answers suggest, a host decides. */
export function CoversLine({ table }: { readonly table: AtTable }) {
  const { evening } = usePlan()
  const { tell } = useEdit()
  const wanted = coversWanted(table, evening.covers)
  return (
    <p className={css.covers}>
      {coversText(table.coming, table.open, evening.covers)}
      {table.portions === table.coming ? '' : ` They eat ${numberText(String(table.portions))} portions.`}{' '}
      {wanted === null ? null : (
        <Button tone="word" onClick={() => tell((doc) => setEvening(doc, { covers: wanted }))}>
          Make it {countText(wanted)}
        </Button>
      )}
    </p>
  )
}

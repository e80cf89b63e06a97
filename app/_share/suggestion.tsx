'use client'

import { useState } from 'react'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Button } from '#app/_ui/button.tsx'
import type { Names } from '#app/_words/names.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { standOf } from '#lib/sharing/stand.ts'
import css from './share.module.css'
import { SuggestedParts } from './suggested-parts.tsx'

/** A suggestion for what nobody has, made when it is asked for. */
export function Suggestion({ order, names }: { readonly order: RunningOrder; readonly names: Names }) {
  const { evening } = usePlan()
  const [isOpen, setOpen] = useState(false)
  const { open } = standOf(evening)
  if (!isOpen && (open === 0 || evening.cooks.length < 2)) return null
  return (
    <section aria-labelledby="suggested">
      <h2 id="suggested">A fair split</h2>
      {isOpen ? (
        <SuggestedParts order={order} names={names} />
      ) : (
        <p className={css.offer}>
          <Button tone="soft" onClick={() => setOpen(true)}>
            Suggest who does what
          </Button>
          <span>Nothing that somebody has is taken away.</span>
        </p>
      )}
    </section>
  )
}

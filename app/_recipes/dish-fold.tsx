'use client'

import { type ReactNode, useId, useState } from 'react'
import { countOf, listText } from '#app/_words/clock.ts'
import { durationText } from '#app/_words/duration.ts'
import type { DishDraft, NewKey } from '#lib/recipes/draft.ts'
import { DishPreview, OpenThings } from './dish-preview.tsx'
import css from './recipes.module.css'

interface Props {
  readonly draft: DishDraft
  readonly hasRecipe: boolean
  readonly covers: number
  readonly newKey: NewKey
  readonly onChange: (draft: DishDraft) => void
  readonly startOpen: boolean
  readonly children: ReactNode
}

/** What stands of a dish in one line: its ingredients and steps, or the method that was assumed. */
const aboutText = (draft: DishDraft, hasRecipe: boolean): string =>
  hasRecipe
    ? `${countOf(draft.ingredients.length, 'ingredient')}, ${countOf(draft.steps.length, 'step')}`
    : `no recipe; assumed: ${listText(draft.steps.map((step) => `${step.text.split(':')[0]?.toLowerCase() ?? ''} ${durationText(step.way.takes.likely)}`))}`

/** A dish with its method folded away until somebody looks. */
export function DishFold({ draft, hasRecipe, covers, newKey, onChange, startOpen, children }: Props) {
  const [open, setOpen] = useState(startOpen)
  const id = useId()
  return (
    <div className={css.fold}>
      {children}
      <p className={css.about}>
        {hasRecipe ? null : <span className={css.assumedMark} aria-hidden="true" />}
        {aboutText(draft, hasRecipe)} · <OpenThings draft={draft} />{' '}
        <button
          type="button"
          className={css.opener}
          aria-expanded={open}
          aria-controls={id}
          aria-label={`${open ? 'Close' : 'Look over'} ${draft.name || 'this dish'}`}
          onClick={() => setOpen(!open)}
        >
          {open ? 'Close' : 'Look it over'}
        </button>
      </p>
      <div id={id} hidden={!open}>
        {open ? <DishPreview draft={draft} covers={covers} newKey={newKey} onChange={onChange} heading="h4" /> : null}
      </div>
    </div>
  )
}

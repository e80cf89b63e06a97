'use client'

import { useState } from 'react'
import { useEdit } from '#app/_frame/use-edit.ts'
import { cleanText } from '#lib/domain/atoms.ts'
import type { Dish } from '#lib/domain/menu.ts'
import { setFields } from '#lib/plan/commands/set.ts'
import css from './dish.module.css'

/** Whatever is worth noting about a dish, in as many lines as it takes. */
export function DishNotes({ dish }: { readonly dish: Dish }) {
  const { change } = useEdit()
  const [draft, setDraft] = useState<string | null>(null)
  const [wrong, setWrong] = useState<string | null>(null)
  const keep = () => {
    if (draft === null) return
    const problem =
      draft === dish.notes ? null : change((doc) => setFields(doc, 'dishes', dish.id, { notes: cleanText(draft, true) }))
    setWrong(problem)
    if (problem === null) setDraft(null)
  }
  return (
    <>
      <textarea
        className={css.notes}
        aria-label="Notes"
        placeholder="What is worth knowing: a plate to borrow, what went wrong last time"
        value={draft ?? dish.notes}
        onChange={(event) => setDraft(event.target.value)}
        onBlur={keep}
      />
      {wrong ? (
        <p className={css.refused} role="alert">
          {wrong}
        </p>
      ) : null}
    </>
  )
}

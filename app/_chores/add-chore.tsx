'use client'

import { useId } from 'react'
import { Button } from '#app/_ui/button.tsx'
import { useDraft } from '#app/_ui/drafts.tsx'
import fieldCss from '#app/_ui/field.module.css'
import { cleanText } from '#lib/domain/atoms.ts'
import css from './chores.module.css'

const LONGEST = 400

/** A line for one more chore: Enter or the button adds it, and what is half written stays over a reload. */
export function AddChore({ onAdd }: { readonly onAdd: (does: string) => boolean }) {
  const id = useId()
  const draft = useDraft('a new chore')
  const does = cleanText((draft.text ?? '').trim(), false)
  return (
    <form
      className={css.add}
      onSubmit={(event) => {
        event.preventDefault()
        if (does && onAdd(does)) draft.clear()
      }}
    >
      <div className={fieldCss.field}>
        <label htmlFor={id}>What wants doing</label>
        <input
          id={id}
          value={draft.text ?? ''}
          maxLength={LONGEST}
          placeholder="such as: bring the chairs up"
          autoComplete="off"
          onChange={(event) => draft.write(event.target.value)}
        />
      </div>
      <Button type="submit" disabled={does === ''}>
        Add it
      </Button>
    </form>
  )
}

'use client'

import { type KeyboardEvent, useId, useState } from 'react'
import { newId } from '#app/_frame/new-id.ts'
import { useEdit } from '#app/_frame/use-edit.ts'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Button } from '#app/_ui/button.tsx'
import { useDraft } from '#app/_ui/drafts.tsx'
import { amountText } from '#app/_words/amount.ts'
import { doubtText } from '#app/_words/doubt.ts'
import type { Dish } from '#lib/domain/menu.ts'
import { addIngredient } from '#lib/plan/commands/add.ts'
import { readLines } from './ingredient-lines.ts'
import css from './ingredients.module.css'

const SHOWN = 8

/** New ingredients as a recipe writes them, one a line; what is understood of them is shown before they are added. */
export function IngredientAdd({ dish }: { readonly dish: Dish }) {
  const { evening } = usePlan()
  const { change } = useEdit()
  const draft = useDraft('new-ingredients', { label: 'New ingredients' })
  const text = draft.text ?? ''
  const [wrong, setWrong] = useState<string | null>(null)
  const id = useId()
  const steps = evening.steps.filter((step) => step.dish === dish.id)
  const lines = readLines(text, steps)
  const made = lines.flatMap((line) => (line.kind === 'ingredient' ? [line] : []))
  // What is not understood is always shown.
  const shown = lines.filter((line, at) => at < SHOWN || line.kind === 'heading' || line.doubts.length > 0)
  const add = () => {
    if (made.length === 0) return
    const problem = change((doc) => {
      for (const { ingredient } of made) {
        const added = addIngredient(doc, { ...ingredient, id: newId(), dish: dish.id })
        if (!added.ok) return added
      }
      return { ok: true, value: null }
    })
    setWrong(problem)
    if (problem === null) draft.clear()
  }
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key !== 'Enter' || event.shiftKey || text.includes('\n')) return
    event.preventDefault()
    add()
  }
  return (
    <div className={css.add}>
      <label htmlFor={id}>Add ingredients</label>
      <textarea
        id={id}
        rows={Math.min(8, Math.max(1, text.split('\n').length))}
        value={text}
        placeholder="1 x 400 g tin tomatoes"
        aria-describedby={`${id}-read`}
        autoComplete="off"
        onChange={(event) => draft.write(event.target.value)}
        onKeyDown={onKeyDown}
      />
      <ul className={css.reading} id={`${id}-read`} aria-live="polite">
        {shown.map((line) => (
          <li key={line.key}>
            {line.kind === 'heading' ? (
              <>“{line.text}” is a heading and is not added</>
            ) : (
              <>
                <b>{line.ingredient.amount === null ? 'to taste' : amountText(line.ingredient.amount)}</b> {line.ingredient.food}
                {line.doubts.map((doubt) => (
                  <em key={`${doubt.kind} ${doubt.from}`}>{doubtText(doubt, line.text)}</em>
                ))}
              </>
            )}
          </li>
        ))}
        {lines.length > shown.length ? <li>and {lines.length - shown.length} more, all understood</li> : null}
      </ul>
      {wrong ? (
        <p className={css.refused} role="alert">
          {wrong}
        </p>
      ) : null}
      {made.length > 0 ? (
        <Button tone="soft" onClick={add}>
          {made.length === 1 ? 'Add it' : `Add these ${made.length}`}
        </Button>
      ) : null}
    </div>
  )
}

'use client'

import { type FormEvent, useState } from 'react'
import { newId } from '#app/_frame/new-id.ts'
import { useEdit } from '#app/_frame/use-edit.ts'
import { Button } from '#app/_ui/button.tsx'
import { Field } from '#app/_ui/field.tsx'
import { cleanText } from '#lib/domain/atoms.ts'
import { addOwnLine } from '#lib/plan/commands/shop.ts'
import css from './shopping.module.css'

/** A line for what no dish asks for: candles, bin bags. */
export function AddLine() {
  const { change } = useEdit()
  const [text, setText] = useState('')
  const [wrong, setWrong] = useState<string | null>(null)
  const add = (event: FormEvent) => {
    event.preventDefault()
    const written = cleanText(text, false).trim()
    const problem =
      written === ''
        ? 'Write what is to be bought.'
        : written.length > 120
          ? 'Say it in at most 120 letters.'
          : change((doc) => addOwnLine(doc, newId(), written))
    setWrong(problem)
    if (problem === null) setText('')
  }
  return (
    <form className={css.add} onSubmit={add}>
      <Field
        label="Something else to buy"
        value={text}
        placeholder="candles, 2 bags of ice"
        autoComplete="off"
        error={wrong ?? undefined}
        onChange={(event) => setText(event.target.value)}
      />
      <Button type="submit" tone="soft">
        Add it
      </Button>
    </form>
  )
}

'use client'

import { useId } from 'react'
import { WordChoice } from '#app/_ui/word.tsx'
import { decimalWords } from '#app/_words/recipe.ts'
import type { DecimalMark } from '#lib/recipes/preview.ts'
import { hasDecimals } from './first-draft.ts'
import css from './recipes.module.css'

interface Props {
  readonly label: string
  readonly hint: string
  readonly text: string
  readonly onText: (text: string) => void
  readonly decimal: DecimalMark
  readonly onDecimal: (decimal: DecimalMark) => void
  /** What is seen in it now, said as it changes. */
  readonly seen: string | null
  readonly wrong: string | null
}

const DECIMALS = Object.entries(decimalWords).map(([mark, words]) => [mark as DecimalMark, words] as const)

/** The box one pastes into, and one line on what was seen in it. */
export function PasteBox({ label, hint, text, onText, decimal, onDecimal, seen, wrong }: Props) {
  const id = useId()
  return (
    <div className={css.paste}>
      <label htmlFor={id}>{label}</label>
      <p className={css.said} id={`${id}-hint`}>
        {hint}
      </p>
      <textarea
        id={id}
        rows={Math.min(16, Math.max(7, text.slice(0, 4000).split('\n').length + 1))}
        value={text}
        spellCheck={false}
        aria-describedby={`${id}-hint ${id}-seen`}
        aria-invalid={wrong ? true : undefined}
        onChange={(event) => onText(event.target.value)}
      />
      <p id={`${id}-seen`} className={wrong ? css.wrong : css.seen} role="status">
        {wrong ?? seen ?? ''}
      </p>
      {hasDecimals(text) ? (
        <p className={css.words}>
          One and a half is written{' '}
          <WordChoice label="How one and a half is written here" value={decimal} options={DECIMALS} onChoose={onDecimal} /> in it.
        </p>
      ) : null}
    </div>
  )
}

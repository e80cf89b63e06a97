'use client'

import { useState } from 'react'
import { Button } from '#app/_ui/button.tsx'
import { WordText } from '#app/_ui/word.tsx'
import { cleanText } from '#lib/domain/atoms.ts'
import css from './bring.module.css'

/** Reasons that offend nobody and tell nothing of the guests. */
const REASONS = [
  'there is enough for that course already',
  'the kitchen is full then',
  'there is something like it already',
] as const

interface Props {
  readonly name: string
  readonly onDecline: (why: string) => string | null
  readonly onLeave: () => void
}

/** Saying no with a reason, which whoever offered it reads. */
export function Decline({ name, onDecline, onLeave }: Props) {
  const [why, setWhy] = useState('')
  const [wrong, setWrong] = useState<string | null>(null)
  const say = () => setWrong(why === '' ? 'Write why first, or tap one of the reasons.' : onDecline(why))
  return (
    <section className={css.decline} aria-label={`Not this time: ${name}`}>
      <p className={css.words}>
        Not this time, because{' '}
        <WordText
          label={`Why not ${name}`}
          text={why}
          empty="…"
          autoFocus
          onWrite={(text) => {
            setWhy(cleanText(text.trim(), false).slice(0, 200))
            setWrong(null)
            return null
          }}
        />
      </p>
      <p className={css.presses}>
        {REASONS.map((reason) => (
          <button key={reason} type="button" className={css.press} onClick={() => setWhy(reason)}>
            {reason}
          </button>
        ))}
      </p>
      {wrong ? (
        <p className={css.refused} role="alert">
          {wrong}
        </p>
      ) : null}
      <p className={css.does}>
        <Button tone="soft" onClick={say} aria-label={`Say no to ${name}`}>
          Say so
        </Button>
        <Button tone="word" onClick={onLeave} aria-label={`Leave ${name} open`}>
          Leave it open
        </Button>
      </p>
    </section>
  )
}

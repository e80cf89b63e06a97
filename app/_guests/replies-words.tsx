'use client'

import { useState } from 'react'
import { WordChoice, WordText } from '#app/_ui/word.tsx'
import { cleanText } from '#lib/domain/atoms.ts'
import type { GuestCommand } from '#server/guests/command.ts'
import css from './invitations.module.css'
import type { Guests } from './use-guests.ts'

const OPEN = [
  ['open', 'can answer and change their answer'],
  ['closed', 'can only read their answer now'],
] as const
const MENU = [
  ['hidden', 'do not see'],
  ['shared', 'see'],
] as const

/** How answers come in, in a sentence: open or closed, until when, whether guests see the menu, and where it is. */
export function RepliesWords({ desk }: { readonly desk: Guests }) {
  const [wrong, setWrong] = useState<string | null>(null)
  const { replies } = desk.table
  const set = (change: Omit<Extract<GuestCommand, { kind: 'replies' }>, 'kind'>): null => {
    void desk.ask({ kind: 'replies', ...change }).then((asked) => setWrong(asked.ok ? null : asked.why))
    return null
  }
  return (
    <div>
      <p className={css.words}>
        With a link guests{' '}
        <WordChoice
          label="Whether guests can answer"
          value={replies.closed ? 'closed' : 'open'}
          options={OPEN}
          onChoose={(chosen) => set({ closed: chosen === 'closed' })}
        />
        {replies.closed ? null : (
          <>
            , until{' '}
            <WordText
              type="date"
              label="The last day to answer"
              text={replies.answerBy ?? ''}
              onWrite={(text) => set({ answerBy: text.trim() === '' ? null : text.trim() })}
            />
            {replies.answerBy === null ? ' (no last day is set)' : ''}
          </>
        )}
        . They{' '}
        <WordChoice
          label="Whether guests see the menu"
          value={replies.sharesMenu ? 'shared' : 'hidden'}
          options={MENU}
          onChoose={(chosen) => set({ sharesMenu: chosen === 'shared' })}
        />{' '}
        the menu. It is at{' '}
        <WordText
          label="Where it is"
          text={replies.place}
          empty="a place that they know"
          onWrite={(text) => set({ place: cleanText(text.trim(), false).slice(0, 200) })}
        />
        .
      </p>
      {wrong ? (
        <p className={css.refused} role="alert">
          {wrong}
        </p>
      ) : null}
    </div>
  )
}

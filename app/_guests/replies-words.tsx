'use client'

import { useState } from 'react'
import { WordChoice, WordText } from '#app/_ui/word.tsx'
import { longDate } from '#app/_words/clock.ts'
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

const KEEP = [
  ['7', 'a week'],
  ['14', 'two weeks'],
  ['30', '30 days'],
  ['90', '90 days'],
] as const

/** What can be chosen, and what is chosen. */
const keepOptions = (days: number): readonly (readonly [string, string])[] =>
  KEEP.some(([value]) => value === String(days)) ? KEEP : [...KEEP, [String(days), `${days} days`]]

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
        . Who they are and what they answered is erased{' '}
        <WordChoice
          label="How long answers are kept"
          value={String(replies.keepDays)}
          options={keepOptions(replies.keepDays)}
          onChoose={(chosen) => set({ keepDays: Number(chosen) })}
        />{' '}
        after the evening, the last day being {longDate(replies.keptUntil)}; they are told so.
      </p>
      {wrong ? (
        <p className={css.refused} role="alert">
          {wrong}
        </p>
      ) : null}
    </div>
  )
}

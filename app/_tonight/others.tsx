'use client'

import { sentence } from '#app/_words/clock.ts'
import { cookText, taskText } from '#app/_words/night-call.ts'
import { doneWords } from '#app/_words/night-verb.ts'
import type { CookNow } from '#lib/night/board.ts'
import css from './board.module.css'
import { useNight } from './use-night.ts'

interface Props {
  readonly others: readonly CookNow[]
  /** On the worktop everybody's work can be told, and anybody's be looked at large. */
  readonly onLead?: (cook: string) => void
}

/** The others' now. */
export function Others({ others, onLead }: Props) {
  const { names, evening, tell } = useNight()
  if (others.length === 0) return null
  return (
    <ul className={css.others} aria-label="The others, now">
      {others.map((one) => {
        const { hands } = one
        const canTell = onLead && hands && hands.touch?.what !== 'in' && typeof hands.touch?.what !== 'number'
        return (
          <li key={one.cook}>
            {onLead && hands ? (
              <button
                type="button"
                className={css.name}
                onClick={() => onLead(one.cook)}
                aria-label={`Show ${names.cookName(one.cook)} large`}
              >
                {names.cookName(one.cook)}
              </button>
            ) : (
              <b>{names.cookName(one.cook)}</b>
            )}
            <span>{cookText(one, names, evening.zone)}</span>
            {canTell ? (
              <button
                type="button"
                className={css.small}
                onClick={() => tell({ kind: 'done', step: hands.step }, one.cook)}
                aria-label={`${doneWords(hands, names)}: ${sentence(taskText(hands, names))}`}
              >
                {doneWords(hands, names)}
              </button>
            ) : null}
          </li>
        )
      })}
    </ul>
  )
}

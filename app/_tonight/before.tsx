'use client'

import { Button } from '#app/_ui/button.tsx'
import { clockText, dayOf, longDate, sentence } from '#app/_words/clock.ts'
import { callText, guestsText } from '#app/_words/night-call.ts'
import css from './mine.module.css'
import { RehearseEntry } from './slots.tsx'
import { useNight } from './use-night.ts'

/** Before the evening: what happens when it begins, and what comes first. */
export function Before() {
  const { evening, board, nowMs, names, tell, cook, own, isRehearsal } = useNight()
  const days = dayOf(evening, nowMs)
  const isTheDay = days >= 0
  const [call] = board?.calls ?? []
  return (
    <section className={css.before} aria-labelledby="tonight">
      <h1 id="tonight">{isTheDay ? 'Tonight' : longDate(evening.date)}</h1>
      <p className={css.sub}>{board ? `${sentence(guestsText(board.guests, nowMs, names, evening.zone))}.` : null}</p>
      {call ? (
        <p className={css.sub}>
          First, at {clockText(call.at, evening.zone)}
          {dayOf(evening, call.at) === dayOf(evening, nowMs) ? '' : ` on ${longDate(evening.date)}`}: {callText(call, own, names)}
          .
        </p>
      ) : null}
      {isTheDay || isRehearsal ? (
        <>
          <Button tone="now" large onClick={() => tell({ kind: 'begin' }, cook ?? undefined)}>
            Begin the evening
          </Button>
          <p className={css.small}>
            From then on everybody’s board says what to do now, devices ring when something calls, and the order is planned again
            whenever a step needs longer. Nothing marks itself done.
          </p>
        </>
      ) : (
        <p className={css.small}>The board begins on the day.</p>
      )}
      <RehearseEntry />
    </section>
  )
}

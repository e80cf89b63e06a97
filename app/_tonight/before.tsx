'use client'

import { useMemo } from 'react'
import { Button } from '#app/_ui/button.tsx'
import { clockText, dateText, dayOf, longDate, sentence } from '#app/_words/clock.ts'
import { callText, guestsText } from '#app/_words/night-call.ts'
import { catchUpOf } from '#lib/night/catch-up.ts'
import css from './mine.module.css'
import { RehearseEntry } from './rehearse/rehearse-entry.tsx'
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
          {dayOf(evening, call.at) === days ? '' : ` on ${longDate(dateText(call.at, evening.zone))}`}:{' '}
          {callText(call, own, names)}.
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
      {isTheDay || isRehearsal ? <DoneAlready /> : null}
      <RehearseEntry />
    </section>
  )
}

/** What the order has before now and nobody told: it is asked first, or it would be planned again from now on. */
function DoneAlready() {
  const { evening, order, nowMs, names, tell, cook } = useNight()
  const due = useMemo(() => (order ? catchUpOf(evening, order, nowMs) : []), [evening, order, nowMs])
  const steps = [...new Set(due.flatMap((one) => (one.kind === 'begin' || one.kind === 'end' ? [one.step] : [])))]
  if (steps.length === 0) return null
  const done = (step: string) => tell({ kind: 'done', step }, cook ?? undefined)
  return (
    <section className={css.already} aria-labelledby="already">
      <h2 id="already">Done already?</h2>
      <p className={css.small}>
        The order has these before now. What is not told as done is planned from now on when the evening begins.
      </p>
      <ul>
        {steps.map((step) => (
          <li key={step}>
            <span>
              {sentence(names.step(step)?.does || names.stepName(step))}
              {names.step(step)?.dish ? <small>{names.dishName(names.step(step)?.dish ?? '')}</small> : null}
            </span>
            <Button tone="soft" onClick={() => done(step)} aria-label={`Done already: ${names.stepName(step)}`}>
              Done
            </Button>
          </li>
        ))}
      </ul>
      {steps.length > 1 ? (
        <Button tone="full" large onClick={() => steps.forEach(done)}>
          All of them are done
        </Button>
      ) : null}
    </section>
  )
}

'use client'

import { Plate } from '#app/_ui/plate.tsx'
import { clockText, sentence } from '#app/_words/clock.ts'
import { taskText } from '#app/_words/night-call.ts'
import { inText, wholeMinutes } from '#app/_words/night-time.ts'
import type { CookNow } from '#lib/night/board.ts'
import { courseColour } from './facts.ts'
import css from './mine.module.css'
import { sitsNext } from './sits.ts'
import { useChanged } from './use-changes.ts'
import { useNight } from './use-night.ts'

/** What comes after it for this cook, and until when they may sit: on the cloth, for it belongs to the table. */
export function Then({ one }: { readonly one: CookNow }) {
  const { evening, order, nowMs, names, board } = useNight()
  const changed = useChanged(one.next?.task.step ?? '')
  if (!order || !one.hands) return null
  const { next } = one
  const until = sitsNext(order, one, nowMs)
  const [waits] = one.waiting
  if (waits)
    return (
      <section className={css.then} aria-label="Then">
        <p className={css.quiet}>Then, at once</p>
        <p className={css.value}>{sentence(taskText(waits, names))}</p>
      </section>
    )
  if (!next)
    return (
      <section className={css.then} aria-label="Then">
        <p className={css.quiet}>Then</p>
        <p className={css.value}>Nothing more for you</p>
      </section>
    )
  const at = clockText(next.at, evening.zone)
  return (
    <section className={css.then} aria-label="Then">
      <div>
        <p className={css.quiet}>Then</p>
        <p className={css.value} data-changed={changed || undefined}>
          {until === null ? `${at}, ${inText(wholeMinutes(nowMs, next.at))}` : `Sit until ${at}`}
        </p>
        <p>
          {until === null ? '' : 'then '}
          {until === null ? sentence(taskText(next.task, names)) : taskText(next.task, names)}
        </p>
      </div>
      {until === null ? null : <Plate size={84} colour={courseColour(evening, board)} />}
    </section>
  )
}

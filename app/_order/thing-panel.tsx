'use client'

import { useEffect, useRef } from 'react'
import { clockText, dayName, dayOf, sentence } from '#app/_words/clock.ts'
import { durationText } from '#app/_words/duration.ts'
import type { Names } from '#app/_words/names.ts'
import { secondsOf } from '#lib/domain/duration.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { Cue, RunningOrder } from '#lib/domain/running-order.ts'
import { type Thing, useChoose } from './choose.tsx'
import { Pieces } from './reasons.tsx'
import css from './step-panel.module.css'

interface Props {
  readonly thing: Thing
  readonly evening: Evening
  readonly order: RunningOrder
  readonly names: Names
}

/** What a piece of kit, a cook or a course has to do with the evening: every step of it, by the clock. */
export function ThingPanel({ thing, evening, order, names }: Props) {
  const { chooseThing, takesFocus } = useChoose()
  const head = useRef<HTMLHeadingElement>(null)
  // biome-ignore lint/correctness/useExhaustiveDependencies: each newly chosen thing takes the focus once
  useEffect(() => {
    if (takesFocus()) head.current?.focus()
  }, [thing])
  const cues = order.cues.filter((cue) => isOf(thing, cue, names)).toSorted((a, b) => Date.parse(a.start) - Date.parse(b.start))
  return (
    <section className={css.panel} aria-label={nameOf(thing, names)}>
      <div className={css.head}>
        <h2 ref={head} tabIndex={-1}>
          {sentence(nameOf(thing, names))}
        </h2>
        <button type="button" onClick={() => chooseThing(null)} aria-label={`Close ${nameOf(thing, names)}`}>
          <svg width="16" height="16" viewBox="0 0 16 16" aria-hidden="true">
            <path d="M3 3l10 10M13 3L3 13" />
          </svg>
        </button>
      </div>
      <p className={css.when}>{aboutText(thing, order, names)}</p>
      <ol className={css.uses}>
        {cues.map((cue) => (
          <li key={`${cue.step}.${cue.batch}`}>
            {whenText(cue, evening)}{' '}
            <Pieces pieces={[{ to: 'step', id: cue.step, words: names.stepName(cue.step) }]} order={order} />
          </li>
        ))}
      </ol>
    </section>
  )
}

const nameOf = ({ kind, id }: Thing, names: Names): string =>
  kind === 'kit' ? names.kitName(id) : kind === 'cook' ? names.cookName(id) : names.courseName(id)

const isOf = ({ kind, id }: Thing, cue: Cue, names: Names): boolean => {
  if (kind === 'kit') return cue.kit.some((unit) => unit.id === id)
  if (kind === 'cook') return cue.cooks.includes(id) || cue.touches.some(({ cook }) => cook === id)
  return names.dish(names.step(cue.step)?.dish ?? null)?.course === id
}

const aboutText = ({ kind, id }: Thing, order: RunningOrder, names: Names): string => {
  if (kind === 'kit') return `In ${names.kit(id)?.kitchen.name || 'the kitchen'}. What wants it, by the clock:`
  if (kind === 'cook') {
    const missed = order.cooks.find(({ cook }) => cook === id)?.missed
    const up = missed === undefined || secondsOf(missed) === 0 ? '' : `Up from the table for ${durationText(missed)}. `
    return `${up}What they do, by the clock:`
  }
  const served = order.courses.find(({ course }) => course === id)
  return `${served ? `To table ${clockText(served.toTable, order.zone)}. ` : ''}What it is made of, by the clock:`
}

const whenText = ({ start, end }: Cue, evening: Evening): string => {
  const day = dayOf(evening, start)
  return `${day === 0 ? '' : `${dayName(evening.date, day)} `}${clockText(start, evening.zone)} to ${clockText(end, evening.zone)}`
}

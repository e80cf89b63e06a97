'use client'

import { memo } from 'react'
import type { Piece } from '#app/_words/because.ts'
import { chanceText, waitFreeText } from '#app/_words/chance.ts'
import { clockText } from '#app/_words/clock.ts'
import type { Names } from '#app/_words/names.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import css from './course-figures.module.css'
import { Pieces } from './reasons.tsx'

type Served = RunningOrder['courses'][number]

interface SureProps {
  readonly served: Served
  readonly order: RunningOrder
  readonly names: Names
}

/** How sure a course is to be on time and how long it can wait, in a line or two. The step that decides can be followed. */
export function CourseSure({ served, order, names }: SureProps) {
  const { onTime, decidedBy } = served
  const wait = waitFreeText(served, names, order.zone)
  if (onTime === null && wait === null) return null
  const step: Piece | null = decidedBy === null ? null : { to: 'step', id: decidedBy, words: `“${names.stepName(decidedBy)}”` }
  return (
    <small className={css.sure}>
      {onTime === null ? null : `On time ${chanceText(onTime)}. `}
      {onTime === null || step === null ? null : <Pieces pieces={['It hangs on ', step, '. ']} order={order} />}
      {wait}
    </small>
  )
}

interface Props {
  readonly order: RunningOrder
  readonly names: Names
}

/** Each course with when it is to reach the table, how sure that is, and how long it can wait. */
export const CourseFigures = memo(function CourseFigures({ order, names }: Props) {
  if (!order.courses.some(({ onTime, waitFreeUntil }) => onTime !== null || waitFreeUntil !== null)) return null
  return (
    <section aria-labelledby="courses-sure">
      <h2 id="courses-sure" className={css.title}>
        To the table
      </h2>
      <ul className={css.courses}>
        {order.courses.map((served) => (
          <li key={served.course}>
            <b>{clockText(served.toTable, order.zone)}</b>
            <span>
              {names.courseName(served.course)}
              <CourseSure served={served} order={order} names={names} />
            </span>
          </li>
        ))}
      </ul>
    </section>
  )
})

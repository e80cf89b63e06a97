'use client'

import { onTimeText, waitFreeText } from '#app/_words/chance.ts'
import { clockText } from '#app/_words/clock.ts'
import type { Names } from '#app/_words/names.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import css from './course-figures.module.css'

type Served = RunningOrder['courses'][number]

/** How sure a course is to be on time and how long it can wait, in a line or two. */
export function CourseSure({ served, names, zone }: { readonly served: Served; readonly names: Names; readonly zone: string }) {
  const said = [onTimeText(served, names), waitFreeText(served, zone)].filter((text) => text !== null)
  return said.length > 0 ? <small className={css.sure}>{said.join(' ')}</small> : null
}

/** Each course with when it is to reach the table, how sure that is, and how long it can wait. */
export function CourseFigures({ order, names }: { readonly order: RunningOrder; readonly names: Names }) {
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
              <CourseSure served={served} names={names} zone={order.zone} />
            </span>
          </li>
        ))}
      </ul>
    </section>
  )
}

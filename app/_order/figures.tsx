'use client'

import { listText } from '#app/_words/clock.ts'
import { durationText, minutesText } from '#app/_words/duration.ts'
import type { Names } from '#app/_words/names.ts'
import { fightProvedText } from '#app/_words/wish.ts'
import { minutesOf } from '#lib/domain/duration.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import css from './figures.module.css'
import { upTimes } from './picture/cloth.ts'
import { doings } from './picture/doings.ts'

const WIDTH = 150

/** Minutes up from the table for each cook, and how long guests wait: the figures beside the picture. */
export function Figures({
  evening,
  order,
  names,
}: {
  readonly evening: Evening
  readonly order: RunningOrder
  readonly names: Names
}) {
  const welcome = new Set(evening.courses.filter((course) => course.welcome).map((course) => course.id))
  const moments = order.courses.filter((course) => !welcome.has(course.course)).map((course) => Date.parse(course.toTable))
  const window = { from: Math.min(...moments), to: Math.max(...moments) }
  const atTable = new Set(evening.steps.filter((step) => step.where === 'table').map((step) => step.id))
  const all = doings(order, names).filter((doing) => !atTable.has(doing.cue.step))
  const waits = order.courses
    .filter((course) => !welcome.has(course.course))
    .slice(1)
    .map((course) => minutesOf(course.wait))
  const away = minutesOf(order.allHostsAway)
  const hosts = evening.cooks.filter((cook) => cook.host).length
  const x = (ms: number) => 0.5 + ((ms - window.from) / Math.max(1, window.to - window.from)) * (WIDTH - 1)
  return (
    <>
      {order.cooks.length > 0 && moments.length > 1 ? (
        <section aria-labelledby="up">
          <h2 id="up" className={css.title}>
            Up from the table
          </h2>
          <ul className={css.cooks}>
            {order.cooks.map((cook) => (
              <li key={cook.cook}>
                <span>{names.cookName(cook.cook)}</span>
                <svg width={WIDTH} height="16" viewBox={`0 0 ${WIDTH} 16`} aria-hidden="true">
                  <rect className={css.cloth} x=".5" y=".5" width={WIDTH - 1} height="15" rx="4" />
                  {upTimes(
                    all.filter((doing) => doing.cook === cook.cook),
                    window,
                  ).map((up) => (
                    <g key={up.from}>
                      <rect className={css.hole} x={x(up.from)} y="0" width={Math.max(1, x(up.to) - x(up.from))} height="16" />
                      <path className={css.edge} d={`M${x(up.from)} .5V15.5M${x(up.to)} .5V15.5`} />
                    </g>
                  ))}
                </svg>
                <b>{minutesOf(cook.missed) === 0 ? 'not at all' : durationText(cook.missed)}</b>
              </li>
            ))}
          </ul>
        </section>
      ) : null}
      {waits.length > 0 || away > 0 || order.proof.kind === 'best' || order.proof.kind === 'fight' ? (
        <p className={css.waits}>
          {waits.length > 0
            ? `Guests wait ${listText(waits.map((minutes) => minutesText(minutes).replace(/ min$/, '')))} min between courses.`
            : ''}
          {order.clashes.length === 0 && waits.length > 0 ? ' Every wish is kept.' : ''}
          {order.proof.kind === 'best' ? ' Nobody can plan this better.' : ''}
          {order.proof.kind === 'fight' ? ` ${fightProvedText(order.proof.wishes, names)}` : ''}
          {hosts > 1 && away > 0 ? ` ${hosts === 2 ? 'Both' : 'All'} hosts are away together for ${minutesText(away)}.` : ''}
        </p>
      ) : null}
    </>
  )
}

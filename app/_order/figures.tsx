'use client'

import { memo } from 'react'
import { Fold } from '#app/_ui/fold.tsx'
import { Stitches } from '#app/_ui/stitches.tsx'
import { clockText, listText } from '#app/_words/clock.ts'
import { awayText, glassText, quietText } from '#app/_words/couple.ts'
import { durationText, minutesText } from '#app/_words/duration.ts'
import type { Names } from '#app/_words/names.ts'
import { fightProvedText } from '#app/_words/wish.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { coupleOf } from '#lib/sharing/couple.ts'
import css from './figures.module.css'
import { lastMinutesOfCooks } from './last-minute.ts'
import { type Seated, seatedOf } from './seated.ts'

interface Props {
  readonly evening: Evening
  readonly order: RunningOrder
  readonly names: Names
}

/** Minutes up from the table for each cook, how long guests wait, and the last minutes: the figures beside the picture. */
export const Figures = memo(function Figures({ evening, order, names }: Props) {
  const seated = seatedOf(evening, order)
  const together = seated.cooks.reduce((sum, { missed }) => sum + missed, 0)
  return (
    <>
      {seated.cooks.length > 0 && seated.from < seated.to ? (
        <section aria-labelledby="up">
          <h2 id="up" className={css.title}>
            Up from the table
          </h2>
          <ul className={css.cooks}>
            {seated.cooks.map(({ cook, missed, ups }) => (
              <li key={cook}>
                <span>{names.cookName(cook)}</span>
                <Cloth seated={seated} ups={ups} />
                <b>{missed === 0 ? 'not at all' : minutesText(missed)}</b>
              </li>
            ))}
            {seated.cooks.length > 1 && together > 0 ? (
              <li className={css.together}>
                <span>Together</span>
                <b>{minutesText(together)}</b>
              </li>
            ) : null}
          </ul>
          <Fold title="Who may sit when">
            <ul className={css.sits}>
              {seated.cooks.map(({ cook, sits }) => (
                <li key={cook}>
                  <b>{names.cookName(cook)}</b> {sitsText(sits, order.zone)}
                </li>
              ))}
            </ul>
          </Fold>
        </section>
      ) : null}
      <Waits evening={evening} order={order} names={names} />
      <LastQuarter order={order} names={names} />
    </>
  )
})

const WIDTH = 150

/** A cook's stretch of the cloth between the first course and the last, with a hole wherever they are up. */
function Cloth({ seated: { from, to }, ups }: { readonly seated: Seated; readonly ups: Seated['cooks'][number]['ups'] }) {
  const x = (ms: number) => 0.5 + ((ms - from) / (to - from)) * (WIDTH - 1)
  return (
    <svg width={WIDTH} height="16" viewBox={`0 0 ${WIDTH} 16`} aria-hidden="true">
      <rect className={css.cloth} x=".5" y=".5" width={WIDTH - 1} height="15" rx="4" />
      {ups.map((up) => (
        <g key={up.from}>
          <rect className={css.hole} x={x(up.from)} y="0" width={Math.max(1, x(up.to) - x(up.from))} height="16" />
          <path className={css.edge} d={`M${x(up.from)} .5V15.5M${x(up.to)} .5V15.5`} />
        </g>
      ))}
    </svg>
  )
}

const sitsText = (sits: Seated['cooks'][number]['sits'], zone: string): string =>
  sits.length === 0
    ? 'is up all the time'
    : `from ${listText(sits.map(({ from, to }) => `${clockText(from, zone)} to ${clockText(to, zone)}`))}`

/** How long guests wait, whether every wish is kept, and what the prover has said. */
function Waits({ evening, order, names }: Props) {
  const welcome = new Set(evening.courses.filter((course) => course.welcome).map((course) => course.id))
  const waits = order.courses
    .filter((course) => !welcome.has(course.course))
    .slice(1)
    .map((course) => durationText(course.wait).replace(/ min$/, ''))
  const hosts = evening.cooks.filter((cook) => cook.host).length
  const { away, quiet, glasses } = coupleOf(evening, order)
  const said = [
    waits.length > 0 ? `Guests wait ${listText(waits)} min between courses.` : '',
    waits.length > 0 && order.clashes.length === 0 ? 'Every wish is kept.' : '',
    order.proof.kind === 'best' ? 'Nobody can plan this better.' : '',
    order.proof.kind === 'fight' ? fightProvedText(order.proof.wishes, names) : '',
    waits.length > 0 ? awayText(away, hosts) : '',
    quietText(quiet, names),
  ].filter(Boolean)
  return (
    <>
      {said.length > 0 ? <p className={css.waits}>{said.join(' ')}</p> : null}
      {glasses.length > 0 ? (
        <ul className={css.glasses} aria-label="Hard work after a glass">
          {glasses.map((one) => (
            <li key={`${one.cook} ${one.step}`}>{glassText(one, names, order.zone)}</li>
          ))}
        </ul>
      ) : null}
    </>
  )
}

/** One stitch for each minute that a cook is at a course's dishes in the quarter of an hour before it. */
function LastQuarter({ order, names }: Pick<Props, 'order' | 'names'>) {
  const courses = lastMinutesOfCooks(order, names)
  if (courses.length === 0) return null
  return (
    <Fold title="In the last quarter of an hour">
      <dl className={css.last}>
        {courses.map(({ course, cooks }) => (
          <div key={course}>
            <dt>{names.courseName(course)}</dt>
            {cooks.map(({ cook, minutes }) => (
              <dd key={cook}>
                <span>{names.cookName(cook)}</span>
                <Stitches minutes={Math.max(1, minutes)} />
              </dd>
            ))}
          </div>
        ))}
      </dl>
    </Fold>
  )
}

'use client'

import { dishColour, PlateShape } from '#app/_ui/plate.tsx'
import { clockText, dayOf, longDate } from '#app/_words/clock.ts'
import { daysText, inText, lateText, NOT_PLANNED, PLANNED_AGAIN } from '#app/_words/night-time.ts'
import { bySiblingOrder } from '#lib/domain/evening.ts'
import { outCourses } from './facts.ts'
import css from './top.module.css'
import { useNight } from './use-night.ts'

/** The clock, and the next course: in how many minutes, and whether on time, in words. */
export function TopBar() {
  const { evening, nowMs } = useNight()
  return (
    <div className={css.top}>
      <time className={css.clock}>{clockText(nowMs, evening.zone)}</time>
      <Next />
      <Courses />
    </div>
  )
}

function Next() {
  const { board, evening, names, nowMs, orderState, isFromBefore } = useNight()
  if (!board) return <p className={css.next}>{evening.name || 'Tonight'}</p>
  const { course } = board
  const days = -dayOf(evening, nowMs)
  if (board.phase === 'before' && days > 0)
    return (
      <p className={css.next}>
        <b>{longDate(evening.date)}</b> {daysText(days)}
      </p>
    )
  if (!course)
    return (
      <p className={css.next}>
        <b>Every course is out</b>
        <span className={css.quiet}>nothing more to serve</span>
      </p>
    )
  return (
    <p className={css.next}>
      <b>
        {names.courseName(course.course)} to table {clockText(course.toTable, evening.zone)}
      </b>{' '}
      {inText(course.inMinutes)},{' '}
      {orderState.kind === 'current' && !isFromBefore ? (
        <span className={course.lateBy > 0 ? css.late : css.fine}>{lateText(course.lateBy, course.because, names)}</span>
      ) : (
        <span className={css.quiet}>{orderState.kind === 'failed' ? NOT_PLANNED : PLANNED_AGAIN}</span>
      )}
    </p>
  )
}

const SIZE = 58
const MOST = 6

/** The courses as plates: an empty one is out, the next has a ring. */
function Courses() {
  const { evening, board, names } = useNight()
  const out = outCourses(evening)
  const courses = evening.courses.toSorted(bySiblingOrder)
  const next = board?.course?.course
  if (courses.length > MOST) return <span />
  const told = courses.map(
    ({ id }) => `${names.courseName(id)}${out.has(id) ? ' is out' : id === next ? ' is next' : ' to come'}`,
  )
  return (
    <span className={css.plates} role="img" aria-label={told.join(', ')}>
      {courses.map((course, index) => (
        <svg key={course.id} width={SIZE} height={SIZE} viewBox={`0 0 ${SIZE} ${SIZE}`} aria-hidden="true">
          <PlateShape x={SIZE / 2} y={SIZE / 2} r={24} colour={out.has(course.id) ? null : dishColour(index)} />
          {course.id === next ? <circle className={css.ring} cx={SIZE / 2} cy={SIZE / 2} r={27.6} /> : null}
        </svg>
      ))}
    </span>
  )
}

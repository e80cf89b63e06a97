'use client'

import { useState } from 'react'
import { dishColour } from '#app/_ui/plate.tsx'
import { PlateState } from '#app/_ui/plate-state.tsx'
import { clockText } from '#app/_words/clock.ts'
import { guestAbout, guestName } from '#app/_words/guest.ts'
import type { Names } from '#app/_words/names.ts'
import { standingWords, verdictShort } from '#app/_words/verdict.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { Guest } from '#lib/domain/people.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import type { CourseCoverage, ForGuest } from '#lib/table/coverage.ts'
import type { Standing } from '#lib/table/verdict.ts'
import css from './coverage.module.css'

interface Props {
  readonly evening: Evening
  readonly guests: readonly Guest[]
  readonly covered: readonly CourseCoverage[]
  readonly order: RunningOrder | null
  readonly names: Names
}

/** A column: a course with each guest's best plate in it, or one dish of a course that was opened. */
type Column =
  | { readonly kind: 'course'; readonly course: CourseCoverage; readonly dishes: number }
  | { readonly kind: 'dish'; readonly course: CourseCoverage; readonly dish: string; readonly isFirst: boolean }

/** Who can eat what: guests down, courses across, each course to be opened dish by dish. */
export function CoverageTable({ evening, guests, covered, order, names }: Props) {
  const [open, setOpen] = useState<ReadonlySet<string>>(new Set())
  const toggle = (course: string) => {
    const next = new Set(open)
    if (!next.delete(course)) next.add(course)
    setOpen(next)
  }
  const columns = covered.flatMap((course): Column[] => {
    const dishes = course.guests[0]?.dishes ?? []
    if (!open.has(course.course) || dishes.length < 2) return [{ kind: 'course', course, dishes: dishes.length }]
    return dishes.map(({ dish }, index) => ({ kind: 'dish', course, dish, isFirst: index === 0 }))
  })
  const colour = (course: string) => dishColour(evening.courses.findIndex(({ id }) => id === course))
  const time = (course: string) => {
    const at = order?.courses.find((each) => each.course === course)?.toTable
    return at === undefined ? null : clockText(at, evening.zone)
  }
  const coming = guests.filter((guest) => guest.reply !== 'no')
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls is reached by keyboard
    <section className={css.scroll} aria-label="Guests and their plates" tabIndex={0}>
      <table className={css.table}>
        <thead>
          <tr>
            <th scope="col" className={css.column}>
              <span className="vh">Guest</span>
            </th>
            {columns.map((column) => (
              <th scope="col" className={css.column} key={column.kind === 'course' ? column.course.course : column.dish}>
                {column.kind === 'course' ? names.courseName(column.course.course) : names.dishName(column.dish)}
                <small>
                  {column.kind === 'course' ? (time(column.course.course) ?? '') : names.courseName(column.course.course)}
                </small>
                {column.kind === 'course' && column.dishes > 1 ? (
                  <button type="button" aria-expanded={false} onClick={() => toggle(column.course.course)}>
                    {column.dishes} dishes
                    <span className="vh"> of {names.courseName(column.course.course)}: one by one</span>
                  </button>
                ) : null}
                {column.kind === 'dish' && column.isFirst ? (
                  <button type="button" aria-expanded={true} onClick={() => toggle(column.course.course)}>
                    the best of them
                    <span className="vh"> for {names.courseName(column.course.course)}</span>
                  </button>
                ) : null}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {coming.map((guest) => (
            <tr key={guest.id} className={guest.needs === null ? css.unknown : undefined}>
              <th scope="row" className={css.row}>
                {guestName(guest)}
                <small>{guestAbout(guest)}</small>
              </th>
              {columns.map((column) => (
                <td className={css.plate} key={column.kind === 'course' ? column.course.course : column.dish}>
                  <Cell column={column} guest={guest} colour={colour(column.course.course)} names={names} evening={evening} />
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  )
}

interface CellProps {
  readonly column: Column
  readonly guest: Guest
  readonly colour: 1 | 2 | 3 | 4
  readonly names: Names
  readonly evening: Evening
}

const isGrave = (guest: Guest): boolean => guest.needs?.some(({ grade }) => grade === 'severe') === true

/** The plate and its words; of a course the best one, with which dish it is where that is not plain. */
function Cell({ column, guest, colour, names, evening }: CellProps) {
  const found = column.course.guests.find((each) => each.guest === guest.id)
  const shown: ForGuest['best'] =
    column.kind === 'course' ? (found?.best ?? null) : (found?.dishes.find(({ dish }) => dish === column.dish) ?? null)
  const isPlain = guest.needs?.length === 0
  const standing = shown?.verdict.kind ?? 'does-not'
  const isNothing = column.kind === 'course' && standing === 'does-not'
  const severe = isGrave(guest) ? guestName(guest).slice(0, 1).toUpperCase() : undefined
  const short = shown === null ? 'no dish yet' : verdictShort(shown.verdict, evening)
  return (
    <span className={css.cell}>
      <PlateState standing={standing} colour={colour} size={46} severe={standing === 'fits' ? undefined : severe} />
      <span className={css[tones[standing]]}>
        <span className="vh">{isNothing ? 'nothing yet: ' : `${standingWords[standing]}: `}</span>
        {isPlain && standing === 'fits' ? (
          <span className="vh">{shown ? names.dishName(shown.dish) : ''}</span>
        ) : isNothing ? (
          'nothing yet'
        ) : column.kind === 'course' && shown ? (
          <>
            {names.dishName(shown.dish)}
            {standing === 'fits' ? '' : `: ${short}`}
          </>
        ) : (
          short
        )}
      </span>
    </span>
  )
}

const tones = {
  fits: 'fits',
  'with-change': 'change',
  'does-not': 'late',
  'not-confirmed': 'ask',
} as const satisfies Record<Standing, string>

/** What each plate of the table means. */
export function CoverageKey() {
  return (
    <ul className={css.key} aria-label="What the plates mean">
      {(['fits', 'with-change', 'does-not', 'not-confirmed'] as const).map((standing) => (
        <li key={standing}>
          <PlateState standing={standing} colour={3} size={24} /> {standingWords[standing]}
        </li>
      ))}
    </ul>
  )
}

'use client'

import { type CSSProperties, useEffect, useMemo } from 'react'
import { daysOf, type Row } from '#app/_order/rows.ts'
import { keepWords } from '#app/_words/care.ts'
import { clashWhat } from '#app/_words/clash.ts'
import { clockText, dayName, listText, sentence } from '#app/_words/clock.ts'
import type { Names } from '#app/_words/names.ts'
import { platesOffText } from '#app/_words/plates-off.ts'
import { peopleText, whenText } from '#app/_words/print.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { type SheetProps, Warnings } from './cook-sheet.tsx'
import { useFit } from './use-fit.ts'
import css from './wall.module.css'

/** What of the order goes on the wall; who sits when is each one's own. */
const ON_WALL: ReadonlySet<Row['kind']> = new Set(['doing', 'course', 'off', 'guests', 'alone', 'keep', 'heat', 'clash'])

interface Props extends Omit<SheetProps, 'findings'> {
  readonly onPages: (pages: number) => void
}

/** The whole order in columns of lines, set as large as one page has room for. */
export function WallSheet({ evening, order, names, needs, foot, onPages }: Props) {
  const days = useMemo(() => daysOf(evening, order, names), [evening, order, names])
  const { ref, points, pages } = useFit(days)
  useEffect(() => onPages(pages), [pages, onPages])
  return (
    <article className={css.wall} data-pages={pages} data-points={points}>
      <header className={css.wallHead}>
        <h2>{evening.name}</h2>
        <p>
          {peopleText(evening)}. {whenText(evening)}. {foot}
        </p>
      </header>
      <Warnings evening={evening} names={names} needs={needs} look={css.note} />
      <div ref={ref} className={css.columns} style={{ '--points': `${points}pt` } as CSSProperties}>
        {days.map(({ day, rows }) => (
          <section key={day} className={css.wallDay}>
            <h3>{dayName(evening.date, day)}</h3>
            <ol>
              {rows
                .filter(({ kind }) => ON_WALL.has(kind))
                .map((row) => (
                  <li key={row.key} className={row.kind === 'course' ? css.wallCourse : undefined}>
                    <b className={css.clock}>{clockText(row.at, evening.zone)}</b>
                    <span>{wallText(row, evening, order, names)}</span>
                  </li>
                ))}
            </ol>
          </section>
        ))}
      </div>
    </article>
  )
}

const wallText = (row: Row, evening: Evening, order: RunningOrder, names: Names) => {
  const clock = (instant: number | string) => clockText(instant, evening.zone)
  switch (row.kind) {
    case 'doing': {
      const { doing } = row
      const until = doing.touch === 'in' ? `, until ${clock(doing.cue.end)}` : ''
      return (
        <>
          <b>{listText(row.cooks.map(names.cookName))}</b> {sentence(doing.words)}
          {doing.touch === null ? '' : doing.tail}
          {until}
        </>
      )
    }
    case 'course':
      return `${names.courseName(row.course)} to the table`
    case 'off':
      return platesOffText(
        order.courses.find(({ course }) => course === row.next),
        names,
      )
    case 'guests':
      return 'Guests may come'
    case 'alone':
      return `${sentence(names.step(row.cue.step)?.does || names.stepName(row.cue.step))}, by itself until ${clock(row.cue.end)}`
    case 'keep': {
      const how = names.dish(row.keep.dish)?.keeps.how
      return `${names.dishName(row.keep.dish)} waits${how ? ` ${keepWords[how]}` : ''} until ${clock(row.keep.to)}`
    }
    case 'heat':
      return `Set ${names.kitName(row.oven)} to ${row.c}°`
    case 'clash':
      return `Clash: ${clashWhat(row.clash)}.`
    case 'sits':
      return listText(row.cooks.map(names.cookName))
  }
}

'use client'

import { useMemo } from 'react'
import { ClaimLine } from '#app/_frame/claim.tsx'
import { keepWords } from '#app/_words/care.ts'
import { clashText, clashTitle } from '#app/_words/clash.ts'
import { clockText, dayName, listText, longDate, sentence } from '#app/_words/clock.ts'
import { durationText, minutesText } from '#app/_words/duration.ts'
import type { Names } from '#app/_words/names.ts'
import { platesOffText } from '#app/_words/plates-off.ts'
import { minutesOf } from '#lib/domain/duration.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { Cue, KitUnit, RunningOrder } from '#lib/domain/running-order.ts'
import { CourseSure } from './course-figures.tsx'
import css from './order-list.module.css'
import { StepPanel } from './order-pieces.ts'
import { daysOf, type Row } from './rows.ts'

interface Props {
  readonly evening: Evening
  readonly order: RunningOrder
  readonly names: Names
  readonly chosen: string | null
  readonly onChoose: (key: string) => void
}

/** The running order in words: the twin of the picture for reading aloud and for paper. */
export function OrderList({ evening, order, names, chosen, onChoose }: Props) {
  const days = useMemo(() => daysOf(evening, order, names), [evening, order, names])
  return (
    <div className={css.list}>
      {days.map(({ day, rows }) => (
        <section key={day} aria-labelledby={`day-${day}`}>
          <h2 id={`day-${day}`}>{day === 0 ? longDate(evening.date) : dayName(evening.date, day)}</h2>
          <ol className={css.rows}>
            {rows.map((row) => (
              <ListRow
                key={row.key}
                row={row}
                evening={evening}
                order={order}
                names={names}
                isChosen={row.key === chosen}
                onChoose={onChoose}
              />
            ))}
          </ol>
        </section>
      ))}
    </div>
  )
}

interface RowProps extends Omit<Props, 'chosen'> {
  readonly row: Row
  readonly isChosen: boolean
}

function ListRow({ row, evening, order, names, isChosen, onChoose }: RowProps) {
  const clock = <b className={css.clock}>{clockText(row.at, evening.zone)}</b>
  switch (row.kind) {
    case 'guests':
      return (
        <li className={css.house}>
          {clock}
          <span>Guests may come</span>
        </li>
      )
    case 'course': {
      const served = order.courses.find((course) => course.course === row.course)
      return (
        <li className={css.course}>
          {clock}
          <span>
            {names.courseName(row.course)} to table
            {served && minutesOf(served.wait) > 15 ? <em> after a long wait of {durationText(served.wait)}</em> : null}
            {served ? <CourseSure served={served} order={order} names={names} /> : null}
          </span>
          <span className={css.claim}>
            <ClaimLine target={row.course} name={names.courseName(row.course)} brief />
          </span>
        </li>
      )
    }
    case 'off':
      return (
        <li className={css.house}>
          {clock}
          <span>
            {platesOffText(
              order.courses.find((course) => course.course === row.next),
              names,
            )}
          </span>
        </li>
      )
    case 'alone':
      return (
        <li>
          {clock}
          <span className={css.what}>
            <span className={css.does}>{names.step(row.cue.step)?.does || names.stepName(row.cue.step)}</span>
            <small>
              by itself until {clockText(row.cue.end, evening.zone)}
              {withKit(row.cue, names)}
            </small>
          </span>
        </li>
      )
    case 'keep': {
      const kit = kitNames(row.keep.kit, names)
      const how = names.dish(row.keep.dish)?.keeps.how
      return (
        <li className={css.house}>
          {clock}
          <span>
            {names.dishName(row.keep.dish)} waits{how ? ` ${keepWords[how]}` : ''} until {clockText(row.keep.to, evening.zone)}
            {kit ? `, with ${kit}` : ''}
          </span>
        </li>
      )
    }
    case 'heat':
      return (
        <li className={css.house}>
          {clock}
          <span>
            Set {names.kitName(row.oven)} to {row.c}°
          </span>
        </li>
      )
    case 'sits':
      return (
        <li className={css.house}>
          {clock}
          <span>
            {listText(row.cooks.map(names.cookName))} {row.cooks.length === 1 ? 'sits' : 'sit'}{' '}
            {minutesText((row.to - row.at) / 60_000)}, until {clockText(row.to, evening.zone)}
          </span>
        </li>
      )
    case 'clash':
      return (
        <li className={css.clash}>
          {clock}
          <span>
            <b>{clashTitle(row.clash, order.zone)}.</b> {clashText(row.clash, names, order.cues)}
          </span>
        </li>
      )
    case 'doing': {
      const { doing } = row
      const step = names.step(doing.cue.step)
      const dish = names.dish(step?.dish ?? null)
      const minutes = minutesText((doing.to - doing.from) / 60_000)
      const state = doing.cue.state === 'done' ? ', done' : doing.cue.state === 'running' ? ', being done' : ''
      return (
        <li className={doing.cue.state === 'done' ? css.done : ''}>
          {clock}
          <span className={css.what}>
            <button type="button" className={css.does} aria-expanded={isChosen} onClick={() => onChoose(row.key)}>
              {sentence(step?.does || names.stepName(doing.cue.step))}
              {doing.cue.batch > 0 ? ` (${doing.cue.batch + 1})` : ''}
              {doing.touch === null ? '' : doing.tail}
              {state}
            </button>
            <small>
              {listText(row.cooks.map(names.cookName))}, {minutes}
              {dish ? `, for ${dish.name}` : ''}
              {withKit(doing.cue, names)}
              {doing.touch === 'in' ? `, until ${clockText(doing.cue.end, evening.zone)}` : ''}
            </small>
          </span>
          {doing.touch === null || doing.key.endsWith('.t0') ? (
            <span className={css.claim}>
              <ClaimLine target={doing.cue.step} name={step?.does || 'this step'} brief />
            </span>
          ) : null}
          {isChosen ? (
            <div className={css.panel}>
              <StepPanel doing={doing} order={order} names={names} />
            </div>
          ) : null}
        </li>
      )
    }
  }
}

const kitNames = (kit: readonly KitUnit[], names: Names): string =>
  listText([...new Set(kit.map((unit) => unit.id))].map(names.kitName))

const withKit = (cue: Cue, names: Names): string => {
  const kit = kitNames(cue.kit, names)
  return kit ? `, with ${kit}` : ''
}

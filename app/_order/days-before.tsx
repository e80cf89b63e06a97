'use client'

import { clockText, countOf, dayName, dayOf, listText, shortDay } from '#app/_words/clock.ts'
import type { Names } from '#app/_words/names.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import css from './days-before.module.css'
import { type Doing, doings } from './picture/doings.ts'

interface Props {
  readonly evening: Evening
  readonly order: RunningOrder
  readonly names: Names
  /** Only this cook's, on a phone. */
  readonly cook: string | null
  readonly chosen: string | null
  readonly onChoose: (key: string) => void
  readonly open: boolean
  readonly onOpen: (open: boolean) => void
}

/** The days ahead of the evening, folded above it like a pleat of the cloth. */
export function DaysBefore({ evening, order, names, cook, chosen, onChoose, open, onOpen }: Props) {
  const ahead = doings(order, names).filter((doing) => dayOf(evening, doing.from) < 0 && (cook === null || doing.cook === cook))
  if (ahead.length === 0) return null
  const days = [...new Set(ahead.map((doing) => dayOf(evening, doing.from)))].sort((a, b) => a - b)
  const cooks = evening.cooks.filter((candidate) => ahead.some((doing) => doing.cook === candidate.id))
  const count = (id: string) => ahead.filter((doing) => doing.cook === id).length
  return (
    <section className={css.pleat} aria-label="The days before">
      <button type="button" className={css.fold} aria-expanded={open} onClick={() => onOpen(!open)}>
        <span>
          {listText(days.map((day) => shortDay(evening.date, day)))}:{' '}
          {listText(cooks.map((each) => `${each.name} ${countOf(count(each.id), 'thing')}`))}
        </span>
        <b>{open ? 'fold the days before' : 'unfold the days before'}</b>
      </button>
      {open ? (
        <div className={css.days}>
          {days.map((day) => (
            <div className={css.day} key={day}>
              <h2>{dayName(evening.date, day)}</h2>
              <div className={css.columns}>
                {cooks.map((each) => (
                  <Column
                    key={each.id}
                    name={cook === null ? each.name : null}
                    list={ahead.filter((doing) => doing.cook === each.id && dayOf(evening, doing.from) === day)}
                    zone={evening.zone}
                    chosen={chosen}
                    onChoose={onChoose}
                  />
                ))}
              </div>
            </div>
          ))}
        </div>
      ) : null}
    </section>
  )
}

interface ColumnProps {
  readonly name: string | null
  readonly list: readonly Doing[]
  readonly zone: string
  readonly chosen: string | null
  readonly onChoose: (key: string) => void
}

function Column({ name, list, zone, chosen, onChoose }: ColumnProps) {
  return (
    <div>
      {name === null ? null : <h3>{name}</h3>}
      <ul>
        {list.map((doing) => (
          <li key={doing.key}>
            <button type="button" aria-pressed={doing.key === chosen} onClick={() => onChoose(doing.key)}>
              <b>{clockText(doing.from, zone)}</b> {doing.words}
              {doing.tail}
            </button>
          </li>
        ))}
      </ul>
      {list.length === 0 ? <p>nothing</p> : null}
    </div>
  )
}

'use client'

import { useMemo } from 'react'
import { clockText, countOf, dayName, dayOf, listText, sentence, shortDay } from '#app/_words/clock.ts'
import { minutesText } from '#app/_words/duration.ts'
import type { Names } from '#app/_words/names.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { couldBeDone } from './ahead.ts'
import css from './days-before.module.css'
import type { Doing } from './picture/doings.ts'

interface Props {
  readonly evening: Evening
  readonly order: RunningOrder
  readonly names: Names
  /** Everything that cooks are seen doing in this order. */
  readonly all: readonly Doing[]
  /** Only this cook's, on a phone. */
  readonly cook: string | null
  readonly chosen: string | null
  readonly onChoose: (key: string) => void
  /** Who reads, and the server's clock: what can be done today stands above the days. */
  readonly reader: string | null
  readonly now: number
  readonly open: boolean
  readonly onOpen: (open: boolean) => void
}

/** The days ahead of the evening, folded above it like a pleat of the cloth. */
export function DaysBefore({ evening, order, names, all, cook, reader, now, chosen, onChoose, open, onOpen }: Props) {
  const ahead = useMemo(
    () => all.filter((doing) => dayOf(evening, doing.from) < 0 && (cook === null || doing.cook === cook)),
    [all, evening, cook],
  )
  const today = dayOf(evening, now)
  const could = useMemo(() => (today < 0 ? couldBeDone(evening, order, today) : []), [evening, order, today])
  if (ahead.length === 0 && could.length === 0) return null
  const days = [...new Set(ahead.map((doing) => dayOf(evening, doing.from)))].sort((a, b) => a - b)
  const cooks = evening.cooks.filter((candidate) => ahead.some((doing) => doing.cook === candidate.id))
  const count = (id: string) => ahead.filter((doing) => doing.cook === id).length
  return (
    <>
      {today < 0 ? (
        <Today
          list={all.filter((doing) => dayOf(evening, doing.from) === today && doing.cook === reader)}
          could={could.flatMap((cue) => all.find((doing) => doing.cue === cue) ?? [])}
          names={names}
          zone={evening.zone}
          chosen={chosen}
          onChoose={onChoose}
        />
      ) : null}
      {ahead.length === 0 ? null : (
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
      )}
    </>
  )
}

interface TodayProps {
  readonly list: readonly Doing[]
  readonly could: readonly Doing[]
  readonly names: Names
  readonly zone: string
  readonly chosen: string | null
  readonly onChoose: (key: string) => void
}

/** What can I do today: what is planned, and what could as well be done now. */
function Today({ list, could, names, zone, chosen, onChoose }: TodayProps) {
  if (list.length === 0 && could.length === 0) return null
  return (
    <section className={css.today} aria-labelledby="today">
      <h2 id="today">{list.length === 0 ? 'What could be done today' : `${sentence(countOf(list.length, 'thing'))} today`}</h2>
      <Doings list={list} zone={zone} chosen={chosen} onChoose={onChoose} />
      {could.length === 0 ? null : (
        <>
          {list.length === 0 ? null : <h3>Could as well be done today</h3>}
          <ul>
            {could.map((doing) => (
              <li key={doing.key}>
                <button type="button" aria-pressed={doing.key === chosen} onClick={() => onChoose(doing.key)}>
                  {doing.words} <small>{couldText(doing, names)}</small>
                </button>
              </li>
            ))}
          </ul>
        </>
      )}
    </section>
  )
}

/** "25 min, Piet". */
const couldText = (doing: Doing, names: Names): string => {
  const minutes = minutesText((Date.parse(doing.cue.end) - Date.parse(doing.cue.start)) / 60_000)
  return `${minutes}, ${names.cookName(doing.cook)}`
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
      <Doings list={list} zone={zone} chosen={chosen} onChoose={onChoose} />
      {list.length === 0 ? <p>nothing</p> : null}
    </div>
  )
}

/** A touch is what is done to what; a step is told whole. */
const dayWords = ({ touch, words, tail, short }: Doing): string =>
  touch === null ? `${words}${tail}` : `${short.forms[0] ?? words}${short.tag}`

function Doings({ list, zone, chosen, onChoose }: Omit<ColumnProps, 'name'>) {
  return (
    <ul>
      {list.map((doing) => (
        <li key={doing.key}>
          <button type="button" aria-pressed={doing.key === chosen} onClick={() => onChoose(doing.key)}>
            <b>{clockText(doing.from, zone)}</b> {dayWords(doing)}
          </button>
        </li>
      ))}
    </ul>
  )
}

'use client'

import { useId, useState } from 'react'
import { useEdit } from '#app/_frame/use-edit.ts'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Button } from '#app/_ui/button.tsx'
import { WordChoice, WordText } from '#app/_ui/word.tsx'
import { DAYS, dayChoices } from '#app/_words/day.ts'
import { presenceFaultText, readUntil, untilText } from '#app/_words/presence.ts'
import { readClock } from '#app/_words/read-clock.ts'
import type { Cook, Presence } from '#lib/domain/kitchen.ts'
import { presenceFault, usualPresence } from '#lib/domain/presence.ts'
import { setPresence } from '#lib/plan/commands/presence.ts'
import css from './cooks.module.css'
import { freeHours } from './free-hours.ts'

const MOST = 40
const WRONG_CLOCK = 'Write a time, such as 9:00, 17.30 or 5 pm.'
const WRONG_UNTIL = 'Write when they end, such as 22:00, or 01:00 next day.'
const LAST_DAY = Math.max(...DAYS)

/** When and where a cook is there: a sentence for each stretch, one more, and the usual in one tap. */
export function HoursList({ cook }: { readonly cook: Cook }) {
  const { evening } = usePlan()
  const { change } = useEdit()
  const { presence } = cook

  const write = (next: readonly Presence[]): string | null => {
    const fault = presenceFault(evening, next)
    return fault ? presenceFaultText(fault, next, evening.date) : change((doc) => setPresence(doc, cook.id, next))
  }
  const usual = usualPresence(evening.host)
  const more = freeHours(evening, evening.host, presence)
  return (
    <>
      <ul className={css.hours} aria-label={`Hours of ${cook.name}`}>
        {presence.map((hours, index) => (
          <HoursWords
            // biome-ignore lint/suspicious/noArrayIndexKey: hours are their place in the list
            key={index}
            field={`hours ${index}`}
            name={`${cook.name}, hours ${index + 1}`}
            hours={hours}
            isFirst={index === 0}
            onHours={(next) => write(presence.map((other, at) => (at === index ? next : other)))}
            onLeaveOut={() => write(presence.filter((_, at) => at !== index))}
          />
        ))}
      </ul>
      {presence.length === 0 ? <p className={css.quiet}>No hours yet: nothing can be given to {cook.name}.</p> : null}
      <p className={css.offers}>
        {more && presence.length < MOST ? (
          <Button tone="soft" aria-label={`More hours for ${cook.name}`} onClick={() => write([...presence, more])}>
            More hours
          </Button>
        ) : null}
        {JSON.stringify(presence) === JSON.stringify(usual) ? null : (
          <Button tone="soft" aria-label={`${cook.name}: all day before and on the day`} onClick={() => write(usual)}>
            All day before and on the day
          </Button>
        )}
      </p>
    </>
  )
}

interface HoursProps {
  readonly field: string
  readonly name: string
  readonly hours: Presence
  readonly isFirst: boolean
  readonly onHours: (hours: Presence) => string | null
  readonly onLeaveOut: () => void
}

function HoursWords({ field, name, hours, isFirst, onHours, onLeaveOut }: HoursProps) {
  const { evening } = usePlan()
  const id = useId()
  const [wrong, setWrong] = useState<string | null>(null)
  const { from, to } = hours
  const written = (problem: string | null) => {
    setWrong(null)
    return problem
  }
  return (
    <li className={css.words} aria-describedby={wrong ? id : undefined}>
      {isFirst ? 'Is there on ' : 'and on '}
      <WordChoice
        label={`${name}: day`}
        value={String(from.day)}
        options={dayChoices(evening.date)}
        onChoose={(chosen) => {
          const day = Number(chosen)
          const end = Math.min(LAST_DAY, day + to.day - from.day)
          setWrong(onHours({ ...hours, from: { ...from, day }, to: { ...to, day: end } }))
        }}
      />{' '}
      from{' '}
      <WordText
        field={`${field} from`}
        label={`${name}: from`}
        text={from.time}
        onWrite={(text) => {
          const time = readClock(text)
          return written(time === null ? WRONG_CLOCK : onHours({ ...hours, from: { ...from, time } }))
        }}
      />{' '}
      to{' '}
      <WordText
        field={`${field} to`}
        label={`${name}: to`}
        text={untilText(evening.date, hours)}
        onWrite={(text) => {
          const until = readUntil(text, evening.date, from)
          return written(until === null ? WRONG_UNTIL : onHours({ ...hours, to: until }))
        }}
      />
      {evening.kitchens.length > 1 ? (
        <>
          {' in '}
          <WordChoice
            label={`${name}: kitchen`}
            value={hours.kitchen}
            options={evening.kitchens.map((kitchen) => [kitchen.id, kitchen.name || 'a kitchen'] as const)}
            onChoose={(kitchen) => setWrong(onHours({ ...hours, kitchen }))}
          />
        </>
      ) : null}{' '}
      <Button tone="quiet" aria-label={`Leave out: ${name}`} onClick={onLeaveOut}>
        leave out
      </Button>
      {wrong ? (
        <span className={css.wrong} id={id} role="alert">
          {wrong}
        </span>
      ) : null}
    </li>
  )
}

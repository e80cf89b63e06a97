'use client'

import { WordText } from '#app/_ui/word.tsx'
import { dayName } from '#app/_words/clock.ts'
import { readClock } from '#app/_words/read-clock.ts'
import { isDate } from '#lib/domain/time.ts'
import type { TimesDraft } from './first-draft.ts'
import css from './recipes.module.css'
import { CLOCK_WRONG, COVERS_WRONG, guestsBefore, type ShownTimes } from './times.ts'

interface Props {
  readonly times: TimesDraft
  /** Blanks filled from the paste, which nobody has written over. */
  readonly pasted: ShownTimes['pasted']
  readonly host: string
  readonly zone: string
  /** What the server or the last try found wrong, by word. */
  readonly wrong: Readonly<Record<string, string>>
  readonly onChange: (patch: Partial<TimesDraft>) => void
}

const pastedText = (pasted: Props['pasted'], times: TimesDraft): string =>
  pasted
    .map((blank) =>
      blank === 'date'
        ? `a ${dayName(times.date, 0)}`
        : blank === 'sitDown'
          ? `sit down at ${times.sitDown}`
          : `for ${times.covers}`,
    )
    .join(', ')

/** When it is, for how many and who cooks: one sentence with blanks. */
export function TimesWords({ times, pasted, host, zone, wrong, onChange }: Props) {
  const clock = (field: 'guestsFrom' | 'sitDown') => (text: string) => {
    const read = readClock(text)
    if (read === null) return CLOCK_WRONG
    // Until somebody says when guests come, it is half an hour before.
    const follows = field === 'sitDown' && times.guestsFrom === guestsBefore(times.sitDown)
    onChange(follows ? { sitDown: read, guestsFrom: guestsBefore(read) } : { [field]: read })
    return null
  }
  return (
    <div>
      <p className={css.title}>
        <WordText
          display
          label="What is it called?"
          text={times.name}
          empty="What is it called?"
          onWrite={(name) => {
            onChange({ name: name.slice(0, 120) })
            return null
          }}
        />
      </p>
      <p className={css.words}>
        On{' '}
        <WordText
          label="Day"
          type="date"
          text={times.date}
          onWrite={(date) => {
            onChange({ date })
            return isDate(date) ? null : 'Choose the day.'
          }}
        />
        {isDate(times.date) ? `, a ${dayName(times.date, 0)}` : ''}. Guests from{' '}
        <WordText label="Guests from" text={times.guestsFrom} onWrite={clock('guestsFrom')} />, sit down at{' '}
        <WordText label="Sit down at" text={times.sitDown} onWrite={clock('sitDown')} />, for{' '}
        <WordText
          label="For how many?"
          text={times.covers}
          onWrite={(covers) => {
            const count = Number(covers.trim())
            if (!Number.isInteger(count) || count < 1 || count > 60) return COVERS_WRONG
            onChange({ covers: String(count) })
            return null
          }}
        />
        . {host} cooks with{' '}
        <WordText
          label="Who cooks with you? Names, with commas"
          text={times.cooks}
          empty="nobody else"
          onWrite={(cooks) => {
            onChange({ cooks: cooks.slice(0, 1000) })
            return null
          }}
        />
        .
      </p>
      {pasted.length > 0 ? (
        <p className={css.said}>From what you pasted: {pastedText(pasted, times)}. Write over what is wrong.</p>
      ) : null}
      <p className={css.said}>
        Times are those of {zone.replaceAll('_', ' ')}. Whoever cooks with you eats with you; the first you name is a host too.
        Your kitchen is taken to be a usual one: an oven with two shelves, four rings, a fridge, a freezer, a sink and two
        worktops. All of it can be changed afterwards.
      </p>
      {Object.entries(wrong).length > 0 ? (
        <ul className={css.wrongs} role="alert">
          {Object.entries(wrong).map(([field, text]) => (
            <li key={field}>{text}</li>
          ))}
        </ul>
      ) : null}
    </div>
  )
}

import { Plain } from '#app/_ui/plain.tsx'
import { Ready } from '#app/_ui/ready.tsx'
import { clockText, dateText, longDate } from '#app/_words/clock.ts'
import { changeText } from '#app/_words/history.ts'
import type { ChangeLine, History } from '#server/evenings/history.ts'
import css from './history.module.css'

/** Who changed what, day by day, the latest first. */
export function HistoryList({ eveningId, history }: { readonly eveningId: string; readonly history: History }) {
  const { evening, lines, more } = history
  return (
    <Plain title="Who changed what">
      <p>
        What was changed of this evening, by whom and when; what was written, and what guests answered, is not kept here. Only its
        hosts see this.
      </p>
      {lines.length === 0 ? <p>Nothing has been changed yet.</p> : null}
      {days(lines, evening.zone).map(([date, ofDay]) => (
        <section key={date} className={css.day} aria-labelledby={`day-${date}`}>
          <h2 id={`day-${date}`}>{longDate(date)}</h2>
          <ul>
            {ofDay.map((line) => (
              <li key={line.id}>
                <time dateTime={line.at}>{clockText(line.at, evening.zone)}</time>
                <span>
                  <b>{line.by ?? 'Somebody whose account is gone'}</b> {changeText(evening, line)}.
                </span>
              </li>
            ))}
          </ul>
        </section>
      ))}
      {more !== null ? <a href={`/evenings/${eveningId}/history?before=${more}`}>Older changes</a> : null}
      <Ready />
    </Plain>
  )
}

const days = (lines: readonly ChangeLine[], zone: string): readonly (readonly [string, readonly ChangeLine[]])[] => {
  const found = new Map<string, ChangeLine[]>()
  for (const line of lines) {
    const date = dateText(line.at, zone)
    found.set(date, [...(found.get(date) ?? []), line])
  }
  return [...found]
}

import { LinkButton } from '#app/_ui/button.tsx'
import { TablePicture } from '#app/_ui/table-picture.tsx'
import { countOf, countText, distanceText, listText, longDate, sentence } from '#app/_words/clock.ts'
import { daysUntil } from '#lib/domain/time.ts'
import css from './evenings.module.css'
import type { EveningShown } from './shown.ts'

/** The next evening is the table itself, with its people. */
export function NextEvening({ evening, today }: { readonly evening: EveningShown; readonly today: string }) {
  const days = daysUntil(evening, today)
  const cooks = listText(evening.cookNames)
  const link = `/evenings/${evening.id}`
  return (
    <section className={css.next} aria-labelledby="next">
      <div>
        <p className={css.when}>{distanceText(days)}</p>
        <h1 id="next">{evening.name}</h1>
        <p className={css.about}>
          {longDate(evening.date)}, sit down {evening.sitDown}
          <br />
          <span>
            {evening.courseNames.length === 0 ? 'No courses yet' : sentence(countOf(evening.courseNames.length, 'course'))} for{' '}
            {countText(evening.covers)}
            {cooks ? `, cooked by ${cooks}` : ''}
          </span>
        </p>
        {evening.courseNames.length > 0 ? (
          <ol className={css.courses}>
            {evening.courseNames.map((name) => (
              <li key={name}>{name}</li>
            ))}
          </ol>
        ) : null}
        <div className={css.go}>
          <LinkButton href={`${link}/order`} tone="now" large>
            Running order
          </LinkButton>
          <LinkButton href={`${link}/menu`} tone="soft" large>
            Menu
          </LinkButton>
        </div>
      </div>
      <div className={css.picture}>
        <TablePicture
          width={560}
          height={372}
          covers={evening.covers}
          people={evening.cookNames}
          colour={evening.courseNames.length > 0 ? 1 : null}
          label={`The table for ${countText(evening.covers)}${cooks ? `, with ${cooks}` : ''}`}
          names
        />
      </div>
    </section>
  )
}

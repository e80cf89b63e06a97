import { LinkButton } from '#app/_ui/button.tsx'
import { Link } from '#app/_ui/link.tsx'
import { dishColour } from '#app/_ui/plate.tsx'
import { TablePicture } from '#app/_ui/table-picture.tsx'
import { countOf, longDate, sentence } from '#app/_words/clock.ts'
import css from './evenings.module.css'
import type { EveningShown } from './shown.ts'

/** The evenings to come after the next, then those that were. */
export function OtherEvenings({ evenings, isOnly }: { readonly evenings: readonly EveningShown[]; readonly isOnly: boolean }) {
  const title = isOnly ? 'Your evenings' : 'Other evenings'
  return (
    <section className={css.rest} aria-labelledby="others">
      <div className={css.head}>
        {isOnly ? <h1 id="others">{title}</h1> : <h2 id="others">{title}</h2>}
        <LinkButton href="/evenings/new">Plan an evening</LinkButton>
      </div>
      {evenings.length === 0 ? <p className={css.none}>No other evening yet.</p> : null}
      <ul className={css.list}>
        {evenings.map((evening, index) => (
          <li key={evening.id}>
            <Link className={css.evening} href={`/evenings/${evening.id}/menu`}>
              <TablePicture
                width={168}
                height={112}
                covers={evening.covers}
                people={[]}
                colour={evening.courseNames.length > 0 ? dishColour(index + 3) : null}
                label=""
              />
              <span>
                <b>{evening.name}</b>
                <small>
                  {longDate(evening.date)} {evening.date.slice(0, 4)}, for {evening.covers}
                  <br />
                  {evening.courseNames.length === 0 ? 'no courses yet' : sentence(countOf(evening.dishes, 'dish', 'dishes'))}
                  {evening.role === 'cook' ? ', you cook' : ''}
                </small>
              </span>
            </Link>
          </li>
        ))}
      </ul>
    </section>
  )
}

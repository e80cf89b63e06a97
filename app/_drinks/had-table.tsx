'use client'

import { usePlan } from '#app/_sync/use-plan.ts'
import { Fold } from '#app/_ui/fold.tsx'
import { measuredText, moderationText, noAlcoholWords, shortMeasuredText } from '#app/_words/alcohol.ts'
import { clockText, listText, sentence } from '#app/_words/clock.ts'
import { sourceText } from '#app/_words/source.ts'
import type { Guest } from '#lib/domain/people.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { type Measure, measured, measureOf, measureSource } from '#lib/drinks/alcohol.ts'
import { type Had, hadBy, type Poured } from '#lib/drinks/had.ts'
import { type Moderation, moderation } from '#lib/drinks/moderation.ts'
import { dryGaps } from '#lib/drinks/pour.ts'
import css from './drinks.module.css'

interface Props {
  readonly guests: readonly Guest[]
  readonly order: RunningOrder | null
}

/** What each guest will have had by when, drawn as glasses course by course. For hosts: it has names. */
export function HadTable({ guests, order }: Props) {
  const { evening } = usePlan()
  const all = hadBy(evening, guests, order)
  if (all.length === 0) return null
  const measure = measureOf(evening.rules)
  const gaps = dryGaps(evening).map((id) => evening.courses.find((course) => course.id === id)?.name ?? 'a course')
  const nameOf = (id: string) => guests.find((guest) => guest.id === id)?.name ?? 'a guest'
  const drivers = all.filter(({ may }) => may.kind === 'none' && may.because.includes('drives')).map(({ guest }) => nameOf(guest))
  const notes = notesOf(all, nameOf, (had) => moderation(evening.rules, had.ethanolMl, had.perHourMl))
  const [fast, guidance] = [notes.filter(({ kind }) => kind === 'pace'), notes.filter(({ kind }) => kind !== 'pace')]
  return (
    <section aria-labelledby="had">
      <h2 id="had">What each will have had</h2>
      <p className={css.quiet}>
        When every glass is poured once and drunk. Only hosts see this. Counted in {measuredText(0, measure).slice(2)}:{' '}
        {sourceText(measureSource(measure))}.
      </p>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: it scrolls by itself, and must do so by keyboard too */}
      <section className={css.scroll} tabIndex={0} aria-label="What each guest will have had, course by course">
        <table className={css.had}>
          <thead>
            <tr>
              <th scope="col">
                <span className="vh">Guest</span>
              </th>
              {evening.courses.map((course) => (
                <th key={course.id} scope="col">
                  {course.name}
                  <small className={css.cellAbout}>{timeText(all, course.id, evening.zone)}</small>
                </th>
              ))}
              <th scope="col">In all</th>
            </tr>
          </thead>
          <tbody>
            {all.map((had) => (
              <tr key={had.guest}>
                <th scope="row">
                  {nameOf(had.guest)}
                  {had.may.kind === 'none' ? (
                    <small className={css.cellAbout}>{listText(had.may.because.map((why) => noAlcoholWords[why]))}</small>
                  ) : null}
                </th>
                {had.poured.map((poured) => (
                  <td key={poured.course}>
                    <Glass poured={poured} measure={measure} />
                  </td>
                ))}
                <td>
                  <b>{shortMeasuredText(measured(had.ethanolMl, measure), measure)}</b>
                  {had.perHourMl !== null && had.perHourMl > 0 ? (
                    <small className={css.cellAbout}>
                      {shortMeasuredText(measured(had.perHourMl, measure), measure)} an hour
                    </small>
                  ) : null}
                  {had.may.kind === 'none' && had.may.because.includes('not-known') ? (
                    <small className={css.cellAbout}>until they say</small>
                  ) : null}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      {drivers.length > 0 ? (
        <p className={css.driver}>
          <b>{listText(drivers)}</b> {drivers.length === 1 ? 'drives' : 'drive'}: pour from the second line. No count of units
          says who may drive.
        </p>
      ) : null}
      <Notes notes={fast} />
      {guidance.length > 0 ? (
        <Fold title="What guidance says of it">
          <Notes notes={guidance} />
        </Fold>
      ) : null}
      <p className={css.quiet}>
        With food, slowly, and with water in between is what guidance agrees on.{' '}
        {gaps.length === 0
          ? 'There is a drink without alcohol with every course; nobody needs a reason to take it.'
          : `Without alcohol there is nothing yet for ${listText(gaps)}: pour something there too.`}
      </p>
    </section>
  )
}

const timeText = (all: readonly Had[], course: string, zone: string): string => {
  const at = all[0]?.poured.find((poured) => poured.course === course)?.at
  return at == null ? '' : clockText(at, zone)
}

/** A glass as full as its alcohol, a dashed one for a drink that has none, and what it makes so far. */
function Glass({ poured, measure }: { readonly poured: Poured; readonly measure: Measure }) {
  const { evening } = usePlan()
  const name = evening.drinks.find(({ id }) => id === poured.drink)?.name ?? 'nothing yet'
  const units = measured(poured.ethanolMl, 'uk-unit')
  const level = Math.min(1, units / 2) * 17
  return (
    <>
      <svg className={css.glass} width="26" height="34" viewBox="0 0 26 34" aria-hidden="true">
        {units > 0 ? <rect className={css.fill} x="5" y={22 - level} width="16" height={level} rx="2" /> : null}
        <path className={units > 0 ? css.line : css.none} d="M4 4v14a9 6 0 0 0 18 0V4M13 24v7M7 31h12" />
      </svg>
      <span className="vh">{name}: </span>
      {units > 0 ? (
        <small className={css.cellAbout}>{shortMeasuredText(measured(poured.soFarMl, measure), measure)}</small>
      ) : (
        <small className={css.cellAbout}>{poured.drink === null ? 'nothing' : 'none in it'}</small>
      )}
    </>
  )
}

interface Note {
  readonly kind: Moderation['kind']
  readonly says: string
  readonly source: string
}

function Notes({ notes }: { readonly notes: readonly Note[] }) {
  return notes.length === 0 ? null : (
    <ul>
      {notes.map(({ says, source }) => (
        <li key={says} className={css.note}>
          {says}. <small className={css.noteSource}>{source}.</small>
        </li>
      ))}
    </ul>
  )
}

/** Each word of moderation once, with those whom it is about. */
const notesOf = (
  all: readonly Had[],
  nameOf: (guest: string) => string,
  of: (had: Had) => readonly Moderation[],
): readonly Note[] => {
  const found = new Map<string, { who: string[]; kind: Moderation['kind']; source: string }>()
  for (const had of all)
    for (const note of of(had)) {
      const says = moderationText(note)
      const known = found.get(says) ?? { who: [], kind: note.kind, source: sourceText(note.source) }
      known.who.push(nameOf(had.guest))
      found.set(says, known)
    }
  return [...found].map(([says, { who, kind, source }]) => ({ says: `${sentence(listText(who))}: ${says}`, kind, source }))
}

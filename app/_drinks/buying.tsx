'use client'

import { usePlan } from '#app/_sync/use-plan.ts'
import { WordChoice } from '#app/_ui/word.tsx'
import { countOf, countText } from '#app/_words/clock.ts'
import { type Amount, iceGrams, waterMl } from '#lib/drinks/amounts.ts'
import css from './drinks.module.css'

interface Props {
  readonly amounts: readonly Amount[]
  /** How many drink alcohol; null when that is not known here. */
  readonly alcohol: number | null
  readonly onAlcohol: (count: number) => void
}

const litres = (ml: number): string => `${Math.round(ml / 100) / 10} l`

/** What is bought for the covers: bottles, water, ice. */
export function Buying({ amounts, alcohol, onAlcohol }: Props) {
  const { evening } = usePlan()
  const ice = iceGrams(evening.covers, evening.drinks)
  return (
    <section aria-labelledby="buying">
      <h2 id="buying">To have in the house</h2>
      <p className={css.sentence}>
        For {evening.covers} at the table, of whom{' '}
        <WordChoice
          label="How many drink alcohol"
          value={alcohol === null ? '' : String(alcohol)}
          options={[
            ...(alcohol === null ? [['', 'some'] as const] : []),
            ...Array.from(
              { length: evening.covers + 1 },
              (_, count) => [String(count), count === 0 ? 'none' : countText(count)] as const,
            ),
          ]}
          onChoose={(count) => {
            if (count !== '') onAlcohol(Number(count))
          }}
        />{' '}
        drink alcohol.
      </p>
      {alcohol === null ? (
        <p className={css.quiet}>
          Who drinks is known to the hosts alone. Until you say a number, there is enough of each for all.
        </p>
      ) : null}
      <ul>
        {amounts.map(({ drink, people, ml, bottles, bottleMl }) => (
          <li key={drink} className={css.bought}>
            <b className={css.boughtName}>{evening.drinks.find(({ id }) => id === drink)?.name ?? 'a drink'}</b>
            <span>
              {people === 0 ? 'none' : `${countOf(bottles, 'bottle')} of ${bottleMl === 1000 ? '1 l' : `${bottleMl / 10} cl`}`}
            </span>
            <small className={css.boughtAbout}>{people === 0 ? 'nobody has it' : `${litres(ml)}, a glass for ${people}`}</small>
          </li>
        ))}
        <li className={css.bought}>
          <b className={css.boughtName}>Water</b>
          <span>{litres(waterMl(evening.covers))} or more</span>
          <small className={css.boughtAbout}>on the table all evening, half a litre each</small>
        </li>
        {ice > 0 ? (
          <li className={css.bought}>
            <b className={css.boughtName}>Ice</b>
            <span>{ice / 1000} kg</span>
            <small className={css.boughtAbout}>where drinks are mixed or bottles stand in ice, half a kilo each</small>
          </li>
        ) : null}
      </ul>
      <p className={css.quiet}>Bottles of the usual sizes, a glass for each; common practice, no official source.</p>
    </section>
  )
}

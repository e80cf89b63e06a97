'use client'

import { useEdit } from '#app/_frame/use-edit.ts'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Button } from '#app/_ui/button.tsx'
import { WordChoice } from '#app/_ui/word.tsx'
import { countOf, countText } from '#app/_words/clock.ts'
import { headsOf } from '#lib/domain/portions.ts'
import { type Amount, iceGrams, waterMl } from '#lib/drinks/amounts.ts'
import { setEvening } from '#lib/plan/commands/set.ts'
import css from './drinks.module.css'

interface Props {
  readonly amounts: readonly Amount[]
  /** How many guests drink alcohol by their answers; null for who may not know, and where there are no guests. */
  readonly answered: number | null
}

const litres = (ml: number): string => `${Math.round(ml / 100) / 10} l`
const drinkersText = (count: number): string => (count === 0 ? 'none' : countText(count))

/** What is bought for all who come: bottles, water, ice. */
export function Buying({ amounts, answered }: Props) {
  const { evening, me } = usePlan()
  const { tell } = useEdit()
  const { covers, drinkers } = evening
  const people = headsOf(evening)
  const ice = iceGrams(people, evening.drinks)
  const say = (count: number | undefined) => tell((doc) => setEvening(doc, { drinkers: count }))
  const isHost = me?.role === 'host'
  return (
    <section aria-labelledby="buying">
      <h2 id="buying">To have in the house</h2>
      <p className={css.sentence}>
        For {covers} at the table, of whom{' '}
        <WordChoice
          label="How many drink alcohol"
          value={drinkers === undefined ? '' : String(Math.min(drinkers, covers))}
          options={[
            ['', 'some'],
            ...Array.from({ length: covers + 1 }, (_, count) => [String(count), drinkersText(count)] as const),
          ]}
          disabled={!isHost}
          onChoose={(count) => say(count === '' ? undefined : Number(count))}
        />{' '}
        drink alcohol{people > covers ? `, and ${countOf(people - covers, 'child', 'children')} who eat before` : ''}.
      </p>
      {drinkers === undefined && amounts.length > 0 ? (
        <p className={css.quiet}>
          There is enough of each for all, here and on the shopping list, until {isHost ? 'you say' : 'a host says'} how many.
        </p>
      ) : null}
      {isHost && answered !== null ? (
        <p className={css.quiet}>
          By their answers{' '}
          {answered === 0 ? 'no guest does' : answered === 1 ? 'one guest does' : `${countText(answered)} guests do`}; who cooks
          is not asked. Everybody who cooks sees the number, and not who.{' '}
          {drinkers === undefined ? (
            <Button tone="word" onClick={() => say(answered)}>
              Buy for {drinkersText(answered)}
            </Button>
          ) : null}
        </p>
      ) : null}
      <ul>
        {amounts.map(({ drink, people: poured, ml, bottles, bottleMl }) => (
          <li key={drink} className={css.bought}>
            <b className={css.boughtName}>{evening.drinks.find(({ id }) => id === drink)?.name ?? 'a drink'}</b>
            <span>
              {poured === 0 ? 'none' : `${countOf(bottles, 'bottle')} of ${bottleMl === 1000 ? '1 l' : `${bottleMl / 10} cl`}`}
            </span>
            <small className={css.boughtAbout}>{poured === 0 ? 'nobody has it' : `${litres(ml)}, a glass for ${poured}`}</small>
          </li>
        ))}
        <li className={css.bought}>
          <b className={css.boughtName}>Water</b>
          <span>{litres(waterMl(people))} or more</span>
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

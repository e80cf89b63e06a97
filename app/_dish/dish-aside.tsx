'use client'

import { lastMinuteMinutes } from '#app/_order/last-minute.ts'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Stitches } from '#app/_ui/stitches.tsx'
import { clockText, countText, dayOf, sentence, shortDay } from '#app/_words/clock.ts'
import type { Names } from '#app/_words/names.ts'
import type { Ingredient } from '#lib/domain/ingredient.ts'
import type { Dish } from '#lib/domain/menu.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import css from './dish.module.css'

interface Props {
  readonly dish: Dish
  readonly planned: RunningOrder | null
  readonly names: Names
}

const amountText = ({ amount }: Ingredient): string =>
  amount === null ? 'to taste' : `${amount.n}${amount.upTo ? ` to ${amount.upTo}` : ''} ${amount.unit}`.trim()

/** Beside the method: for how many, its ingredients, the kit it holds and when. */
export function DishAside({ dish, planned, names }: Props) {
  const { evening } = usePlan()
  const ingredients = evening.ingredients.filter((ingredient) => ingredient.dish === dish.id)
  const held = (planned?.cues ?? [])
    .filter((cue) => names.step(cue.step)?.dish === dish.id)
    .flatMap((cue) => cue.kit.map(({ id }) => ({ key: `${cue.step}.${cue.batch}.${id}`, id, cue })))
    .filter(({ id }) => names.kit(id)?.kit.kind !== 'worktop')
  const when = (instant: string) => {
    const day = dayOf(evening, instant)
    return `${day === 0 ? '' : `${shortDay(evening.date, day)} `}${clockText(instant, evening.zone)}`
  }
  return (
    <aside className={css.aside} aria-label="About this dish">
      <section>
        <h2>For how many</h2>
        <p>
          For {countText(dish.portions ?? evening.covers)}; the method as written is for {countText(dish.yields)}.
        </p>
      </section>
      {planned ? (
        <section>
          <h2>Last-minute minutes</h2>
          <p>
            <Stitches minutes={lastMinuteMinutes(planned, names).get(dish.id) ?? 0} />
          </p>
        </section>
      ) : null}
      {ingredients.length > 0 ? (
        <section>
          <h2>Ingredients</h2>
          <ul className={css.ingredients}>
            {ingredients.map((ingredient) => (
              <li key={ingredient.id}>
                <b>{amountText(ingredient)}</b>
                <span>{ingredient.food}</span>
              </li>
            ))}
          </ul>
        </section>
      ) : null}
      {held.length > 0 ? (
        <section>
          <h2>Kit it holds</h2>
          <ul className={css.kit}>
            {held.map(({ key, id, cue }) => (
              <li key={key}>
                {sentence(names.kitName(id))}, {when(cue.start)} to {when(cue.end)}
              </li>
            ))}
          </ul>
        </section>
      ) : null}
      {dish.notes ? (
        <section>
          <h2>Notes</h2>
          <p className={css.notes}>{dish.notes}</p>
        </section>
      ) : null}
    </aside>
  )
}

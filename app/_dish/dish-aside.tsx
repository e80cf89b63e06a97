'use client'

import { lastMinuteMinutes } from '#app/_order/last-minute.ts'
import { DishSafety } from '#app/_safety/dish-safety.tsx'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Stitches } from '#app/_ui/stitches.tsx'
import { clockText, dayOf, sentence, shortDay } from '#app/_words/clock.ts'
import type { Names } from '#app/_words/names.ts'
import type { Dish } from '#lib/domain/menu.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import css from './dish.module.css'
import { DishPortions } from './dish-portions.tsx'
import { IngredientList } from './ingredient-list.tsx'

interface Props {
  readonly dish: Dish
  readonly planned: RunningOrder | null
  readonly names: Names
}

/** Beside the method: for how many, its ingredients, the kit it holds and when. */
export function DishAside({ dish, planned, names }: Props) {
  const { evening } = usePlan()
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
      <DishPortions dish={dish} />
      <IngredientList dish={dish} />
      {planned ? (
        <section>
          <h2>Last-minute minutes</h2>
          <p>
            <Stitches minutes={lastMinuteMinutes(planned, names).get(dish.id) ?? 0} />
          </p>
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
      {planned ? <DishSafety dish={dish.id} order={planned} names={names} /> : null}
    </aside>
  )
}

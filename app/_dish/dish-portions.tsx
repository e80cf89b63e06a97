'use client'

import { newId } from '#app/_frame/new-id.ts'
import { useEdit } from '#app/_frame/use-edit.ts'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Sentence } from '#app/_ui/sentence.tsx'
import { numberText } from '#app/_words/amount.ts'
import type { Dish } from '#lib/domain/menu.ts'
import { coversOf } from '#lib/domain/portions.ts'
import { setFields } from '#lib/plan/commands/set.ts'
import { scaleFactor } from '#lib/quantities/scale.ts'
import css from './dish.module.css'
import { applyDishEdit } from './dish-edit.ts'
import { dishSentences } from './dish-sentences.ts'
import { keepingScene } from './keeps-words.ts'

/** For how many a dish is, one more or fewer at a tap, and how often that is the recipe. */
export function DishPortions({ dish }: { readonly dish: Dish }) {
  const { evening } = usePlan()
  const { change, tell } = useEdit()
  const portions = dish.portions ?? coversOf(evening, dish.course)
  const patched = (next: number) => ({
    portions: next === coversOf(evening, dish.course) && !dish.variant ? undefined : next,
    ...(dish.variant ? { variant: { ...dish.variant, portions: next } } : {}),
  })
  const step = (by: 1 | -1) => {
    const next = by === 1 ? Math.floor(portions) + 1 : Math.ceil(portions) - 1
    if (next >= 1 && next <= 1000) tell((doc) => setFields(doc, 'dishes', dish.id, patched(next)))
  }
  const factor = numberText(scaleFactor(dish.yields, [{ people: portions, portion: 1 }]))
  return (
    <section aria-labelledby="how-many">
      <h2 id="how-many">For how many</h2>
      <p className={css.stepper}>
        <button type="button" aria-label="One fewer" aria-disabled={portions <= 1} onClick={() => step(-1)}>
          −
        </button>
        <b aria-live="polite">for {portions}</b>
        <button type="button" aria-label="One more" onClick={() => step(1)}>
          +
        </button>
      </p>
      <Sentence
        parts={dishSentences(dish, evening, keepingScene(evening, '')).portions}
        onEdit={(edit) => change((doc) => applyDishEdit(doc, evening, dish.id, edit, newId))}
      />
      <p className={css.hint}>
        {factor === '1' ? 'The amounts are as the recipe has them.' : `The amounts are ${factor} × the recipe.`}
      </p>
    </section>
  )
}

'use client'

import { useEdit } from '#app/_frame/use-edit.ts'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Entry } from '#app/_ui/drafts.tsx'
import type { Drag } from '#app/_ui/drag.tsx'
import { Moves } from '#app/_ui/moves.tsx'
import { splitFood } from '#app/_words/food.ts'
import { coversText } from '#app/_words/quantity.ts'
import type { Ingredient } from '#lib/domain/ingredient.ts'
import type { Dish } from '#lib/domain/menu.ts'
import { portionsAt, portionsOf } from '#lib/domain/portions.ts'
import type { Measures } from '#lib/domain/unit-words.ts'
import { forCovers } from '#lib/quantities/for-covers.ts'
import { scaleFactor } from '#lib/quantities/scale.ts'
import { IngredientEditor } from './ingredient-editor.tsx'
import { flagsOf } from './ingredient-flags.ts'
import css from './ingredients.module.css'

interface Props {
  readonly dish: Dish
  readonly ingredient: Ingredient
  readonly reader: Measures | null
  readonly isOpen: boolean
  readonly onToggle: () => void
  readonly isFirst: boolean
  readonly isLast: boolean
  readonly onMove: (by: -1 | 1) => void
  readonly drag: Drag
}

/** One ingredient: what to weigh for those who eat, what to know of that, and, opened, its words to change. */
export function IngredientRow({ dish, ingredient, reader, isOpen, onToggle, isFirst, isLast, onMove, drag }: Props) {
  const { evening } = usePlan()
  const { removeWithStrip } = useEdit()
  const portions = portionsAt(evening, dish, ingredient.step)
  const quantity = forCovers(ingredient, scaleFactor(dish.yields, [{ people: portions, portion: 1 }]), reader)
  const { food, note } = splitFood(ingredient.food)
  const whole = portionsOf(evening, dish)
  return (
    <li {...drag.item(ingredient.id, isOpen ? css.isOpen : '')}>
      <div className={css.row}>
        <button type="button" className={css.line} aria-expanded={isOpen} onClick={onToggle}>
          <b>{coversText(quantity).amount}</b>
          <span>
            <span className={css.food}>{food}</span>
            {note ? <small>{note}</small> : null}
            {portions === whole ? null : <small>for {portions}; the others get a variant</small>}
            {flagsOf(ingredient, quantity).map((flag) => (
              <small key={flag.text} className={flag.isAmiss ? css.amiss : ''}>
                {flag.text}
              </small>
            ))}
          </span>
        </button>
        {drag.handle(ingredient.id)}
      </div>
      {isOpen ? (
        <div className={css.open}>
          <Entry id={ingredient.id}>
            <IngredientEditor dish={dish} ingredient={ingredient} quantity={quantity} />
          </Entry>
          <Moves
            name={food}
            isFirst={isFirst}
            isLast={isLast}
            onMove={onMove}
            onRemove={() => removeWithStrip('ingredients', ingredient.id, food)}
          />
        </div>
      ) : null}
    </li>
  )
}

'use client'

import { useEdit } from '#app/_frame/use-edit.ts'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Fold } from '#app/_ui/fold.tsx'
import { Sentence } from '#app/_ui/sentence.tsx'
import { Ticks } from '#app/_ui/ticks.tsx'
import { buysText, fillsText, weighsText } from '#app/_words/quantity.ts'
import { sourceText } from '#app/_words/source.ts'
import type { Ingredient } from '#lib/domain/ingredient.ts'
import type { Dish } from '#lib/domain/menu.ts'
import type { Source } from '#lib/domain/source.ts'
import { setFields } from '#lib/plan/commands/set.ts'
import type { ForCovers } from '#lib/quantities/for-covers.ts'
import {
  allergenParts,
  allergenTicks,
  containsParts,
  containsTicks,
  type IngredientPatch,
  ingredientParts,
  shopParts,
} from './ingredient-sentences.ts'
import css from './ingredients.module.css'
import { NameAllergens } from './name-allergens-note.tsx'

interface Props {
  readonly dish: Dish
  readonly ingredient: Ingredient
  readonly quantity: ForCovers
}

/** An ingredient in sentences, with where each figure beside it comes from. */
export function IngredientEditor({ dish, ingredient, quantity }: Props) {
  const { evening } = usePlan()
  const { change, tell } = useEdit()
  const write = (patch: IngredientPatch) => change((doc) => setFields(doc, 'ingredients', ingredient.id, patch))
  const tick = (patch: IngredientPatch) => tell((doc) => setFields(doc, 'ingredients', ingredient.id, patch))
  const steps = evening.steps.filter((step) => step.dish === dish.id)
  return (
    <>
      <Sentence parts={ingredientParts(ingredient, steps)} onEdit={write} />
      <Figures quantity={quantity} />
      <NameAllergens ingredient={ingredient} />
      <Fold title="Allergens, and what it contains">
        <Ticks {...allergenTicks(ingredient)} onTick={(word) => tick(allergenTicks(ingredient).tick(word))} />
        <Sentence parts={allergenParts(ingredient)} onEdit={write} />
        <Ticks {...containsTicks(ingredient)} onTick={(word) => tick(containsTicks(ingredient).tick(word))} />
        <Sentence parts={containsParts(ingredient)} onEdit={write} />
      </Fold>
      <Fold title="Where to buy it">
        <Sentence parts={shopParts(ingredient)} onEdit={write} />
      </Fold>
    </>
  )
}

function Figures({ quantity }: { readonly quantity: ForCovers }) {
  const figures: readonly (readonly [text: string, source: Source])[] = [
    ...(quantity.weighs[0] ? [[`It weighs ${weighsText(quantity.weighs)}`, quantity.weighs[0].source] as const] : []),
    ...(quantity.fills[0] ? [[`It fills ${fillsText(quantity.fills)}`, quantity.fills[0].weighed.source] as const] : []),
    ...(quantity.buys ? [[`To have that, ${buysText(quantity.buys)}`, quantity.buys.source] as const] : []),
  ]
  return (
    <>
      {figures.map(([text, source]) => (
        <p key={text} className={css.figure}>
          {text}. <cite>{sourceText(source)}</cite>
        </p>
      ))}
    </>
  )
}

'use client'

import { useState } from 'react'
import { useEdit } from '#app/_frame/use-edit.ts'
import { useReader } from '#app/_quantities/reader.ts'
import { usePlan } from '#app/_sync/use-plan.ts'
import { useDrag } from '#app/_ui/drag.tsx'
import { numberAt, placeAfterMove } from '#app/_ui/move-place.ts'
import { WordChoice } from '#app/_ui/word.tsx'
import { countOf, countText } from '#app/_words/clock.ts'
import { splitFood } from '#app/_words/food.ts'
import { measuresWords } from '#app/_words/measures.ts'
import { movedText } from '#app/_words/moved.ts'
import type { Dish } from '#lib/domain/menu.ts'
import type { Measures } from '#lib/domain/unit-words.ts'
import { moveIngredient } from '#lib/plan/commands/move.ts'
import { setFields } from '#lib/plan/commands/set.ts'
import type { Place } from '#lib/plan/order-keys.ts'
import { ownedBy } from './bare-measures.ts'
import { IngredientAdd } from './ingredient-add.tsx'
import { IngredientRow } from './ingredient-row.tsx'
import css from './ingredients.module.css'
import { NameAllergensNote } from './name-allergens-note.tsx'

const OWN = 'own'
const ASK = ''
const MEASURES = Object.entries<string>(measuresWords).map(([value, words]) => [value as Measures, words] as const)

/** What goes into a dish, each amount for those who eat it; opened, its words to change. */
export function IngredientList({ dish }: { readonly dish: Dish }) {
  const { evening } = usePlan()
  const { tell, change } = useEdit()
  const [reader, read] = useReader()
  const [open, setOpen] = useState<string | null>(null)
  const own = evening.ingredients.filter((each) => each.dish === dish.id)
  const bare = own.flatMap((each) => (ownedBy(each, null) ? [each] : []))
  const unchecked = own.filter((each) => each.checked !== 'known').length
  const nameOf = (id: string) => splitFood(own.find((each) => each.id === id)?.food ?? 'it').food
  const move = (id: string, place: Place): string | null =>
    tell((doc) => moveIngredient(doc, id, dish.id, place)) ? movedText(nameOf(id), numberAt(own, id, place), own.length) : null
  const drag = useDrag((drop) => move(drop.id, drop.place))
  const moveBy = (id: string, by: -1 | 1) => {
    const place = placeAfterMove(own, id, by)
    if (place) drag.say(move(id, place) ?? '')
  }
  const ownAll = (measures: Measures) =>
    change((doc) => {
      for (const each of bare) {
        const amount = ownedBy(each, measures)
        const made = amount ? setFields(doc, 'ingredients', each.id, { amount }) : null
        if (made && !made.ok) return made
      }
      return { ok: true, value: null }
    })
  return (
    <section aria-labelledby="ingredients">
      <h2 id="ingredients">Ingredients</h2>
      {own.length > 0 ? (
        <p className={css.reads}>
          Read in{' '}
          <WordChoice
            label="In whose measures amounts are read"
            value={reader ?? OWN}
            options={[[OWN, 'the recipe’s own measures'] as const, ...MEASURES]}
            onChoose={(chosen) => read(chosen === OWN ? null : chosen)}
          />
        </p>
      ) : null}
      {bare.length > 0 ? (
        <p className={css.ask}>
          {countOf(bare.length, 'amount')} {bare.length === 1 ? 'is' : 'are'} in cups, spoons or pints that differ from country to
          country. Whose?{' '}
          <WordChoice
            label="Whose cups, spoons and pints these are"
            value={ASK as Measures | typeof ASK}
            options={[[ASK, 'not said'] as const, ...MEASURES]}
            onChoose={(chosen) => chosen !== ASK && ownAll(chosen)}
          />
        </p>
      ) : null}
      <NameAllergensNote ingredients={own.filter((each) => each.id !== open && each.checked !== 'known')} />
      {own.length === 0 ? <p className={css.quiet}>None yet. Write them below, one a line, as a recipe has them.</p> : null}
      <ul {...drag.list(dish.id, css.list)}>
        {own.map((each, index) => (
          <IngredientRow
            key={each.id}
            dish={dish}
            ingredient={each}
            reader={reader}
            isOpen={open === each.id}
            onToggle={() => setOpen(open === each.id ? null : each.id)}
            isFirst={index === 0}
            isLast={index === own.length - 1}
            onMove={(by) => moveBy(each.id, by)}
            drag={drag}
          />
        ))}
      </ul>
      {drag.said}
      <IngredientAdd dish={dish} />
      {unchecked > 0 ? (
        <p className={css.quiet}>
          The allergens of {unchecked === own.length ? 'none' : countText(own.length - unchecked)} of these{' '}
          {countText(own.length)} are all known. What is not known is never safe.
        </p>
      ) : null}
    </section>
  )
}

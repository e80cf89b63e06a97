'use client'

import { useEdit } from '#app/_frame/use-edit.ts'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Button } from '#app/_ui/button.tsx'
import { countText, listText } from '#app/_words/clock.ts'
import { splitFood } from '#app/_words/food.ts'
import { shorten } from '#app/_words/shorten.ts'
import type { Ingredient } from '#lib/domain/ingredient.ts'
import { setEach } from '#lib/plan/commands/set.ts'
import css from './ingredients.module.css'
import { type ByName, byName } from './name-allergens.ts'

const SHOWN = 3

const hasText = ({ ingredient, has }: ByName): string => `${shorten(splitFood(ingredient.food).food, 30)} has ${listText(has)}`

/** What the names of these ingredients say and nobody has put down: one press puts it all down, and nothing is called known by it. */
export function NameAllergensNote({ ingredients }: { readonly ingredients: readonly Ingredient[] }) {
  const { evening } = usePlan()
  const { tell } = useEdit()
  const found = ingredients.flatMap((each) => {
    const one = byName(each, evening.rules)
    return one && one.has.length > 0 ? [one] : []
  })
  if (found.length === 0) return null
  const more = found.length - SHOWN
  const said = [
    ...found.slice(0, SHOWN).map(hasText),
    ...(more > 0 ? [more === 1 ? 'one more has something' : `${countText(more)} more have something`] : []),
  ]
  const put = () =>
    tell((doc) =>
      setEach(
        doc,
        'ingredients',
        found.map(({ ingredient, patch }) => [ingredient.id, patch] as const),
      ),
    )
  return (
    <p className={css.ask}>
      Going by {found.length === 1 ? 'its name' : 'their names'}, {listText(said)}. Say whether it is so.{' '}
      <Button tone="word" onClick={put}>
        {found.length === 1 ? 'It is: put it down' : 'It is: put all of it down'}
      </Button>
    </p>
  )
}

/** The same of one ingredient, with what its label is read for, and where that is from. */
export function NameAllergens({ ingredient }: { readonly ingredient: Ingredient }) {
  const { evening } = usePlan()
  const found = byName(ingredient, evening.rules)
  if (!found) return null
  return (
    <>
      <NameAllergensNote ingredients={[ingredient]} />
      <p className={css.figure}>
        {found.look.length > 0 ? `Such a food often has ${listText(found.look)}: read its label for that.` : ''}
        <cite>{found.sources.join('; ')}</cite>
      </p>
    </>
  )
}

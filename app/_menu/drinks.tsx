'use client'

import { newId } from '#app/_frame/new-id.ts'
import { useEdit } from '#app/_frame/use-edit.ts'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Button } from '#app/_ui/button.tsx'
import { Entry } from '#app/_ui/drafts.tsx'
import { drinkText } from '#app/_words/drink.ts'
import type { Course } from '#lib/domain/menu.ts'
import type { Drink } from '#lib/domain/people.ts'
import { addDrink } from '#lib/plan/commands/add.ts'
import { blankDrink } from './blank.ts'
import { DrinkWords } from './drink-words.tsx'
import css from './menu.module.css'

/** What is drunk with a course: with alcohol, and without. */
export function Drinks({ course, editing }: { readonly course: Course; readonly editing: boolean }) {
  const { evening } = usePlan()
  const { tell } = useEdit()
  const drinks = evening.drinks.filter((drink) => drink.course === course.id)
  const add = (role: Drink['role']) => tell((doc) => addDrink(doc, blankDrink(newId(), course.id, role)))
  return (
    <div className={css.drinks}>
      <h3 className="vh">To drink with {course.name}</h3>
      {drinks.length === 0 && !editing ? <p className={css.quiet}>nothing to drink yet</p> : null}
      <ul>
        {drinks.map((drink, at) => (
          <li key={drink.id}>
            {editing ? (
              <Entry id={drink.id}>
                <DrinkWords drink={drink} drinks={drinks} at={at} />
              </Entry>
            ) : (
              <DrinkLine drink={drink} />
            )}
          </li>
        ))}
      </ul>
      {editing ? (
        <p className={css.row}>
          <Button tone="word" onClick={() => add('with')} aria-label={`Add a drink with alcohol to ${course.name}`}>
            Add one with
          </Button>
          <Button tone="word" onClick={() => add('without')} aria-label={`Add a drink without alcohol to ${course.name}`}>
            one without
          </Button>
        </p>
      ) : null}
    </div>
  )
}

function DrinkLine({ drink }: { readonly drink: Drink }) {
  const { name, about } = drinkText(drink)
  return (
    <>
      <b>{name}</b>
      <small>{about}</small>
    </>
  )
}

'use client'

import { newId } from '#app/_frame/new-id.ts'
import { useEdit } from '#app/_frame/use-edit.ts'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Button } from '#app/_ui/button.tsx'
import { placeAfterMove } from '#app/_ui/move-place.ts'
import { Moves } from '#app/_ui/moves.tsx'
import { WordText } from '#app/_ui/word.tsx'
import { cleanText } from '#lib/domain/atoms.ts'
import type { Course } from '#lib/domain/menu.ts'
import type { Drink } from '#lib/domain/people.ts'
import { addDrink } from '#lib/plan/commands/add.ts'
import { moveDrink } from '#lib/plan/commands/move.ts'
import { setFields } from '#lib/plan/commands/set.ts'
import { blankDrink } from './blank.ts'
import css from './menu.module.css'

/** Centilitres for each person: "10 cl". */
const amountText = (ml: number): string => (ml === 0 ? '' : `${Math.round(ml) / 10}\u00a0cl`)

const aboutText = (drink: Drink): string => {
  const served = drink.servedC === undefined ? '' : `, at ${drink.servedC}°`
  return drink.role === 'with' ? `with alcohol, ${drink.abv}%${served}` : `without${served}`
}

/** What is drunk with a course: with alcohol, and without. */
export function Drinks({ course, editing }: { readonly course: Course; readonly editing: boolean }) {
  const { evening } = usePlan()
  const { tell } = useEdit()
  const drinks = evening.drinks.filter((drink) => drink.course === course.id)
  const add = (role: Drink['role']) => tell((doc) => addDrink(doc, blankDrink(newId(), course.id, role)))
  return (
    <div className={css.drinks}>
      <h3 className="vh">To drink with {course.name}</h3>
      {drinks.length === 0 && !editing ? <p className={css.quiet}>nothing yet</p> : null}
      <ul>
        {drinks.map((drink, at) => (
          <li key={drink.id}>{editing ? <DrinkWords drink={drink} drinks={drinks} at={at} /> : <DrinkLine drink={drink} />}</li>
        ))}
      </ul>
      {editing ? (
        <p>
          <Button tone="word" onClick={() => add('with')} aria-label={`Add a drink with alcohol to ${course.name}`}>
            Add one with
          </Button>{' '}
          <Button tone="word" onClick={() => add('without')} aria-label={`Add a drink without alcohol to ${course.name}`}>
            one without
          </Button>
        </p>
      ) : null}
    </div>
  )
}

function DrinkLine({ drink }: { readonly drink: Drink }) {
  const amount = amountText(drink.mlEach)
  return (
    <>
      <b>
        {drink.name}
        {amount ? `, ${amount}` : ''}
      </b>
      <small>{aboutText(drink)}</small>
    </>
  )
}

function DrinkWords({ drink, drinks, at }: { readonly drink: Drink; readonly drinks: readonly Drink[]; readonly at: number }) {
  const { change, tell, removeWithStrip } = useEdit()
  const set = (patch: Partial<Pick<Drink, 'name' | 'mlEach' | 'abv'>>) =>
    change((doc) => setFields(doc, 'drinks', drink.id, patch))
  const number = (text: string): number => Number(text.replace(/[^\d.,]/g, '').replace(',', '.'))
  return (
    <>
      <WordText
        label={`Name of the drink ${drink.name}`}
        text={drink.name}
        onWrite={(text) => set({ name: cleanText(text.trim(), false) })}
      />
      ,{' '}
      <WordText
        label={`${drink.name}: for each`}
        text={amountText(drink.mlEach) || '0 cl'}
        onWrite={(text) => set({ mlEach: Math.round(number(text) * 10) }) && 'Write centilitres for each, such as 10 cl.'}
      />
      {drink.role === 'with' ? (
        <>
          ,{' '}
          <WordText
            label={`${drink.name}: alcohol in percent`}
            text={`${drink.abv}%`}
            onWrite={(text) => set({ abv: number(text) }) && 'Write percent of alcohol, such as 12.5%.'}
          />
        </>
      ) : (
        ', without'
      )}
      <Moves
        name={drink.name}
        isFirst={at === 0}
        isLast={at === drinks.length - 1}
        onMove={(by) => {
          const place = placeAfterMove(drinks, drink.id, by)
          if (place) tell((doc) => moveDrink(doc, drink.id, drink.course, place))
        }}
        onRemove={() => removeWithStrip('drinks', drink.id, drink.name)}
      />
    </>
  )
}

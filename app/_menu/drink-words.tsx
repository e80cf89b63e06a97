'use client'

import { useEdit } from '#app/_frame/use-edit.ts'
import { usePlan } from '#app/_sync/use-plan.ts'
import { placeAfterMove } from '#app/_ui/move-place.ts'
import { Moves } from '#app/_ui/moves.tsx'
import { WordChoice, WordText } from '#app/_ui/word.tsx'
import { amountText, drinkText, readNumber } from '#app/_words/drink.ts'
import { cleanText } from '#lib/domain/atoms.ts'
import type { Drink } from '#lib/domain/people.ts'
import { moveDrink } from '#lib/plan/commands/move.ts'
import { setFields } from '#lib/plan/commands/set.ts'
import css from './menu.module.css'

interface Props {
  readonly drink: Drink
  readonly drinks: readonly Drink[]
  readonly at: number
}

/** A drink while the menu is changed: its name, and folded how much, how strong, how cold, and where it stands. */
export function DrinkWords({ drink, drinks, at }: Props) {
  const { evening } = usePlan()
  const { change, tell, removeWithStrip } = useEdit()
  const set = (patch: Partial<Pick<Drink, 'name' | 'mlEach' | 'abv' | 'role'>> | { readonly servedC: number | undefined }) =>
    change((doc) => setFields(doc, 'drinks', drink.id, patch))
  const number = (text: string, from: number, to: number, say: string, write: (value: number) => string | null) => {
    const value = readNumber(text)
    return value === null || value < from || value > to ? say : write(value)
  }
  return (
    <>
      <WordText
        long
        field="name"
        label={`Name of the drink ${drink.name}`}
        text={drink.name}
        onWrite={(text) => (text.trim() ? set({ name: cleanText(text.trim(), false) }) : 'A drink needs a name.')}
      />
      <details className={css.fold}>
        <summary>
          {amountText(drink.mlEach) || '0 cl'}, {drinkText(drink).about}
        </summary>
        <p className={css.sentence}>
          <WordText
            field="mlEach"
            label={`${drink.name}: for each`}
            text={amountText(drink.mlEach) || '0 cl'}
            onWrite={(text) =>
              number(text, 0, 200, 'Write centilitres for each, such as 10 cl.', (cl) => set({ mlEach: Math.round(cl * 10) }))
            }
          />{' '}
          for each,{' '}
          <WordChoice
            label={`${drink.name}: with or without alcohol`}
            value={drink.role}
            options={[
              ['with', 'with alcohol'],
              ['without', 'without'],
            ]}
            onChoose={(role) => set(role === 'without' ? { role, abv: 0 } : { role })}
          />
          {drink.role === 'with' || drink.abv > 0 ? (
            <>
              {' '}
              of{' '}
              <WordText
                field="abv"
                label={`${drink.name}: alcohol in percent`}
                text={`${drink.abv}%`}
                onWrite={(text) => number(text, 0, 96, 'Write percent of alcohol, such as 12.5%.', (abv) => set({ abv }))}
              />
            </>
          ) : null}
          , served at{' '}
          <WordText
            field="servedC"
            label={`${drink.name}: served at, in degrees`}
            text={drink.servedC === undefined ? '' : `${drink.servedC}°`}
            empty="any heat"
            onWrite={(text) =>
              text.trim() === ''
                ? set({ servedC: undefined })
                : number(text, -20, 100, 'Write degrees Celsius, such as 8°, or nothing.', (servedC) => set({ servedC }))
            }
          />
          .
        </p>
        <Moves
          name={drink.name}
          isFirst={at === 0}
          isLast={at === drinks.length - 1}
          onMove={(by) => {
            const place = placeAfterMove(drinks, drink.id, by)
            if (place) tell((doc) => moveDrink(doc, drink.id, drink.course, place))
          }}
          into={evening.courses
            .filter((course) => course.id !== drink.course)
            .map((course) => [course.id, course.name || 'a course without a name'])}
          onInto={(course) => tell((doc) => moveDrink(doc, drink.id, course, { kind: 'last' }))}
          onRemove={() => removeWithStrip('drinks', drink.id, drink.name)}
        />
      </details>
    </>
  )
}

'use client'

import { Button } from '#app/_ui/button.tsx'
import { Entry } from '#app/_ui/drafts.tsx'
import { Moves } from '#app/_ui/moves.tsx'
import { WordText } from '#app/_ui/word.tsx'
import { amountText } from '#app/_words/amount.ts'
import { doubtWords } from '#app/_words/recipe.ts'
import type { DishDraft, IngredientDraft, NewKey } from '#lib/recipes/draft.ts'
import { readAmount } from '#lib/recipes/make-ingredient.ts'
import { changeIngredient, makeStep, setAside, settleIngredient, withoutAmountDoubts } from './correct.ts'
import { Flag, MarkedText } from './flag.tsx'
import { moved } from './menu-draft.ts'
import css from './recipes.module.css'

interface Props {
  readonly draft: DishDraft
  readonly each: IngredientDraft
  readonly sorting: boolean
  readonly newKey: NewKey
  readonly onChange: (draft: DishDraft) => void
}

const WRONG = 'Write an amount, such as 200 g, 1½ cups or 2 to 3; nothing for “to taste”.'

/** One line of the list of ingredients: what was understood as blanks, the recipe's own words below. */
export function IngredientRow({ draft, each: { key, line }, sorting, newKey, onChange }: Props) {
  const at = draft.ingredients.findIndex((each) => each.key === key)
  const name = line.food || line.text
  const shown = line.amount ? amountText(line.amount) : ''
  const pack = line.pack && line.amount ? `, each ${amountText(line.pack)}` : ''
  return (
    <li className={css.row}>
      <Entry id={key}>
        <div className={css.pair}>
          <p className={css.words}>
            <WordText
              field="amount"
              label={`${name}: amount`}
              text={shown}
              empty="to taste"
              onWrite={(text) => {
                if (text.trim() === '') {
                  onChange(changeIngredient(draft, key, { amount: null, pack: null, doubts: withoutAmountDoubts(line.doubts) }))
                  return null
                }
                const amount = readAmount(text, draft.decimal)
                if (!amount) return WRONG
                onChange(changeIngredient(draft, key, { amount, pack: null, doubts: withoutAmountDoubts(line.doubts) }))
                return null
              }}
            />
            {pack}{' '}
            <WordText
              field="food"
              label={`${name}: food`}
              text={line.food}
              onWrite={(text) => {
                if (text.trim() === '') return 'Name the food, or set the line aside.'
                onChange(changeIngredient(draft, key, { food: text.trim().slice(0, 200) }))
                return null
              }}
            />
            <span className={css.note}>
              {line.note === '' || line.note.startsWith('(') ? ' ' : ', '}
              <WordText
                field="note"
                label={`${name}: what is done to it`}
                text={line.note}
                empty="as it is"
                onWrite={(text) => {
                  onChange(changeIngredient(draft, key, { note: text.trim().slice(0, 200) }))
                  return null
                }}
              />
            </span>
          </p>
          <p className={css.said}>
            <span className="vh">The recipe says: </span>
            <MarkedText text={line.text} doubts={line.doubts} />
            {line.also.length > 0 ? <i> also given as {line.also.map(amountText).join(', ')}</i> : null}
          </p>
        </div>
        {line.doubts.map((doubt) => (
          <Flag key={`${doubt.kind}.${doubt.from}`} word="Not understood">
            {doubtWords[doubt.kind](line.text.slice(doubt.from, doubt.to))}
          </Flag>
        ))}
        {line.doubts.length > 0 ? (
          <span className={css.choices}>
            <Button tone="word" onClick={() => onChange(settleIngredient(draft, key))} aria-label={`${name}: right as it is`}>
              Right as it is
            </Button>
            <Button tone="word" onClick={() => onChange(makeStep(draft, key, newKey))} aria-label={`${name}: it is a step`}>
              It is a step
            </Button>
            <Button tone="word" onClick={() => onChange(setAside(draft, key))} aria-label={`${name}: leave it out`}>
              Leave it out
            </Button>
          </span>
        ) : null}
        {sorting ? (
          <Moves
            name={name}
            isFirst={at === 0}
            isLast={at === draft.ingredients.length - 1}
            onMove={(by) => onChange({ ...draft, ingredients: moved(draft.ingredients, key, by) })}
            onRemove={() => onChange(setAside(draft, key))}
            into={[['steps', 'the steps']]}
            onInto={() => onChange(makeStep(draft, key, newKey))}
          />
        ) : null}
      </Entry>
    </li>
  )
}

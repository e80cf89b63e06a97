'use client'

import { useState } from 'react'
import { Button } from '#app/_ui/button.tsx'
import { WordChoice, WordText } from '#app/_ui/word.tsx'
import { countOf } from '#app/_words/clock.ts'
import { assumedWords, measuresWords, unusedWords } from '#app/_words/recipe.ts'
import type { Measures } from '#lib/domain/unit-words.ts'
import type { DishDraft, NewKey } from '#lib/recipes/draft.ts'
import { assumedOfDish, makeIngredient, makeStep, openThings } from './correct.ts'
import { Flag, FlagMark } from './flag.tsx'
import { IngredientRow } from './ingredient-row.tsx'
import css from './recipes.module.css'
import { StepRow } from './step-row.tsx'

interface Props {
  readonly draft: DishDraft
  readonly covers: number
  readonly newKey: NewKey
  readonly onChange: (draft: DishDraft) => void
  /** One below the dish’s own heading. */
  readonly heading: 'h3' | 'h4'
}

/** How much somebody should look at, in words and with its shape. */
export function OpenThings({ draft }: { readonly draft: DishDraft }) {
  const open = openThings(draft)
  if (open === 0) return <span className={css.clear}>nothing open</span>
  return (
    <span className={css.openCount}>
      <FlagMark /> {countOf(open, 'thing')} to look at
    </span>
  )
}

const MEASURES: readonly (readonly [Measures | '', string])[] = [
  ['', 'not said yet'],
  ...Object.entries(measuresWords).map(([measures, words]) => [measures as Measures, words] as const),
]

/** A recipe as it was understood, all of it to be corrected. Nothing is saved by it. */
export function DishPreview({ draft, covers, newKey, onChange, heading: Heading }: Props) {
  const [sorting, setSorting] = useState(false)
  const name = draft.name || 'This dish'
  const yields = draft.yields
  return (
    <div className={css.preview}>
      <p className={css.words}>
        The recipe is for{' '}
        <WordText
          field="yields"
          label={`${name}: for how many the recipe is`}
          text={yields ? String(yields.least) : ''}
          empty={`${covers}, as nobody said`}
          onWrite={(text) => {
            if (text.trim() === '') {
              onChange({ ...draft, yields: null })
              return null
            }
            const count = Number(text.trim().replace(',', '.'))
            if (!(count > 0 && count <= 1000)) return 'Write a number, such as 6.'
            onChange({ ...draft, yields: { least: count, most: count, of: yields?.of ?? '' } })
            return null
          }}
        />
        {yields?.of ? ` (${yields.of})` : ''}.{' '}
        {draft.asksMeasures ? (
          <>
            Its cups and spoons are{' '}
            <WordChoice
              label={`${name}: whose cups and spoons`}
              value={draft.measures ?? ''}
              options={MEASURES}
              onChoose={(measures) => onChange({ ...draft, measures: measures === '' ? null : measures })}
            />
            .
          </>
        ) : null}
      </p>
      {yields && yields.most > yields.least ? (
        <Flag word="Assumed">
          It says {yields.least} to {yields.most}. {assumedWords['yield-range']('')}
        </Flag>
      ) : null}
      {draft.asksMeasures && draft.measures === null ? (
        <Flag word="Please say">
          A cup, a spoon and a pint are not the same everywhere. Whose are these?
          {draft.guess ? ` “${draft.guess.because}” sounds ${measuresWords[draft.guess.measures]}.` : ''}{' '}
          {draft.guess ? (
            <Button
              tone="word"
              onClick={() => onChange({ ...draft, measures: draft.guess?.measures ?? null })}
              aria-label={`${name}: the cups and spoons are ${measuresWords[draft.guess.measures]}`}
            >
              Yes, {measuresWords[draft.guess.measures]}
            </Button>
          ) : null}
        </Flag>
      ) : null}
      {draft.cutShort ? <Flag word="Cut">{assumedWords['cut-short']('')}</Flag> : null}
      {draft.source ? <p className={css.said}>From {draft.source}</p> : null}
      <div className={css.halves}>
        <section aria-label={`Ingredients of ${name}`}>
          <Heading>Ingredients</Heading>
          {draft.ingredients.length === 0 ? <p className={css.said}>None are known yet.</p> : null}
          <ul className={css.rows}>
            {draft.ingredients.map((each) => (
              <IngredientRow key={each.key} draft={draft} each={each} sorting={sorting} newKey={newKey} onChange={onChange} />
            ))}
          </ul>
        </section>
        <section aria-label={`Steps of ${name}`}>
          <Heading>What is done</Heading>
          {draft.steps.length === 0 ? <p className={css.said}>No step was found: it will only be put on the plates.</p> : null}
          <ol className={css.rows}>
            {draft.steps.map((step) => (
              <StepRow key={step.key} draft={draft} step={step} sorting={sorting} newKey={newKey} onChange={onChange} />
            ))}
          </ol>
          <p className={css.said}>
            {assumedOfDish(draft)
              .map((kind) => assumedWords[kind](''))
              .join(' ')}
          </p>
        </section>
      </div>
      {draft.unused.length > 0 ? (
        <section aria-label={`Lines of ${name} that are not used`} className={css.unused}>
          <Heading>Not used</Heading>
          <ul className={css.rows}>
            {draft.unused.map((line) => (
              <li key={line.key} className={css.row}>
                <p className={css.own}>{line.text}</p>
                <p className={css.said}>{unusedWords[line.why]}</p>
                <span className={css.choices}>
                  <Button
                    tone="word"
                    onClick={() => onChange(makeIngredient(draft, line.key, newKey))}
                    aria-label={`${line.text.slice(0, 40)}: it is an ingredient`}
                  >
                    It is an ingredient
                  </Button>
                  <Button
                    tone="word"
                    onClick={() => onChange(makeStep(draft, line.key, newKey))}
                    aria-label={`${line.text.slice(0, 40)}: it is a step`}
                  >
                    It is a step
                  </Button>
                </span>
              </li>
            ))}
          </ul>
        </section>
      ) : null}
      <Button tone="word" onClick={() => setSorting(!sorting)} aria-pressed={sorting} aria-label={`Sort the lines of ${name}`}>
        {sorting ? 'Done sorting' : 'Sort and move lines'}
      </Button>
    </div>
  )
}

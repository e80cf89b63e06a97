'use client'

import { newId } from '#app/_frame/new-id.ts'
import { TextWords } from '#app/_frame/text-words.tsx'
import { useEdit } from '#app/_frame/use-edit.ts'
import { usePlan } from '#app/_sync/use-plan.ts'
import type { Parts } from '#app/_ui/parts.ts'
import { Sentence } from '#app/_ui/sentence.tsx'
import type { Dish } from '#lib/domain/menu.ts'
import css from './dish.module.css'
import { applyDishEdit, type DishEdit } from './dish-edit.ts'
import { dishSentences } from './dish-sentences.ts'
import { DishVariants } from './dish-variants.tsx'
import { keepingScene } from './keeps-words.ts'

/** What happens to the finished dish, where it stands and is made, what is made of it for some, and what is noted about it. */
export function DishWords({ dish, eveningId }: { readonly dish: Dish; readonly eveningId: string }) {
  const { evening } = usePlan()
  const { change } = useEdit()
  const said = dishSentences(dish, evening, keepingScene(evening, `/evenings/${eveningId}/kitchens`))
  const sentences = (all: readonly Parts<DishEdit>[]) =>
    all.map((parts, at) =>
      parts.length === 0 ? null : (
        <Sentence
          // biome-ignore lint/suspicious/noArrayIndexKey: a sentence is its place on the page
          key={at}
          parts={parts}
          onEdit={(edit) => change((doc) => applyDishEdit(doc, evening, dish.id, edit, newId))}
        />
      ),
    )
  return (
    <>
      <section className={css.finished} aria-labelledby="finished">
        <h2 id="finished">When it is done</h2>
        {sentences(said.done)}
      </section>
      <section className={css.finished} aria-labelledby="stands">
        <h2 id="stands">On this evening</h2>
        {sentences(said.stands)}
        <DishVariants dish={dish} eveningId={eveningId} />
      </section>
      <section className={css.finished} aria-labelledby="notes">
        <h2 id="notes">Notes</h2>
        <TextWords
          root="dishes"
          id={dish.id}
          field="notes"
          label="Notes"
          empty="What is worth knowing: a plate to borrow, what went wrong last time"
        />
        {sentences(said.found)}
        {dish.source ? (
          <p className={css.source}>
            <a href={dish.source} target="_blank" rel="noreferrer noopener">
              Open that page
            </a>
          </p>
        ) : null}
      </section>
    </>
  )
}

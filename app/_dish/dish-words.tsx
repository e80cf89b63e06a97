'use client'

import { newId } from '#app/_frame/new-id.ts'
import { useEdit } from '#app/_frame/use-edit.ts'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Sentence } from '#app/_ui/sentence.tsx'
import type { Dish } from '#lib/domain/menu.ts'
import css from './dish.module.css'
import { applyDishEdit } from './dish-edit.ts'
import { DishNotes } from './dish-notes.tsx'
import { carryParts, type DishEdit, keepsParts, placeParts, sourceParts, tableParts, variantParts } from './dish-sentences.ts'
import { DishVariants } from './dish-variants.tsx'

/** What happens to the finished dish, where it stands and is made, what is made of it for some, and what is noted about it. */
export function DishWords({ dish, eveningId }: { readonly dish: Dish; readonly eveningId: string }) {
  const { evening } = usePlan()
  const { change } = useEdit()
  const onEdit = (edit: DishEdit) => change((doc) => applyDishEdit(doc, evening, dish.id, edit, newId))
  const host = evening.kitchens.find((kitchen) => kitchen.id === evening.host)
  const scene = {
    kitchen: host,
    kitchens: `/evenings/${eveningId}/cooks`,
    at: 'keeps.uses',
    named: (what: string) => `While it waits: ${what}`,
  }
  return (
    <>
      <section className={css.finished} aria-labelledby="finished">
        <h2 id="finished">When it is done</h2>
        <Sentence parts={keepsParts(dish, scene)} onEdit={onEdit} />
        <Sentence parts={tableParts(dish)} onEdit={onEdit} />
        <Sentence parts={carryParts(dish, evening.host)} onEdit={onEdit} />
      </section>
      <section className={css.finished} aria-labelledby="stands">
        <h2 id="stands">On this evening</h2>
        <Sentence parts={placeParts(dish, evening)} onEdit={onEdit} />
        <Sentence parts={variantParts(dish, evening)} onEdit={onEdit} />
        <DishVariants dish={dish} eveningId={eveningId} />
      </section>
      <section className={css.finished} aria-labelledby="notes">
        <h2 id="notes">Notes</h2>
        <DishNotes dish={dish} />
        <Sentence parts={sourceParts(dish)} onEdit={onEdit} />
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

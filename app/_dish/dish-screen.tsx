'use client'

import { useParams } from 'next/navigation'
import { useMemo } from 'react'
import { ClaimLine } from '#app/_frame/claim.tsx'
import { Here } from '#app/_frame/here.tsx'
import { newId } from '#app/_frame/new-id.ts'
import { useEdit } from '#app/_frame/use-edit.ts'
import { useWhere } from '#app/_frame/where.tsx'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Entry } from '#app/_ui/drafts.tsx'
import { Link } from '#app/_ui/link.tsx'
import { Plain } from '#app/_ui/plain.tsx'
import { Ready } from '#app/_ui/ready.tsx'
import { WordText } from '#app/_ui/word.tsx'
import { clockText } from '#app/_words/clock.ts'
import { namesOf } from '#app/_words/names.ts'
import css from './dish.module.css'
import { DishActions } from './dish-actions.tsx'
import { DishAside } from './dish-aside.tsx'
import { applyDishEdit } from './dish-edit.ts'
import { nameBlank } from './dish-sentences.ts'
import { DishWords } from './dish-words.tsx'
import { StepList } from './step-list.tsx'

/** A dish and its method: each step a sentence whose underlined words can be changed. */
export function DishScreen({ id }: { readonly id: string }) {
  const { evening, order } = usePlan()
  const { change } = useEdit()
  const eveningId = String(useParams().id ?? evening.id)
  const names = useMemo(() => namesOf(evening), [evening])
  const dish = names.dish(id)
  useWhere(dish?.id ?? null)
  const planned = order.kind === 'none' ? null : order.order

  if (!dish) {
    return (
      <Plain title="This dish is not on the menu">
        <Ready />
        <p>It was removed, perhaps by another cook. Undo brings back what you removed yourself.</p>
        <p>
          <Link href={`/evenings/${eveningId}/menu`}>The menu</Link>
        </p>
      </Plain>
    )
  }

  const course = names.course(dish.course)
  const name = nameBlank(dish)
  const toTable = planned?.courses.find((candidate) => candidate.course === dish.course)?.toTable

  return (
    <Entry id={dish.id}>
      <main id="main" className={css.main}>
        <Ready />
        <div>
          <p className={css.back}>
            <Link href={`/evenings/${eveningId}/menu`}>Menu</Link>
          </p>
          <h1 className={css.title}>
            <WordText
              display
              long
              field="name"
              label={name.label}
              text={name.text}
              onWrite={(text) => {
                const said = name.write(text)
                return said.kind === 'wrong' ? said.why : change((doc) => applyDishEdit(doc, evening, dish.id, said.value, newId))
              }}
            />
          </h1>
          <p className={css.about}>
            {course?.name ?? 'Its course'}
            {toTable ? `, to table ${clockText(toTable, evening.zone)}` : ''}. <Here target={dish.id} />
          </p>
          <p>
            <ClaimLine target={dish.id} name={dish.name} giving />
          </p>
          <p className={css.jump}>
            <a href="#ingredients">Ingredients and amounts</a>
          </p>
          <h2 className="vh">Method</h2>
          <StepList dish={dish.id} planned={planned} />
          <DishWords dish={dish} eveningId={eveningId} />
          <DishActions dish={dish} eveningId={eveningId} />
        </div>
        <DishAside dish={dish} planned={planned} names={names} />
      </main>
    </Entry>
  )
}

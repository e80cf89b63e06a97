'use client'

import { useState } from 'react'
import { newId } from '#app/_frame/new-id.ts'
import { useEdit } from '#app/_frame/use-edit.ts'
import { blankStep } from '#app/_menu/blank.ts'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Button } from '#app/_ui/button.tsx'
import { Ready } from '#app/_ui/ready.tsx'
import { minutesText } from '#app/_words/duration.ts'
import { minutesOf } from '#lib/domain/duration.ts'
import type { Step } from '#lib/domain/menu.ts'
import { addStep } from '#lib/plan/commands/add.ts'
import { AddChore } from './add-chore.tsx'
import { ChoreList } from './chore-list.tsx'
import css from './chores.module.css'
import { type Chore, usualChores } from './usual-chores.ts'

const sameWords = (a: string, b: string): boolean => a.trim().toLowerCase() === b.trim().toLowerCase()

/** What the house wants done beside the cooking: a list, a line to add to it, and the usual in one tap. */
export function ChoresScreen() {
  const { evening, order } = usePlan()
  const { tell } = useEdit()
  const [open, setOpen] = useState<string | null>(null)
  const chores = evening.steps.filter((step) => step.dish === null)
  const planned = order.kind === 'none' ? null : order.order

  const add = (chore: Chore | Pick<Step, 'does'>): string | null => {
    const id = newId()
    return tell((doc) => addStep(doc, { ...blankStep(id, null, undefined), ...chore })) ? id : null
  }
  const usual = usualChores(evening).filter((chore) => !chores.some((each) => sameWords(each.does, chore.does)))

  return (
    <main id="main" className={css.main}>
      <Ready />
      <h1>Chores of the house</h1>
      <p className={css.quiet}>
        What wants doing beside the cooking. The running order works it in between the dishes, within the hours that you say.
      </p>
      <AddChore
        onAdd={(does) => {
          const id = add({ does })
          if (id !== null) setOpen(id)
          return id !== null
        }}
      />
      {chores.length > 0 ? (
        <section aria-labelledby="chores">
          <h2 id="chores">On the list</h2>
          <ChoreList chores={chores} planned={planned} open={open} onOpen={setOpen} />
        </section>
      ) : null}
      {usual.length > 0 ? (
        <section aria-labelledby="usual">
          <h2 id="usual">The usual, in one tap</h2>
          <p className={css.offers}>
            {usual.map((chore) => (
              <Button key={chore.does} tone="soft" aria-label={`Add: ${chore.does}`} onClick={() => add(chore)}>
                {chore.does} <small>{minutesText(minutesOf(chore.ways[0]?.takes.likely ?? 'PT0S'))}</small>
              </Button>
            ))}
          </p>
        </section>
      ) : null}
    </main>
  )
}

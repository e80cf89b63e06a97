'use client'

import { useState } from 'react'
import { useNight } from '#app/_tonight/use-night.ts'
import { AnswerList } from './answer-list.tsx'
import { DishChoice } from './dish-choice.tsx'
import { comingDishes, failedAnswers } from './happening.ts'
import css from './moments.module.css'
import type { PathProps } from './path.ts'

/** A dish cannot be served: a spare one stands in, or its course goes without. */
export function DishFailed({ onTaken }: PathProps) {
  const { evening } = useNight()
  const coming = comingDishes(evening)
  const [chosen, setChosen] = useState<string | null>(null)
  const dish = coming.find(({ id }) => id === chosen) ?? coming[0]
  if (!dish) return <p>Every dish is out.</p>
  const answers = failedAnswers(evening, dish.id)
  return (
    <>
      <p className={css.sentence}>
        <DishChoice label="Which dish has failed" value={dish.id} onChoose={setChosen} /> cannot be served.
      </p>
      {answers.length === 1 ? <p className={css.quiet}>No spare dish is on the menu that could stand in.</p> : null}
      <AnswerList asker="failed dish" label="What we can do" answers={answers} onTaken={onTaken} />
    </>
  )
}

'use client'

import { useState } from 'react'
import { useNight } from '#app/_tonight/use-night.ts'
import { WordChoice } from '#app/_ui/word.tsx'
import { AnswerList } from './answer-list.tsx'
import { openSteps, rawAnswers } from './happening.ts'
import css from './moments.module.css'
import type { PathProps } from './path.ts'

const MINUTES = ['5', '10', '15', '20', '30'] as const

/** The meat is carved and a side is raw: it gets longer, follows, is done otherwise, or stays away. */
export function DishRaw({ onTaken }: PathProps) {
  const { evening, order, names } = useNight()
  const [chosen, setChosen] = useState<string | null>(null)
  const [minutes, setMinutes] = useState('10')
  const open = order ? openSteps(evening, order) : []
  const step = open.find(({ id }) => id === chosen) ?? open[0]
  if (!order || !step) return <p>Nothing is left to be made ready.</p>
  return (
    <>
      <p className={css.sentence}>
        <WordChoice
          label="What is not ready"
          value={step.id}
          options={open.map(({ id, dish }) => [id, names.stepName(id), names.dishName(dish ?? '')] as const)}
          onChoose={setChosen}
        />{' '}
        needs about{' '}
        <WordChoice
          label="How much longer it needs"
          value={minutes}
          options={MINUTES.map((each) => [each, `${each} min`] as const)}
          onChoose={setMinutes}
        />{' '}
        more.
      </p>
      <AnswerList
        asker="raw side"
        label="What we can do"
        answers={rawAnswers(evening, order, step, Number(minutes))}
        onTaken={onTaken}
      />
    </>
  )
}

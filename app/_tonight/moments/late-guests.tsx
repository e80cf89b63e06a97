'use client'

import { useState } from 'react'
import { useNight } from '#app/_tonight/use-night.ts'
import { WordChoice } from '#app/_ui/word.tsx'
import { AnswerList } from './answer-list.tsx'
import { comingCourses, lateGuestAnswers } from './happening.ts'
import css from './moments.module.css'
import type { PathProps } from './path.ts'
import { WaitThread } from './wait-thread.tsx'

const MINUTES = ['10', '15', '20', '25', '30', '40', '60'] as const

/** Guests are late: how long the next course can wait, and three answers. */
export function LateGuests({ onTaken }: PathProps) {
  const { evening, order, nowMs } = useNight()
  const [minutes, setMinutes] = useState('25')
  // The answers stand as they were when this was opened: a minute later their prices are the same.
  const [openedAt] = useState(nowMs)
  const [next] = comingCourses(evening)
  const served = order?.courses.find(({ course }) => course === next?.id)
  const answers = lateGuestAnswers(evening, openedAt, Number(minutes))
  if (answers.length === 0) return <p>Every course is out: nothing is left to wait with.</p>
  return (
    <>
      <p className={css.sentence}>
        They come{' '}
        <WordChoice
          label="How late they come"
          value={minutes}
          options={MINUTES.map((each) => [each, `${each} min`] as const)}
          onChoose={setMinutes}
        />{' '}
        later.
      </p>
      {served ? <WaitThread served={served} /> : null}
      <AnswerList asker="late guests" label="What we can do" answers={answers} onTaken={onTaken} />
    </>
  )
}

'use client'

import { useState } from 'react'
import { useNight } from '#app/_tonight/use-night.ts'
import { WordChoice } from '#app/_ui/word.tsx'
import { AnswerList } from './answer-list.tsx'
import { GuestJobs } from './guest-jobs.tsx'
import { goneCooks } from './happening.ts'
import css from './moments.module.css'
import type { PathProps } from './path.ts'

/** A hand is missing: go on without it and see what moves, ask a guest for something small; and who is back is told here too. */
export function CookGone({ onTaken }: PathProps) {
  const { evening, names, own } = useNight()
  const [chosen, setChosen] = useState<string | null>(null)
  const gone = goneCooks(evening)
  const here = evening.cooks.filter(({ id }) => !gone.includes(id))
  const cook = here.find(({ id }) => id === chosen) ?? here.find(({ id }) => id !== own) ?? here[0]
  return (
    <>
      {gone.length > 0 ? (
        <AnswerList
          asker="cook back"
          label="Who is back"
          answers={gone.map((each) => ({ kind: 'back', cook: each }) as const)}
          onTaken={onTaken}
        />
      ) : null}
      {cook && here.length > 1 ? (
        <>
          <p className={css.sentence}>
            <WordChoice
              label="Who cannot help now"
              value={cook.id}
              options={here.map(({ id }) => [id, names.cookName(id)] as const)}
              onChoose={setChosen}
            />{' '}
            cannot help now.
          </p>
          <AnswerList asker="cook gone" label="What we can do" answers={[{ kind: 'gone', cook: cook.id }]} onTaken={onTaken} />
        </>
      ) : (
        <p className={css.quiet}>Only one cook is here.</p>
      )}
      <GuestJobs />
    </>
  )
}

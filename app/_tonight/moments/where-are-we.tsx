'use client'

import { useState } from 'react'
import { useNight } from '#app/_tonight/use-night.ts'
import { WordChoice } from '#app/_ui/word.tsx'
import { countOf } from '#app/_words/clock.ts'
import { caughtText, dueText, replyWords } from '#app/_words/night-moment.ts'
import { caughtKey, type Reply, replied, repliesTo } from './caught-up.ts'
import css from './moments.module.css'
import type { PathProps } from './path.ts'
import { useMissed } from './use-missed.ts'

/** Nobody has told anything for a while: one list of what should have happened, each with when it did, told in one tap. */
export function WhereAreWe({ onTaken }: PathProps) {
  const { evening, names, tell, nowMs, cook } = useNight()
  // What is asked stays as it was when this was opened.
  const [missed] = useState(useMissed())
  const [replies, setReplies] = useState<ReadonlyMap<string, Reply>>(new Map())
  if (missed.length === 0) return <p>All that should have happened by now has been told.</p>
  const says = missed.flatMap((one) => replied(one, replies.get(caughtKey(one)) ?? 'not-yet', nowMs))
  const setAll = (reply: Reply) => setReplies(new Map(missed.map((one) => [caughtKey(one), reply])))
  return (
    <>
      <div className={css.actions}>
        <button type="button" className={css.big} onClick={() => setAll('planned')}>
          All of it, when it was planned
        </button>
      </div>
      <ul className={css.rows}>
        {missed.map((one) => (
          <li key={caughtKey(one)}>
            <b>{caughtText(one, names)}</b> <small>{dueText(one, evening.zone)}</small>
            <WordChoice
              label={`${caughtText(one, names)}: when`}
              value={replies.get(caughtKey(one)) ?? 'not-yet'}
              options={repliesTo(one).map((reply) => [reply, replyWords[reply]] as const)}
              onChoose={(reply) => setReplies(new Map([...replies, [caughtKey(one), reply]]))}
            />
          </li>
        ))}
      </ul>
      <button
        type="button"
        className={`${css.big} ${css.full}`}
        disabled={says.length === 0}
        onClick={() => {
          for (const say of says) tell(say, cook ?? undefined)
          onTaken()
        }}
      >
        {says.length === 0 ? 'Nothing to tell yet' : `Tell ${countOf(says.length, 'thing')}`}
      </button>
    </>
  )
}

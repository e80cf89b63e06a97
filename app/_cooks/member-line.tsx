'use client'

import { useState, useTransition } from 'react'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Button } from '#app/_ui/button.tsx'
import { WordChoice } from '#app/_ui/word.tsx'
import { removeMemberAction, setCookAction } from './actions.ts'
import css from './cooks.module.css'
import type { Member } from './member.ts'

interface Props {
  readonly member: Member
  readonly members: readonly Member[]
  readonly eveningId: string
  readonly isHost: boolean
}

const NONE = ''

/** One person: which cook they are, and, for the host, the way out. */
export function MemberLine({ member, members, eveningId, isHost }: Props) {
  const { evening } = usePlan()
  const [problem, setProblem] = useState<string | null>(null)
  const [asked, setAsked] = useState(false)
  const [busy, start] = useTransition()
  const run = (action: () => Promise<string | null>) =>
    start(async () => {
      try {
        setProblem(await action())
      } catch {
        setProblem('The server cannot be reached, so nothing was changed. Try again.')
      }
    })
  const taken = new Set(members.filter((other) => other.id !== member.id).map((other) => other.cook))
  const mayChange = isHost || member.you
  return (
    <li className={css.member}>
      <div>
        <b>
          {member.name}
          {member.you ? ', you' : ''}
        </b>
        <small>
          {[...(member.email === null ? (member.account ? [] : ['by a link']) : [member.email]), member.role].join(', ')}
        </small>
      </div>
      <p className={css.words}>
        {member.you ? 'You are ' : 'Is '}
        <WordChoice
          label={member.you ? 'Which cook you are' : `Which cook ${member.name} is`}
          value={member.cook ?? NONE}
          disabled={!mayChange || busy}
          options={[
            [NONE, 'none of the cooks'] as const,
            ...evening.cooks.filter((cook) => !taken.has(cook.id)).map((cook) => [cook.id, cook.name] as const),
          ]}
          onChoose={(cook) => run(() => setCookAction(eveningId, member.id, cook === NONE ? null : cook))}
        />
      </p>
      {isHost ? (
        <span className={css.out}>
          {asked ? (
            <>
              <Button
                tone="late"
                disabled={busy}
                onClick={() => run(() => removeMemberAction(eveningId, member.id))}
                aria-label={`Yes, remove ${member.name}`}
              >
                Yes, remove {member.you ? 'me' : 'them'} now
              </Button>{' '}
              <Button tone="word" onClick={() => setAsked(false)}>
                no
              </Button>
            </>
          ) : (
            <Button tone="late" onClick={() => setAsked(true)} aria-label={`Remove ${member.name}`}>
              Remove
            </Button>
          )}
        </span>
      ) : null}
      {problem ? (
        <p className={css.problem} role="alert">
          {problem}
        </p>
      ) : null}
    </li>
  )
}

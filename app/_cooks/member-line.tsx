'use client'

import { useState, useTransition } from 'react'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Button } from '#app/_ui/button.tsx'
import { WordChoice } from '#app/_ui/word.tsx'
import { removeMemberAction, setCookAction, setRoleAction } from './actions.ts'
import css from './cooks.module.css'
import type { Member } from './member.ts'

interface Props {
  readonly member: Member
  readonly members: readonly Member[]
  readonly eveningId: string
  readonly isHost: boolean
  readonly onLink: (member: Member) => void
}

const NONE = ''

/** One person: which cook they are, whether they are a host, another link to their seat, and the way out. */
export function MemberLine({ member, members, eveningId, isHost, onLink }: Props) {
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
  const away = async (): Promise<string | null> => {
    const problem = await removeMemberAction(eveningId, member.id)
    if (problem === null && member.you) window.location.assign('/')
    return problem
  }
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
        {isHost && member.account ? (
          <>
            {' and '}
            <WordChoice
              label={member.you ? 'Whether you are a host' : `Whether ${member.name} is a host`}
              value={member.role}
              disabled={busy}
              options={[
                ['cook', 'a cook'],
                ['host', 'a host'],
              ]}
              onChoose={(role) => run(() => setRoleAction(eveningId, member.id, role))}
            />
          </>
        ) : null}
      </p>
      {isHost || member.you ? (
        <span className={css.out}>
          {asked ? (
            <>
              <Button
                tone="late"
                disabled={busy}
                onClick={() => run(away)}
                aria-label={member.you ? 'Yes, leave this evening now' : `Yes, remove ${member.name}`}
              >
                {member.you ? 'Yes, leave now' : 'Yes, remove them now'}
              </Button>{' '}
              <Button tone="word" onClick={() => setAsked(false)}>
                no
              </Button>
            </>
          ) : (
            <>
              {member.account ? null : (
                <Button tone="word" disabled={busy} onClick={() => onLink(member)} aria-label={`New link for ${member.name}`}>
                  New link
                </Button>
              )}{' '}
              <Button
                tone="late"
                onClick={() => setAsked(true)}
                aria-label={member.you ? 'Leave this evening' : `Remove ${member.name}`}
              >
                {member.you ? 'Leave' : 'Remove'}
              </Button>
            </>
          )}
        </span>
      ) : null}
      {asked && member.you ? (
        <p className={css.problem}>
          What you wrote in the plan stays with it. {member.account ? '' : 'Your link opens nothing any more.'}
        </p>
      ) : null}
      {problem ? (
        <p className={css.problem} role="alert">
          {problem}
        </p>
      ) : null}
    </li>
  )
}

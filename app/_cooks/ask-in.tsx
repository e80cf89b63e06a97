'use client'

import { useState } from 'react'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Button } from '#app/_ui/button.tsx'
import { Field } from '#app/_ui/field.tsx'
import { WordChoice } from '#app/_ui/word.tsx'
import type { LinkFor } from './actions.ts'
import css from './cooks.module.css'
import type { Member } from './member.ts'

interface Props {
  readonly members: readonly Member[]
  /** Cooks for whom a link waits already. */
  readonly asked: readonly (string | null)[]
  readonly busy: boolean
  readonly onAsk: (asked: LinkFor) => void
}

const SOMEBODY = ''

/** Makes a link for a cook of the plan whom nobody is yet, or for somebody who is not in it. */
export function AskIn({ members, asked, busy, onAsk }: Props) {
  const { evening } = usePlan()
  const free = evening.cooks.filter(({ id }) => !members.some(({ cook }) => cook === id) && !asked.includes(id))
  const [chosen, setChosen] = useState<string | null>(null)
  const [name, setName] = useState('')
  const cook = chosen === SOMEBODY ? null : (free.find(({ id }) => id === chosen) ?? free[0] ?? null)
  return (
    <section className={css.add} aria-label="Ask somebody in by a link">
      <p className={css.words}>
        Ask{' '}
        <WordChoice
          label="Who the link is for"
          value={cook?.id ?? SOMEBODY}
          options={[
            ...free.map(({ id, name: called }) => [id, called] as const),
            [SOMEBODY, 'somebody who is not in the plan yet'] as const,
          ]}
          onChoose={setChosen}
        />{' '}
        in by a link.
      </p>
      {cook ? null : (
        <Field
          label="What they are called"
          value={name}
          onChange={(event) => setName(event.target.value)}
          maxLength={80}
          autoComplete="off"
        />
      )}
      <div>
        <Button
          disabled={busy || (cook === null && name.trim() === '')}
          onClick={() => onAsk(cook ? { for: 'cook', cook: cook.id } : { for: 'new', label: name })}
        >
          Make the link
        </Button>
      </div>
    </section>
  )
}

'use client'

import { useState } from 'react'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Button } from '#app/_ui/button.tsx'
import { CopyText } from '#app/_ui/copy-text.tsx'
import { countOf, dateText, listText, longDate } from '#app/_words/clock.ts'
import { guestName } from '#app/_words/guest.ts'
import { type InvitationFacts, reminderText } from '#app/_words/invitation.ts'
import type { GuestCommand } from '#server/guests/command.ts'
import type { InvitationLine } from '#server/guests/table.ts'
import css from './invitations.module.css'
import type { Made } from './made-link.tsx'
import type { Guests } from './use-guests.ts'

interface Props {
  readonly desk: Guests
  readonly facts: InvitationFacts
  readonly onMade: (made: Made) => void
}

/** Every link that was made: who answers by it, what became of it, and what a host can do about it. */
export function Invitations({ desk, facts, onMade }: Props) {
  const { invitations } = desk.table
  if (invitations.length === 0) return null
  return (
    <ul className={css.list}>
      {invitations.map((invitation) => (
        <Line key={invitation.id} invitation={invitation} desk={desk} facts={facts} onMade={onMade} />
      ))}
    </ul>
  )
}

function Line({ invitation, desk, facts, onMade }: Props & { readonly invitation: InvitationLine }) {
  const { evening } = usePlan()
  const [wrong, setWrong] = useState<string | null>(null)
  const [reminding, setReminding] = useState(false)
  const [told, setTold] = useState('')
  const { id, state, places, email } = invitation
  const label = invitation.label || 'somebody who erased their answer'
  const people = desk.table.guests.filter((guest) => guest.invitation === id).map(guestName)
  const isOpen = state === 'waiting' || state === 'answered'
  const canMail = desk.table.mail && email !== null
  const ask = async (command: GuestCommand, done = '') => {
    const asked = await desk.ask(command)
    setWrong(asked.ok ? null : asked.why)
    setTold(asked.ok ? done : '')
    if (asked.ok && asked.done.kind === 'link') onMade({ label, path: asked.done.path, sent: asked.done.sent })
  }
  return (
    <li className={css.line} aria-label={`The link for ${label}`}>
      <p>
        <b>{label}</b>
        <small>
          {stateWords(invitation, evening.zone)}
          {people.length > 0 ? `: ${listText(people)}` : ''}
          {isOpen && places > people.length ? `, room for ${countOf(places - people.length, 'more', 'more')}` : ''}
        </small>
      </p>
      <p className={css.does}>
        {state === 'waiting' ? (
          canMail ? (
            <Button
              tone="word"
              aria-label={`Remind ${label} by e-mail`}
              onClick={() => ask({ kind: 'remind', invitation: id }, 'The reminder is on its way.')}
            >
              Remind them
            </Button>
          ) : (
            <Button tone="word" aria-label={`Remind ${label}`} aria-expanded={reminding} onClick={() => setReminding(!reminding)}>
              Remind them
            </Button>
          )
        ) : null}
        {state === 'erased' ? null : (
          <Button
            tone="word"
            aria-label={`A new link for ${label}`}
            onClick={() => ask({ kind: 'rotate', invitation: id, send: canMail })}
          >
            {isOpen ? 'New link instead' : 'New link'}
          </Button>
        )}
        {isOpen ? (
          <Button
            tone="quiet"
            aria-label={`Withdraw the link for ${label}`}
            onClick={() => ask({ kind: 'revoke', invitation: id }, 'It opens nothing any more. What they told stays.')}
          >
            Withdraw
          </Button>
        ) : (
          <Button
            tone="quiet"
            aria-label={`Forget the link for ${label}`}
            onClick={() => ask({ kind: 'forget', invitation: id })}
          >
            Take off the list
          </Button>
        )}
      </p>
      {reminding ? <CopyText label={`A reminder for ${label}`} text={reminderText(facts)} rows={6} /> : null}
      <p role="status" className={css.quiet}>
        {told}
      </p>
      {wrong ? (
        <p className={css.refused} role="alert">
          {wrong}
        </p>
      ) : null}
    </li>
  )
}

const stateWords = ({ state, answeredAt, createdAt }: InvitationLine, zone: string): string => {
  const day = (instant: string) => longDate(dateText(instant, zone))
  switch (state) {
    case 'waiting':
      return `made on ${day(createdAt)}, not answered yet`
    case 'answered':
      return `answered on ${day(answeredAt ?? createdAt)}`
    case 'withdrawn':
      return 'withdrawn'
    case 'erased':
      return 'they erased all they had told'
    case 'expired':
      return 'the evening is over'
  }
}

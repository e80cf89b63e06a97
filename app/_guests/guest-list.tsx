'use client'

import { useState } from 'react'
import { Button } from '#app/_ui/button.tsx'
import { Entry } from '#app/_ui/drafts.tsx'
import { Sentence } from '#app/_ui/sentence.tsx'
import { guestAbout, guestName } from '#app/_words/guest.ts'
import type { TableGuest } from '#server/guests/table.ts'
import { comingParts, moreParts, needParts } from './guest-parts.ts'
import css from './guests.module.css'
import type { Guests, Pending } from './use-guests.ts'

/** Everybody who was asked, each with what they answered in a line; opened, it is sentences that one can change. */
export function GuestList({ desk }: { readonly desk: Guests }) {
  const { guests } = desk.table
  if (guests.length === 0)
    return <p className={css.quiet}>Nobody is written down yet. Send a link, or write somebody down yourself.</p>
  return (
    <ul className={css.list}>
      {guests.map((guest) => (
        <GuestItem key={guest.id} guest={guest} desk={desk} />
      ))}
    </ul>
  )
}

interface ItemProps {
  readonly guest: TableGuest
  readonly desk: Guests
}

function GuestItem({ guest, desk }: ItemProps) {
  const [isOpen, setOpen] = useState(false)
  const [problem, setProblem] = useState<string | null>(null)
  const name = guestName(guest)
  const edit = (change: Parameters<Guests['change']>[1]) => {
    if (Object.keys(change).length > 0) desk.change(guest.id, change)
    return null
  }
  const takeOff = async () => {
    const asked = await desk.ask({ kind: 'remove', guest: guest.id })
    setProblem(asked.ok ? null : asked.why)
  }
  return (
    <li className={isOpen ? css.openGuest : css.guest} aria-label={name}>
      <h3>
        <button type="button" className={css.guestName} aria-expanded={isOpen} onClick={() => setOpen(!isOpen)}>
          {name} <small>{guestAbout(guest)}</small>
        </button>
      </h3>
      <NotKept pending={desk.pending.filter((each) => each.guest === guest.id)} desk={desk} name={name} />
      {isOpen ? (
        <Entry id={guest.id}>
          {[comingParts(guest), ...(guest.reply === 'no' ? [] : [needParts(guest), moreParts(guest)])].map((parts, index) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: each sentence has its place
            <Sentence key={index} parts={parts} of={guest.id} onEdit={edit} />
          ))}
          <p className={css.quiet}>
            {guest.invitation === null
              ? 'You write this down for them.'
              : guest.by === 'guest'
                ? 'As they answered by their link. What you change here, they find there.'
                : 'They have a link of their own, and find there what you write here.'}
          </p>
          <Button tone="quiet" onClick={takeOff}>
            Take {name} off the list, with all they told
          </Button>
        </Entry>
      ) : null}
      {problem ? (
        <p className={css.refused} role="alert">
          {problem}
        </p>
      ) : null}
    </li>
  )
}

function NotKept({
  pending,
  desk,
  name,
}: {
  readonly pending: readonly Pending[]
  readonly desk: Guests
  readonly name: string
}) {
  const refused = pending.find((each) => each.refused !== null)
  if (!refused) return null
  return (
    <p className={css.refused} role="alert">
      Not kept: {refused.refused}{' '}
      <Button tone="word" onClick={() => desk.tryAgain(refused.guest)} aria-label={`Try again: ${name}`}>
        Try again
      </Button>{' '}
      <Button tone="word" onClick={() => desk.takeBack(refused.guest)} aria-label={`Take it back: ${name}`}>
        Take it back
      </Button>
    </p>
  )
}

'use client'

import { useState } from 'react'
import { Button } from '#app/_ui/button.tsx'
import { WordText } from '#app/_ui/word.tsx'
import { guestName } from '#app/_words/guest.ts'
import { cleanText } from '#lib/domain/atoms.ts'
import css from './invitations.module.css'
import type { Made } from './made-link.tsx'
import type { Guests } from './use-guests.ts'

const MOST = 12

interface Wanted {
  readonly label: string
  readonly places: number
  readonly guests: readonly string[]
  readonly email: string
}

const NOBODY: Wanted = { label: '', places: 2, guests: [], email: '' }

/** A new link: whose it is, how many may answer by it, who of those written down already is meant. */
export function NewInvitation({ desk, onMade }: { readonly desk: Guests; readonly onMade: (made: Made) => void }) {
  const [wanted, setWanted] = useState(NOBODY)
  const [wrong, setWrong] = useState<string | null>(null)
  const [busy, setBusy] = useState(false)
  const free = desk.table.guests.filter((guest) => guest.invitation === null)
  const named = free.filter((guest) => wanted.guests.includes(guest.id))
  const label = wanted.label || named.map(guestName).join(' and ').slice(0, 80)
  const make = async () => {
    if (label === '') return setWrong('Say whose link it is: one guest, or a household.')
    setBusy(true)
    const { guests, places, email } = wanted
    const asked = await desk.ask({
      kind: 'invite',
      label,
      places: Math.max(places, guests.length),
      guests: [...guests],
      ...(email === '' ? {} : { email, send: true }),
    })
    setBusy(false)
    setWrong(asked.ok ? null : asked.why)
    if (!asked.ok || asked.done.kind !== 'link') return
    setWanted(NOBODY)
    onMade({ label, path: asked.done.path, sent: asked.done.sent })
  }
  const toggle = (id: string) =>
    setWanted({
      ...wanted,
      guests: wanted.guests.includes(id) ? wanted.guests.filter((each) => each !== id) : [...wanted.guests, id].slice(0, MOST),
    })
  return (
    <section aria-label="A new link" className={css.fresh}>
      <p className={css.words}>
        A link for{' '}
        <WordText
          label="Whose link it is"
          text={label}
          empty="a guest or a household"
          onWrite={(text) => {
            setWanted({ ...wanted, label: cleanText(text.trim(), false).slice(0, 80) })
            return null
          }}
        />
        , by which up to{' '}
        <WordText
          label="How many may answer by it"
          text={String(Math.max(wanted.places, wanted.guests.length))}
          onWrite={(text) => {
            const places = Number(text)
            if (!Number.isInteger(places) || places < 1 || places > MOST) return `Write a number from 1 to ${MOST}.`
            setWanted({ ...wanted, places })
            return null
          }}
        />{' '}
        can answer.
        {desk.table.mail ? (
          <>
            {' '}
            A letter with it goes to{' '}
            <WordText
              label="E-mail address for the letter"
              text={wanted.email}
              empty="no address"
              onWrite={(text) => {
                const email = text.trim()
                if (email !== '' && !/^\S+@\S+$/.test(email)) return 'Write an e-mail address, or nothing.'
                setWanted({ ...wanted, email })
                return null
              }}
            />
            .
          </>
        ) : null}
      </p>
      {free.length > 0 ? (
        <fieldset className={css.free}>
          <legend>For somebody on the list who has no link:</legend>
          {free.map((guest) => (
            <label key={guest.id}>
              <input type="checkbox" checked={wanted.guests.includes(guest.id)} onChange={() => toggle(guest.id)} />
              {guestName(guest)}
            </label>
          ))}
        </fieldset>
      ) : null}
      <Button onClick={make} disabled={busy}>
        Make the link
      </Button>
      {wrong ? (
        <p className={css.refused} role="alert">
          {wrong}
        </p>
      ) : null}
    </section>
  )
}

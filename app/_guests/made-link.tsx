'use client'

import { useEffect, useRef } from 'react'
import { Button } from '#app/_ui/button.tsx'
import { CopyText } from '#app/_ui/copy-text.tsx'
import { type InvitationFacts, invitationText } from '#app/_words/invitation.ts'
import css from './invitations.module.css'
import { Qr } from './qr.tsx'

export interface Made {
  /** Whose link it is. */
  readonly label: string
  /** Where it leads on this site. */
  readonly path: string
  /** The letter with it has gone out. */
  readonly sent: boolean
}

interface Props {
  readonly made: Made
  readonly facts: InvitationFacts
  readonly onDone: () => void
}

/** A new link, shown this once: as words to send, on its own, and as a code for a phone beside this one. */
export function MadeLink({ made, facts, onDone }: Props) {
  const link = `${window.location.origin}${made.path}`
  const head = useRef<HTMLHeadingElement>(null)
  useEffect(() => head.current?.focus(), [])
  return (
    <section className={css.made} aria-label={`The link for ${made.label}`}>
      <h3 ref={head} tabIndex={-1}>
        The link for {made.label}
      </h3>
      <p className={css.quiet}>
        {made.sent ? 'The letter is on its way. ' : ''}It is shown this once, and cannot be read again from what is kept. Whoever
        has it can answer for {made.label}, so send it to nobody else. If it is lost, make a new one.
      </p>
      <div className={css.madeParts}>
        <div>
          <CopyText label="Words to send" text={invitationText(facts, link)} rows={9} send />
          <CopyText label="The link alone" text={link} rows={2} />
        </div>
        <figure>
          <Qr text={link} label={`The link for ${made.label} as a code for a camera`} />
          <figcaption>For a phone beside you</figcaption>
        </figure>
      </div>
      <p className={css.actions}>
        <Button onClick={onDone}>I have it, put it away</Button>
      </p>
    </section>
  )
}

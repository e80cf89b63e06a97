'use client'

import { useEffect, useRef } from 'react'
import { Button } from '#app/_ui/button.tsx'
import { type InvitationFacts, invitationText } from '#app/_words/invitation.ts'
import { CopyText } from './copy-text.tsx'
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
  const share = { text: invitationText(facts, link) }
  const canShare = typeof navigator.share === 'function'
  return (
    <section className={css.made} aria-label={`The link for ${made.label}`}>
      <h3 ref={head} tabIndex={-1}>
        The link for {made.label}
      </h3>
      <p className={css.quiet}>
        {made.sent ? 'The letter is on its way. ' : ''}It is shown this once: only its fingerprint is kept. Whoever has it can
        answer for {made.label}, so send it to nobody else. If it is lost, make a new one.
      </p>
      <div className={css.madeParts}>
        <div>
          <CopyText label="Words to send" text={share.text} rows={9} />
          <CopyText label="The link alone" text={link} rows={2} />
        </div>
        <figure>
          <Qr text={link} label={`The link for ${made.label} as a code for a camera`} />
          <figcaption>For a phone beside you</figcaption>
        </figure>
      </div>
      <p className={css.actions}>
        {canShare ? (
          // A person who thinks better of it rejects the promise: nothing is amiss then.
          <Button tone="soft" onClick={() => navigator.share(share).catch(() => undefined)}>
            Send it with another program
          </Button>
        ) : null}
        <Button onClick={onDone}>I have it, put it away</Button>
      </p>
    </section>
  )
}

'use client'

import { useEffect, useRef } from 'react'
import css from '#app/_guests/invitations.module.css'
import { Qr } from '#app/_guests/qr.tsx'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Button } from '#app/_ui/button.tsx'
import { CopyText } from '#app/_ui/copy-text.tsx'
import { listText } from '#app/_words/clock.ts'
import { seatText } from '#app/_words/join.ts'

interface Props {
  readonly made: { readonly label: string; readonly path: string }
  readonly onDone: () => void
}

/** A new link to a seat, shown this once: as words to send, on its own, and as a code for a phone beside this one. */
export function MadeSeat({ made, onDone }: Props) {
  const { evening } = usePlan()
  const link = `${window.location.origin}${made.path}`
  const head = useRef<HTMLHeadingElement>(null)
  useEffect(() => head.current?.focus(), [])
  const hosts = listText(evening.cooks.filter(({ host }) => host).map(({ name }) => name))
  const facts = { name: evening.name, date: evening.date, sitDown: evening.sitDown.time, hosts }
  return (
    <section className={css.made} aria-label={`The link for ${made.label}`}>
      <h3 ref={head} tabIndex={-1}>
        The link for {made.label}
      </h3>
      <p className={css.quiet}>
        It is shown this once, and cannot be read again from what is kept. Whoever has it is {made.label}, so send it to nobody
        else. If it is lost, make a new one.
      </p>
      <div className={css.madeParts}>
        <div>
          <CopyText label="Words to send" text={seatText(facts, made.label, link)} rows={9} send />
          <CopyText label="The link alone" text={link} rows={2} />
        </div>
        <figure>
          <Qr text={link} label={`The link for ${made.label} as a code for a camera`} />
          <figcaption>For a phone beside you</figcaption>
        </figure>
      </div>
      <div>
        <Button tone="soft" onClick={onDone}>
          I have it, put it away
        </Button>
      </div>
    </section>
  )
}

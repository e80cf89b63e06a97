import { type ReactNode, useEffect, useRef } from 'react'
import { CopyText } from '#app/_ui/copy-text.tsx'
import css from './invitations.module.css'
import { Qr } from './qr.tsx'

interface Props {
  /** Whose link it is. */
  readonly label: string
  readonly link: string
  /** The words to send with it. */
  readonly words: string
  /** What is to be known about it. */
  readonly about: string
  /** How it is put away. */
  readonly children: ReactNode
}

/** A new link, shown this once: as words to send, on its own, and as a code for a phone beside this one. */
export function ShownLink({ label, link, words, about, children }: Props) {
  const head = useRef<HTMLHeadingElement>(null)
  useEffect(() => head.current?.focus(), [])
  return (
    <section className={css.made} aria-label={`The link for ${label}`}>
      <h3 ref={head} tabIndex={-1}>
        The link for {label}
      </h3>
      <p className={css.quiet}>{about}</p>
      <div className={css.madeParts}>
        <div>
          <CopyText label="Words to send" text={words} rows={9} send />
          <CopyText label="The link alone" text={link} rows={2} />
        </div>
        <figure>
          <Qr text={link} label={`The link for ${label} as a code for a camera`} />
          <figcaption>For a phone beside you</figcaption>
        </figure>
      </div>
      <p className={css.actions}>{children}</p>
    </section>
  )
}

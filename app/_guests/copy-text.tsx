'use client'

import { useId, useRef, useState } from 'react'
import { Button } from '#app/_ui/button.tsx'
import css from './invitations.module.css'

interface Props {
  readonly label: string
  readonly text: string
  readonly rows: number
}

/** Words to take into another program: copied in one tap where the browser lets us, else marked for copying by hand. */
export function CopyText({ label, text, rows }: Props) {
  const area = useRef<HTMLTextAreaElement>(null)
  const [said, setSaid] = useState('')
  const id = useId()
  const copy = async () => {
    area.current?.select()
    try {
      // Missing on plain http.
      await navigator.clipboard.writeText(text)
      setSaid('Copied.')
    } catch {
      setSaid('It is marked: copy it with your device’s own copy.')
    }
  }
  return (
    <div className={css.copy}>
      <label htmlFor={id}>{label}</label>
      <textarea id={id} ref={area} readOnly rows={rows} value={text} onFocus={(event) => event.target.select()} />
      <p>
        <Button tone="soft" onClick={copy} aria-label={`Copy: ${label}`}>
          Copy
        </Button>{' '}
        <span role="status">{said}</span>
      </p>
    </div>
  )
}

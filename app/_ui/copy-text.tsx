'use client'

import { useId, useRef, useState, useSyncExternalStore } from 'react'
import { Button } from './button.tsx'
import css from './copy-text.module.css'

interface Props {
  readonly label: string
  readonly text: string
  readonly rows: number
  /** Offers the device's own way of sending words too, where it has one. */
  readonly send?: boolean
}

const never = () => () => undefined
/** Plain http and many desktop browsers have none. */
const canSend = (): boolean => typeof navigator.share === 'function'

/** Words to take into another program: copied in one tap where the browser lets us, else marked for copying by hand. */
export function CopyText({ label, text, rows, send = false }: Props) {
  const area = useRef<HTMLTextAreaElement>(null)
  const [said, setSaid] = useState('')
  const id = useId()
  const maySend = useSyncExternalStore(never, canSend, () => false) && send
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
        </Button>
        {maySend ? (
          // A person who thinks better of it rejects the promise: nothing is amiss then.
          <Button
            tone="soft"
            onClick={() => navigator.share({ text }).catch(() => undefined)}
            aria-label={`Send with another program: ${label}`}
          >
            Send it with another program
          </Button>
        ) : null}
        <span role="status">{said}</span>
      </p>
    </div>
  )
}

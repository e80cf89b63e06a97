'use client'

import { useId, useState } from 'react'
import { Button } from '#app/_ui/button.tsx'
import { Field } from '#app/_ui/field.tsx'
import { Notice } from '#app/_ui/notice.tsx'
import { askServer } from './ask-server.ts'
import { readFile } from './read-file.ts'
import css from './recipes.module.css'

interface Props {
  /** The words that came and, of a page, its address. Gives back what is wrong with them, or null. */
  readonly onText: (text: string, source: string | null) => string | null
  /** Tells the two or more of them on a page apart. */
  readonly named: string
}

/** A recipe from a file or from a web address. What comes is handed on to be read; nothing is saved. */
export function Sources({ onText, named }: Props) {
  const id = useId()
  const [address, setAddress] = useState('')
  const [busy, setBusy] = useState(false)
  const [said, setSaid] = useState<{ readonly tone: 'late' | 'quiet'; readonly text: string } | null>(null)

  const take = (text: string, source: string | null, from: string) => {
    const wrong = onText(text, source)
    setSaid(wrong === null ? { tone: 'quiet', text: `Read from ${from}. Look it over below.` } : { tone: 'late', text: wrong })
    return wrong === null
  }
  const bringFile = async (file: File | undefined) => {
    if (!file) return
    const text = await readFile(file)
    if (text.ok) take(text.value, null, `“${file.name}”`)
    else setSaid({ tone: 'late', text: text.error })
  }
  const bringPage = async () => {
    setBusy(true)
    setSaid(null)
    const page = await askServer<{ readonly text: string; readonly address: string }>('/api/recipes', { address })
    setBusy(false)
    if (!page.ok) setSaid({ tone: 'late', text: page.error.message })
    else if (take(page.value.text, page.value.address, new URL(page.value.address).hostname)) setAddress('')
  }

  return (
    <div className={css.sources}>
      <div className={css.file}>
        <label htmlFor={id}>A recipe from a file</label>
        <input
          id={id}
          type="file"
          accept=".txt,.json,.html,.htm,.md,text/plain,text/html,application/json"
          aria-describedby={`${id}-hint`}
          onChange={(event) => {
            void bringFile(event.target.files?.[0])
            event.target.value = ''
          }}
        />
        <p id={`${id}-hint`} className={css.said}>
          Text, a saved page, or recipe data (.txt, .html, .json). It is read here in your browser.
        </p>
      </div>
      <form
        className={css.address}
        aria-label={`A recipe from the web${named}`}
        onSubmit={(event) => {
          event.preventDefault()
          void bringPage()
        }}
      >
        <Field
          label="Or the web address of a recipe"
          type="url"
          inputMode="url"
          autoComplete="off"
          maxLength={2000}
          value={address}
          placeholder="https://"
          onChange={(event) => setAddress(event.target.value)}
        />
        <Button type="submit" tone="soft" disabled={busy || address.trim() === ''}>
          {busy ? 'Fetching…' : 'Fetch it'}
        </Button>
      </form>
      {said ? <Notice tone={said.tone}>{said.text}</Notice> : null}
    </div>
  )
}

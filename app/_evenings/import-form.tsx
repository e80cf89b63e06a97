'use client'

import { type ChangeEvent, type FormEvent, startTransition, useActionState, useId, useState } from 'react'
import { Button } from '#app/_ui/button.tsx'
import { importEveningAction } from './actions.ts'
import css from './evenings.module.css'
import { type Kept, keptEvenings } from './kept-evenings.ts'

/** An evening from its file. When the file is refused, each field that is wrong is named. */
export function ImportForm() {
  const [answer, send, busy] = useActionState(importEveningAction, { message: null, fields: [], more: 0 })
  const id = useId()
  const [kept, setKept] = useState<readonly Kept[]>([])
  const look = async (event: ChangeEvent<HTMLInputElement>) => {
    const [file] = event.currentTarget.files ?? []
    setKept(file ? await keptEvenings(file) : [])
  }
  // Not as the form's action, after which React empties the form: a refused file stays chosen, to be put right and brought again.
  const bring = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault()
    const form = new FormData(event.currentTarget)
    const chosen = kept[Number(form.get('which'))]
    if (chosen) form.set('file', chosen.file)
    startTransition(() => send(form))
  }
  return (
    <form className={css.form} aria-label="An evening from a file" onSubmit={bring}>
      <h2>Or bring one from a file</h2>
      <p className={css.zone}>
        An evening that was saved from Tableward, or the file with all of your own, ending in .json. It becomes a new evening of
        yours.
      </p>
      {answer.message ? (
        <div className={css.refused} role="alert">
          <p>
            <b>{answer.message}</b>
          </p>
          {answer.fields.length > 0 ? (
            <ul>
              {answer.fields.map((field) => (
                <li key={field}>{field}</li>
              ))}
            </ul>
          ) : null}
          {answer.more > 0 ? <p>And {answer.more} more.</p> : null}
        </div>
      ) : null}
      <div className={css.file}>
        <label htmlFor={id}>Evening file</label>
        <input id={id} type="file" name="file" accept=".json,application/json" required onChange={look} />
      </div>
      {kept.length > 0 ? (
        <div className={css.file}>
          <label htmlFor={`${id}-which`}>Which evening of it</label>
          <select id={`${id}-which`} name="which">
            {kept.map(({ words }, at) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: the same evening may stand in it twice
              <option key={at} value={at}>
                {words}
              </option>
            ))}
          </select>
        </div>
      ) : null}
      <div>
        <Button type="submit" tone="soft" disabled={busy}>
          {busy ? 'Reading…' : 'Bring it in'}
        </Button>
      </div>
    </form>
  )
}

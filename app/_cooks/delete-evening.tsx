'use client'

import { useActionState } from 'react'
import { Button } from '#app/_ui/button.tsx'
import { Field } from '#app/_ui/field.tsx'
import { Fold } from '#app/_ui/fold.tsx'
import { Notice } from '#app/_ui/notice.tsx'
import { deleteEveningAction } from './actions.ts'
import css from './cooks.module.css'

/** Deletes the evening for everybody, once its name is typed. */
export function DeleteEvening({ eveningId, name }: { readonly eveningId: string; readonly name: string }) {
  const [problem, send, busy] = useActionState(deleteEveningAction.bind(null, eveningId), null)
  return (
    <Fold title="Delete this evening">
      <form className={css.add} action={send} aria-label="Delete this evening">
        <p className={css.quiet}>
          It is gone for everybody at once and cannot be brought back: the plan, the running order, all seats and links, and the
          guests with what they answered. If you may want it again,{' '}
          <a href={`/api/evenings/${eveningId}/file`} download>
            take it away as a file
          </a>{' '}
          first.
        </p>
        {problem ? <Notice>{problem}</Notice> : null}
        <Field label={`Type its name: ${name}`} name="name" required maxLength={200} autoComplete="off" />
        <div>
          <Button type="submit" tone="late" disabled={busy}>
            Delete it for good
          </Button>
        </div>
      </form>
    </Fold>
  )
}

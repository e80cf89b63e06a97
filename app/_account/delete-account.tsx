'use client'

import { signOut } from 'next-auth/react'
import { type FormEvent, useState } from 'react'
import { forgetDevice } from '#app/_alerts/forget-device.ts'
import { Button } from '#app/_ui/button.tsx'
import { Field } from '#app/_ui/field.tsx'
import { Fold } from '#app/_ui/fold.tsx'
import { Link } from '#app/_ui/link.tsx'
import { Notice } from '#app/_ui/notice.tsx'
import { listText } from '#app/_words/clock.ts'
import type { Stakes } from '#server/auth/delete-account.ts'
import css from './account.module.css'
import { deleteAccountAction } from './actions.ts'

interface Props {
  /** What is typed instead of a password by who has none. */
  readonly name: string | null
  readonly stakes: Stakes
}

const quoted = (evenings: Stakes['alone']): string => listText(evenings.map(({ name }) => `“${name}”`))

/** Deletes the account, once its password or its name is typed; says first what goes with it. */
export function DeleteAccount({ name, stakes }: Props) {
  const [busy, setBusy] = useState(false)
  const [problem, setProblem] = useState<string | null>(null)
  const send = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault()
    const typed = String(new FormData(event.currentTarget).get('typed') ?? '')
    setBusy(true)
    try {
      const answer = await deleteAccountAction(typed)
      if (answer.kind === 'done') {
        await forgetDevice()
        await signOut({ redirect: false })
        window.location.assign('/sign-in')
        return
      }
      setProblem(answer.kind === 'refused' ? answer.message : null)
    } catch {
      setProblem('The server cannot be reached, so nothing was deleted. Try again.')
    }
    setBusy(false)
  }
  return (
    <Fold title={name === null ? 'Delete this account' : 'Be forgotten here'}>
      <div className={css.leaving}>
        <p>
          {name === null ? 'Your e-mail address, your password and your seats' : 'Your name and your seat'} are gone at once and
          cannot be brought back. What you wrote in others’ plans stays in them.
        </p>
        {stakes.alone.length > 0 ? (
          <p>Nobody else has a seat at {quoted(stakes.alone)}: deleted with it, guests and answers included.</p>
        ) : null}
        {stakes.needHost.length > 0 ? (
          <>
            <p>Others cook at these, and you are their only host. Make one of them a host there first, or delete the evening:</p>
            <ul>
              {stakes.needHost.map((evening) => (
                <li key={evening.id}>
                  <Link href={`/evenings/${evening.id}/kitchens`}>{evening.name}</Link>
                </li>
              ))}
            </ul>
          </>
        ) : (
          <form method="post" onSubmit={send} aria-label="Delete this account">
            {problem ? <Notice>{problem}</Notice> : null}
            {name === null ? (
              <Field
                label="Your password"
                name="typed"
                type="password"
                autoComplete="current-password"
                required
                maxLength={200}
              />
            ) : (
              <Field label={`Type your name: ${name}`} name="typed" autoComplete="off" required maxLength={200} />
            )}
            <Button type="submit" tone="late" disabled={busy}>
              Delete it for good
            </Button>
          </form>
        )}
      </div>
    </Fold>
  )
}

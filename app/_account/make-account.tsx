'use client'

import { signIn } from 'next-auth/react'
import { type FormEvent, useState } from 'react'
import { Button } from '#app/_ui/button.tsx'
import { Notice } from '#app/_ui/notice.tsx'
import css from './account.module.css'
import { makeAccountAction, type SignUpAnswer } from './actions.ts'
import { NewSignInFields } from './new-sign-in-fields.tsx'
import { signInError } from './tries.ts'

/** Somebody who came by a link takes an e-mail address and a password, and keeps their seat. */
export function MakeAccount({ name }: { readonly name: string }) {
  const [busy, setBusy] = useState(false)
  const [answer, setAnswer] = useState<Exclude<SignUpAnswer, { kind: 'done' }> | null>(null)
  const send = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault()
    const data = new FormData(event.currentTarget)
    const [email, password] = ['email', 'password'].map((key) => String(data.get(key) ?? ''))
    setBusy(true)
    try {
      const made = await makeAccountAction({ email, password })
      if (made.kind === 'done') {
        const entered = await signIn('credentials', { redirect: false, email, password })
        if (entered?.ok && !entered.error) {
          window.location.reload()
          return
        }
        setAnswer({ kind: 'refused', message: `Your account is made. ${signInError(entered?.error)}`, fields: {} })
      } else setAnswer(made)
    } catch {
      setAnswer({ kind: 'refused', message: 'The server cannot be reached. Check the connection, then try again.', fields: {} })
    }
    setBusy(false)
  }
  const fields = answer?.fields ?? {}
  return (
    <section className={css.part} aria-labelledby="make-account">
      <h2 id="make-account">You came by a link</h2>
      <p>
        It is all you need to cook along as {name}. With an e-mail address and a password of your own you can also be a host and
        plan evenings. You keep your seat; the link then lets nobody in any more, and your other devices sign in with the
        password.
      </p>
      <form method="post" onSubmit={send} aria-label="An account of your own">
        {answer ? <Notice>{answer.message}</Notice> : null}
        <NewSignInFields errors={fields} />
        <Button type="submit" disabled={busy}>
          Make it an account
        </Button>
      </form>
    </section>
  )
}

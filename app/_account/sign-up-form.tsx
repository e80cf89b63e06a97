'use client'

import { signIn } from 'next-auth/react'
import { type FormEvent, useEffect, useState } from 'react'
import { forgetDevice } from '#app/_alerts/forget-device.ts'
import { Button } from '#app/_ui/button.tsx'
import { Field } from '#app/_ui/field.tsx'
import { Link } from '#app/_ui/link.tsx'
import { Notice } from '#app/_ui/notice.tsx'
import { Ready } from '#app/_ui/ready.tsx'
import { type SignUpAnswer, signUpAction } from './actions.ts'
import css from './door.module.css'
import { NewSignInFields } from './new-sign-in-fields.tsx'
import { signInError } from './tries.ts'

/** Name, e-mail and password. What was written stays when something is refused. */
export function SignUpForm({ next }: { readonly next: string }) {
  const [busy, setBusy] = useState(true)
  const [answer, setAnswer] = useState<Exclude<SignUpAnswer, { kind: 'done' }> | null>(null)
  useEffect(() => setBusy(false), [])

  const send = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault()
    const data = new FormData(event.currentTarget)
    const [email, name, password] = ['email', 'name', 'password'].map((key) => String(data.get(key) ?? ''))
    setBusy(true)
    try {
      const made = await signUpAction({ email, name, password })
      if (made.kind === 'done') {
        const entered = await signIn('credentials', { redirect: false, email, password })
        if (entered?.ok && !entered.error) {
          // Whoever used this device before has kept pages on it, and may be called here.
          await forgetDevice()
          window.location.assign(next)
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
    <>
      <form method="post" onSubmit={send}>
        {answer ? <Notice>{answer.message}</Notice> : null}
        <Field
          label="Your name"
          hint="As the other cooks know you."
          name="name"
          autoComplete="name"
          required
          maxLength={80}
          error={fields.name}
        />
        <NewSignInFields errors={fields} />
        <div className={css.send}>
          <Button type="submit" large disabled={busy}>
            Make an account
          </Button>
        </div>
      </form>
      <p>
        Have one already? <Link href={`/sign-in${next === '/' ? '' : `?next=${encodeURIComponent(next)}`}`}>Sign in</Link>
      </p>
      <Ready />
    </>
  )
}

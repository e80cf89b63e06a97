'use client'

import { signIn } from 'next-auth/react'
import { type FormEvent, useEffect, useState } from 'react'
import { forgetDevice } from '#app/_alerts/forget-device.ts'
import { Button } from '#app/_ui/button.tsx'
import { Field } from '#app/_ui/field.tsx'
import { Link } from '#app/_ui/link.tsx'
import { Notice } from '#app/_ui/notice.tsx'
import { Ready } from '#app/_ui/ready.tsx'
import css from './door.module.css'
import { signInError } from './tries.ts'

/** E-mail and password. What was written stays when it was wrong. */
export function SignInForm({ next }: { readonly next: string }) {
  const [busy, setBusy] = useState(true)
  const [error, setError] = useState<string | null>(null)
  // Sending needs the page's script: before it is there, the button waits.
  useEffect(() => setBusy(false), [])

  const send = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault()
    const data = new FormData(event.currentTarget)
    setBusy(true)
    setError(null)
    try {
      const answer = await signIn('credentials', { redirect: false, email: data.get('email'), password: data.get('password') })
      if (answer?.ok && !answer.error) {
        // A whole new page: what the last person saw must not stay in memory, nor what they kept on the device.
        await forgetDevice()
        window.location.assign(next)
        return
      }
      setError(signInError(answer?.error))
    } catch {
      setError('The server cannot be reached. Check the connection, then try again.')
    }
    setBusy(false)
  }

  return (
    <>
      <form method="post" onSubmit={send}>
        {error ? <Notice>{error}</Notice> : null}
        <Field label="E-mail address" name="email" type="email" autoComplete="username" required maxLength={200} />
        <Field label="Password" name="password" type="password" autoComplete="current-password" required maxLength={200} />
        <div className={css.send}>
          <Button type="submit" large disabled={busy}>
            Sign in
          </Button>
        </div>
      </form>
      <p>
        No account yet? <Link href={`/sign-up${next === '/' ? '' : `?next=${encodeURIComponent(next)}`}`}>Make one</Link>
      </p>
      <Ready />
    </>
  )
}

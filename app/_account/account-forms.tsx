'use client'

import { signOut } from 'next-auth/react'
import { useActionState, useState } from 'react'
import { forgetDevice } from '#app/_alerts/forget-device.ts'
import { Button } from '#app/_ui/button.tsx'
import { Field } from '#app/_ui/field.tsx'
import { Notice } from '#app/_ui/notice.tsx'
import { Ready } from '#app/_ui/ready.tsx'
import css from './account.module.css'
import { changePasswordAction, signOutEverywhereAction } from './actions.ts'

const leave = async () => {
  await forgetDevice()
  await signOut({ redirect: false })
  window.location.assign('/sign-in')
}

/** Password, signing out here, signing out everywhere. */
export function AccountForms({ byLink }: { readonly byLink: boolean }) {
  const [answer, change, changing] = useActionState(changePasswordAction, { kind: 'none' })
  const [leaving, setLeaving] = useState(false)
  const [failed, setFailed] = useState(false)
  const leaveEverywhere = async () => {
    setLeaving(true)
    setFailed(false)
    try {
      await signOutEverywhereAction()
      await leave()
    } catch {
      setFailed(true)
      setLeaving(false)
    }
  }
  return (
    <div className={css.forms}>
      <section aria-labelledby="leave">
        <h2 id="leave">Sign out</h2>
        <div className={css.row}>
          <Button onClick={leave} tone="soft">
            Sign out here
          </Button>
          <Button onClick={leaveEverywhere} tone="soft" disabled={leaving}>
            Sign out everywhere
          </Button>
        </div>
        {byLink ? <p>Your link lets you in again.</p> : null}
        <p>Everywhere ends this account’s sign-ins on every device at once, open evenings included.</p>
        {failed ? <Notice>The server cannot be reached, so you are still signed in. Try again.</Notice> : null}
      </section>
      {byLink ? null : (
        <section aria-labelledby="password">
          <h2 id="password">Another password</h2>
          <form action={change}>
            {answer.kind === 'refused' ? <Notice>{answer.message}</Notice> : null}
            {answer.kind === 'done' ? <Notice tone="quiet">Your password is changed.</Notice> : null}
            <Field
              label="The password you have now"
              name="current"
              type="password"
              autoComplete="current-password"
              required
              maxLength={200}
            />
            <Field
              label="The new one"
              hint="Ten letters or more."
              name="next"
              type="password"
              autoComplete="new-password"
              required
              maxLength={200}
            />
            <Button type="submit" disabled={changing}>
              Change the password
            </Button>
          </form>
        </section>
      )}
      <Ready />
    </div>
  )
}

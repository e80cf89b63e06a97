'use client'

import type { Link } from '#app/_sync/plan.ts'
import { LinkButton } from '#app/_ui/button.tsx'
import { Plain } from '#app/_ui/plain.tsx'
import { closedWords, linkText } from '#app/_words/link.ts'

/** Before the plan is there, or instead of it when it is closed to this person. */
export function Waiting({ link }: { readonly link: Link }) {
  if (link.kind === 'closed') {
    const { says, todo } = closedWords[link.why]
    return (
      <Plain title={says}>
        <p>{todo}</p>
        <p>
          {link.why === 'sign-in' ? (
            <LinkButton href="/sign-in">Sign in</LinkButton>
          ) : (
            <LinkButton href="/">Your evenings</LinkButton>
          )}
        </p>
      </Plain>
    )
  }
  return (
    <Plain title="Opening the evening">
      <p role="status">
        {link.kind === 'offline'
          ? 'Not connected, and this device has no copy of the evening yet. It opens as soon as there is a connection.'
          : linkText(link)}
      </p>
    </Plain>
  )
}

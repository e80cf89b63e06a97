'use client'

import type { Link } from '#app/_sync/plan.ts'
import { Button, LinkButton } from '#app/_ui/button.tsx'
import { closedWords, linkText } from '#app/_words/link.ts'
import type { Evening } from '#lib/domain/evening.ts'
import css from './link-badge.module.css'

type Tone = 'calm' | 'busy' | 'away' | 'shut'

const toneOf = (link: Link): Tone => {
  switch (link.kind) {
    case 'saved':
      return 'calm'
    case 'saving':
    case 'connecting':
      return 'busy'
    case 'offline':
      return 'away'
    case 'closed':
      return 'shut'
  }
}

/** Saved, saving, not connected, and how many taps wait: in words, with a knot that is whole only when everything is kept. */
export function LinkBadge({ link, waiting }: { readonly link: Link; readonly waiting: number }) {
  const kind = link.kind === 'saved' && waiting > 0 ? 'saving' : link.kind
  const tone = kind === 'saving' ? 'busy' : toneOf(link)
  return (
    <p className={css.badge} role="status" aria-live="polite" data-link={kind}>
      <svg width="12" height="12" viewBox="0 0 12 12" aria-hidden="true">
        <circle className={css[tone]} cx="6" cy="6" r="4.4" />
      </svg>
      {linkText(link, waiting)}
    </p>
  )
}

/** When the connection is closed for good: why, and what to do, above the screen. */
export function ClosedNotice({ link, evening }: { readonly link: Link; readonly evening: Evening }) {
  if (link.kind !== 'closed') return null
  const { says, todo } = closedWords[link.why]
  return (
    <div className={css.notice} role="alert">
      <p>
        <b>{says}</b> {todo} Nothing you change now is saved.
      </p>
      {link.unsent && link.why !== 'reload' && link.why !== 'other-epoch' ? <Unsent evening={evening} /> : null}
      {link.why === 'sign-in' ? (
        <LinkButton href={`/sign-in?next=${encodeURIComponent(window.location.pathname)}`} tone="soft">
          Sign in
        </LinkButton>
      ) : link.why === 'removed' || link.why === 'gone' ? (
        <LinkButton href="/" tone="soft">
          Your evenings
        </LinkButton>
      ) : (
        <Button tone="soft" onClick={() => window.location.reload()}>
          Load the page again
        </Button>
      )}
    </div>
  )
}

/** Edits that never reached the server, offered back: they go out by themselves once their person is let in again, or are taken away. */
function Unsent({ evening }: { readonly evening: Evening }) {
  const save = async () => {
    const { printEvening } = await import('#lib/domain/parse.ts')
    const link = document.createElement('a')
    link.href = URL.createObjectURL(new Blob([printEvening(evening)], { type: 'application/json' }))
    link.download = `${evening.date}-as-on-this-device.json`
    link.click()
    URL.revokeObjectURL(link.href)
  }
  return (
    <>
      <p>
        Something that you changed here has not reached the others. This device keeps it: let in again as yourself, you send it by
        opening the evening. Or save the plan as it stands here.
      </p>
      <Button tone="soft" onClick={save}>
        Save the plan as it stands here
      </Button>
    </>
  )
}

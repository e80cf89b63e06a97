'use client'

import { usePathname } from 'next/navigation'
import { useEffect, useSyncExternalStore } from 'react'
import type { KeptDraft } from '#app/_sync/drafts.ts'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Button } from '#app/_ui/button.tsx'
import { useDrafts } from '#app/_ui/drafts.tsx'
import { Link } from '#app/_ui/link.tsx'
import { textDifference } from '#lib/plan/commands/text.ts'
import { hasArrived, textOfDraft } from './text-draft.ts'
import css from './unsent-notice.module.css'

const none: readonly [] = []

/** Words that were typed before and not kept, where their fields are not to be seen just now. */
export function UnsentNotice() {
  const drafts = useDrafts()
  const path = usePathname()
  const { doc, link } = usePlan()
  const found = useSyncExternalStore(drafts?.subscribe ?? (() => () => undefined), drafts?.hidden ?? (() => none))
  const isSaved = link.kind === 'saved'
  // Shared text goes out by itself: until all is saved the badge says so, and then it has arrived, or is missed.
  const isMissed = (draft: KeptDraft): boolean => {
    const of = textOfDraft(doc, draft.key)
    return of === null || (isSaved && !(of.text !== null && hasArrived(textDifference(draft.base, draft.text), of.text)))
  }
  const hidden = found.filter(isMissed)
  useEffect(() => {
    if (isSaved) for (const draft of found) if (!isMissed(draft)) drafts?.remove(draft.key)
  })
  if (hidden.length === 0) return null
  return (
    <details className={css.unsent}>
      <summary>
        {hidden.length === 1
          ? 'Something you typed here is not sent yet'
          : `${hidden.length} things you typed here are not sent yet`}
      </summary>
      <ul>
        {hidden.map(({ key, text, label, path: from }) => (
          <li key={key}>
            <span>
              {label}: “{text}”
            </span>{' '}
            {from === path ? 'Its field is folded away on this screen.' : <Link href={from}>Go there</Link>}
            <Button tone="word" onClick={() => drafts?.remove(key)} aria-label={`Take it back: ${label}`}>
              Take it back
            </Button>
          </li>
        ))}
      </ul>
    </details>
  )
}

'use client'

import { type ReactNode, useState } from 'react'
import { openDrafts } from '#app/_sync/drafts.ts'
import { browserShelf } from '#app/_sync/shelf.ts'
import { DraftsProvider } from '#app/_ui/drafts.tsx'

interface Props {
  readonly eveningId: string
  readonly userId: string
  readonly children: ReactNode
}

/** Keeps what is typed into the fields of an evening's screens on this device, for this person. In the browser alone. */
export function UnsentWords({ eveningId, userId, children }: Props) {
  const [drafts] = useState(() => openDrafts(browserShelf(), `tableward/${eveningId}/${userId}/draft/`))
  return <DraftsProvider drafts={drafts}>{children}</DraftsProvider>
}

'use client'

import { type ReactNode, useEffect, useState, useSyncExternalStore } from 'react'
import type { Opened, OpenPlan } from './open-plan.ts'
import type { Link } from './plan.ts'
import { PlanShown } from './plan-shown.tsx'
import { CompanyContext } from './use-plan.ts'

interface Props {
  readonly eveningId: string
  readonly userId: string
  /** What is shown until the plan is there, or instead of it when it is closed to this person. */
  readonly waiting: (link: Link) => ReactNode
  readonly children: ReactNode
}

const NOT_YET: Opened = { link: { kind: 'connecting' }, plan: null }
// Yjs is loaded in the browser alone: a second copy of it on the server would not know this one's documents.
const program = () => import('./open-in-browser.ts')
// On its way while the page is still being made ready. When it does not come, opening the plan asks again.
if (typeof window !== 'undefined') program().catch(() => undefined)

const nothing = () => () => undefined
const notYet = () => NOT_YET

/** Opens the evening's plan in the browser, and closes it when it is left. */
export const PlanProvider = ({ eveningId, userId, waiting, children }: Props) => {
  const [store, setStore] = useState<OpenPlan | null>(null)

  useEffect(() => {
    let left = false
    let opened: OpenPlan | null = null
    void program().then(({ openInBrowser }) => {
      if (left) return
      opened = openInBrowser(eveningId, userId)
      setStore(opened)
    })
    return () => {
      left = true
      opened?.close()
      setStore(null)
    }
  }, [eveningId, userId])

  const { link, plan } = useSyncExternalStore(store?.subscribe ?? nothing, store?.opened ?? notYet, notYet)
  if (!plan || !store) return waiting(link)
  return (
    <CompanyContext value={store.company}>
      <PlanShown plan={plan}>{children}</PlanShown>
    </CompanyContext>
  )
}

'use client'

import { usePathname } from 'next/navigation'
import { createContext, type ReactNode, useContext, useEffect, useRef, useState } from 'react'
import { useCompany } from '#app/_sync/use-plan.ts'

type Enter = (id: string) => () => void

const WhereContext = createContext<Enter>(() => () => undefined)
const MOST = 8

/** Tells the other cooks which screen this person looks at, and what is open there; nothing while the page is hidden. */
export function WhereProvider({ eveningId, children }: { readonly eveningId: string; readonly children: ReactNode }) {
  const { stand } = useCompany()
  const path = usePathname()
  const screen = path.split(`/${eveningId}/`)[1]?.split('/')[0] ?? ''
  const open = useRef<readonly { readonly id: string }[]>([])
  const [, setVersion] = useState(0)

  useEffect(() => {
    const tell = () =>
      stand(document.visibilityState === 'hidden' ? null : { screen, at: open.current.slice(-MOST).map(({ id }) => id) })
    tell()
    document.addEventListener('visibilitychange', tell)
    return () => document.removeEventListener('visibilitychange', tell)
  })

  const [enter] = useState<Enter>(() => (id: string) => {
    const place = { id }
    open.current = [...open.current, place]
    setVersion((version) => version + 1)
    return () => {
      open.current = open.current.filter((other) => other !== place)
      setVersion((version) => version + 1)
    }
  })
  return <WhereContext value={enter}>{children}</WhereContext>
}

/** While this is on the screen, this person is at that course, dish, step, cook or kitchen; null: at none. */
export const useWhere = (id: string | null): void => {
  const enter = useContext(WhereContext)
  useEffect(() => (id === null ? undefined : enter(id)), [id, enter])
}

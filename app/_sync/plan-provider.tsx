'use client'

import { type ReactNode, startTransition, useEffect, useRef, useState, useSyncExternalStore } from 'react'
import { FirstLook } from './first-look.tsx'
import type { Opened, OpenPlan } from './open-plan.ts'
import type { Link } from './plan.ts'
import { PlanShown } from './plan-shown.tsx'
import { loadProgram } from './program.ts'
import { CompanyContext } from './use-plan.ts'

interface Props {
  readonly eveningId: string
  readonly userId: string
  /** Of what the server has drawn of it. */
  readonly ticket: string
  /** What is shown until the plan is there, or instead of it when it is closed to this person. */
  readonly waiting: (link: Link) => ReactNode
  readonly children: ReactNode
}

const NOT_YET: Opened = { link: { kind: 'connecting' }, plan: null }
// On its way while the page is still being made ready. When it does not come, opening the plan asks again.
if (typeof window !== 'undefined') loadProgram().catch(() => undefined)

const nothing = () => () => undefined

/** A first look has its running order: what takes its place waits for one as well, but not for ever. */
const WAIT_FOR_ORDER_MS = 4_000

/** Whether this was drawn by the server, and not come to from another screen. */
const useDrawn = (): boolean => {
  const isDrawn = useSyncExternalStore(
    nothing,
    () => false,
    () => true,
  )
  return useState(isDrawn)[0]
}

/** Whether it has been for two frames: what is out of sight by then has no place on the page any more, and goes without work. */
const useTwoFramesAfter = (is: boolean): boolean => {
  const [isPast, setPast] = useState(false)
  useEffect(() => {
    if (!is) return
    let frame = requestAnimationFrame(() => {
      frame = requestAnimationFrame(() => setPast(true))
    })
    return () => cancelAnimationFrame(frame)
  }, [is])
  return isPast
}

/** Opens the evening's plan in the browser, and closes it when it is left. */
export const PlanProvider = ({ eveningId, userId, ticket, waiting, children }: Props) => {
  const [{ store, opened }, setState] = useState<{ readonly store: OpenPlan | null; readonly opened: Opened }>({
    store: null,
    opened: NOT_YET,
  })
  const { link, plan } = opened
  const isDrawn = useDrawn()
  const isShown = useRef(false)
  useEffect(() => {
    isShown.current = plan !== null
  })

  useEffect(() => {
    let left = false
    let store: OpenPlan | null = null
    let waited: ReturnType<typeof setTimeout> | null = null
    let isOver = !isDrawn
    const over = () => {
      isOver = true
      look()
    }
    const look = () => {
      if (!store) return
      const state = { store, opened: store.opened() }
      if (!isOver && state.opened.plan?.order.kind === 'none') {
        waited ??= setTimeout(over, WAIT_FOR_ORDER_MS)
        return
      }
      // The first picture of the whole plan is drawn in the gaps between other work; then each change at once.
      if (isShown.current || state.opened.plan === null) setState(state)
      else startTransition(() => setState(state))
    }
    void loadProgram().then(({ openInBrowser }) => {
      if (left) return
      store = openInBrowser(eveningId, userId)
      store.subscribe(look)
      look()
    })
    return () => {
      left = true
      if (waited !== null) clearTimeout(waited)
      store?.close()
      setState({ store: null, opened: NOT_YET })
    }
  }, [eveningId, userId, isDrawn])

  const isLive = plan !== null && store !== null
  const hasLook = !useTwoFramesAfter(isLive) && isDrawn && (isLive || (link.kind !== 'closed' && link.kind !== 'offline'))
  return (
    <>
      {isLive ? (
        <CompanyContext value={store.company}>
          <PlanShown plan={plan}>{children}</PlanShown>
        </CompanyContext>
      ) : hasLook ? null : (
        waiting(link)
      )}
      {hasLook ? (
        <FirstLook ticket={ticket} isOver={isLive}>
          {children}
        </FirstLook>
      ) : null}
    </>
  )
}

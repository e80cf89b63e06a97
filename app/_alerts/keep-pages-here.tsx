'use client'

import { useEffect } from 'react'
import { usePlan } from '#app/_sync/use-plan.ts'
import { whenIdle } from '#app/_sync/when-idle.ts'
import { forgetPages, keepPages } from './keep-pages.ts'

/** Keeps this evening's pages of the night on this device, and none of them once the evening is closed to this person. */
export function KeepPages({ eveningId }: { readonly eveningId: string }) {
  const { evening, link } = usePlan()
  const why = link.kind === 'closed' ? link.why : null
  const isShut = why === 'sign-in' || why === 'removed' || why === 'gone'
  useEffect(() => {
    if (isShut) {
      forgetPages().catch((cause: unknown) => console.warn('a page may be left on this device', cause))
      return undefined
    }
    // All that was built is fetched for it: not while this page is being made ready.
    let stop = (): void => undefined
    const callOff = whenIdle(() => {
      stop = keepPages(eveningId, evening.name)
    })
    return () => {
      callOff()
      stop()
    }
  }, [eveningId, evening.name, isShut])
  return null
}

'use client'

import { type ComponentType, startTransition, useEffect, useState } from 'react'
import { pause } from '#app/_sync/gaps.ts'
import { whenIdle } from '#app/_sync/when-idle.ts'

const Missing = () => <p role="status">This part could not be fetched. Open the page again when there is a connection.</p>

/** How a piece of a screen is fetched that its first look does without; where it cannot be, the rest of the screen stays. */
export const laterPiece =
  <P,>(load: () => Promise<ComponentType<P>>) =>
  (): Promise<ComponentType<P>> =>
    load().catch(() => Missing)

/** False while the page is being made ready, then true; meanwhile `pieces` are fetched, also for when there is no connection. */
export const useIdle = (pieces: readonly (() => Promise<unknown>)[]): boolean => {
  const [isIdle, setIdle] = useState(false)
  useEffect(() => {
    let isLeft = false
    const callOff = whenIdle(async () => {
      for (const fetch of pieces) {
        void fetch()
        await pause()
      }
      if (!isLeft) startTransition(() => setIdle(true))
    })
    return () => {
      isLeft = true
      callOff()
    }
  }, [pieces])
  return isIdle
}

import { inGaps } from './gaps.ts'
import { browserOrder } from './local-order.ts'
import { type OpenPlan, openPlan } from './open-plan.ts'
import { browserShelf } from './shelf.ts'
import { realTimers } from './timers.ts'

/** A page that is not looked at draws no pictures, and still has to know what the plan is. */
const HIDDEN_MS = 200

const frame = (run: () => void): (() => void) => {
  if (document.visibilityState === 'hidden') return realTimers.after(HIDDEN_MS, run)
  const asked = requestAnimationFrame(run)
  return () => cancelAnimationFrame(asked)
}

const randomPart = (): number => (crypto.getRandomValues(new Uint32Array(1))[0] ?? 0) / 2 ** 32

/** Opens an evening's plan on this page. */
export const openInBrowser = (eveningId: string, userId: string): OpenPlan => {
  const { protocol, host } = window.location
  let now = realTimers.now
  const opened = openPlan({
    eveningId,
    userId,
    address: `${protocol === 'https:' ? 'wss' : 'ws'}://${host}/sync`,
    Socket: WebSocket,
    timers: realTimers,
    shelf: browserShelf(),
    frame,
    inGaps,
    local: browserOrder(() => now()),
    dice: randomPart,
  })
  now = opened.now
  const onLeave = (event: BeforeUnloadEvent) => {
    if (opened.atRisk()) event.preventDefault()
  }
  window.addEventListener('beforeunload', onLeave)
  window.addEventListener('online', opened.tryAgain)
  window.addEventListener('offline', opened.tryAgain)
  return {
    ...opened,
    close() {
      window.removeEventListener('beforeunload', onLeave)
      window.removeEventListener('online', opened.tryAgain)
      window.removeEventListener('offline', opened.tryAgain)
      opened.close()
    },
  }
}

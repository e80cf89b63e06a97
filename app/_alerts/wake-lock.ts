/** `none`: this page cannot have it; `refused`: the device said no, as some do when the battery is low. */
export type Awake = 'none' | 'off' | 'on' | 'refused'

export interface WakeLock {
  readonly state: () => Awake
  readonly want: (wanted: boolean) => void
  readonly subscribe: (listener: () => void) => () => void
  readonly close: () => void
}

/** Keeps the screen lit while it is wanted. A lock ends when the page is left, so it is taken again when it is looked at again. */
export const openWakeLock = (): WakeLock => {
  const can = 'wakeLock' in navigator
  const listeners = new Set<() => void>()
  let wanted = false
  let lock: WakeLockSentinel | null = null
  let state: Awake = can ? 'off' : 'none'

  const be = (next: Awake) => {
    if (state === next) return
    state = next
    for (const listener of listeners) listener()
  }
  const take = async () => {
    if (!can || !wanted || lock || document.visibilityState !== 'visible') return
    try {
      const taken = await navigator.wakeLock.request('screen')
      if (!wanted || lock) return void taken.release()
      lock = taken
      taken.onrelease = () => {
        lock = null
        be('off')
      }
      be('on')
    } catch {
      be('refused')
    }
  }
  const look = () => void take()
  document.addEventListener('visibilitychange', look)

  return {
    state: () => state,
    want(next) {
      wanted = next
      if (next) void take()
      else {
        void lock?.release()
        if (can) be('off')
      }
    },
    subscribe(listener) {
      listeners.add(listener)
      return () => void listeners.delete(listener)
    },
    close() {
      wanted = false
      listeners.clear()
      document.removeEventListener('visibilitychange', look)
      void lock?.release()
    },
  }
}

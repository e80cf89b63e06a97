'use client'

import { useCallback, useEffect, useRef, useState, useSyncExternalStore } from 'react'
import { browserShelf } from '#app/_sync/shelf.ts'
import type { AlertsHere } from '#app/_words/alerts-here.ts'
import { type Calls, callsNow, joinCalls, startCalls, stopCalls } from './calls.ts'
import { type Choices, readChoices, type Shape, writeChoice } from './choices.ts'
import { openSound, type Sound } from './sound.ts'
import { type Awake, openWakeLock, type WakeLock } from './wake-lock.ts'

const nothing = () => () => undefined
const NO_CALLS: Calls = { kind: 'off' }

interface Device {
  readonly here: AlertsHere
  readonly sound: () => Sound | null
  readonly choose: (change: Partial<Choices>) => void
  /** Whether it is to be called while it sleeps; false when that could not be had. */
  readonly call: (wanted: boolean) => Promise<boolean>
}

/** What of this device can ring, and what was chosen for it. `isOn`: the evening is being cooked, so the screen may stay lit. */
export const useDevice = (eveningId: string, shape: Shape, isOn: boolean): Device => {
  const [choices, setChoices] = useState<Choices>(() => readChoices(browserShelf(), shape))
  const [calls, setCalls] = useState<Calls>(NO_CALLS)
  const [parts, setParts] = useState<{ readonly sound: Sound; readonly lock: WakeLock } | null>(null)
  const held = useRef<Sound | null>(null)

  useEffect(() => setChoices(readChoices(browserShelf(), shape)), [shape])

  useEffect(() => {
    const sound = openSound()
    const lock = openWakeLock()
    held.current = sound
    setParts({ sound, lock })
    const unlock = () => sound.unlock()
    // A touch that came before this page's script, or on the screen before this one, counts as well.
    if (navigator.userActivation?.hasBeenActive) unlock()
    const events = ['pointerup', 'keydown', 'visibilitychange'] as const
    for (const event of events) document.addEventListener(event, unlock)
    return () => {
      for (const event of events) document.removeEventListener(event, unlock)
      held.current = null
      sound.close()
      lock.close()
    }
  }, [])

  useEffect(() => {
    let left = false
    callsNow()
      .then(async (now) => {
        if (left) return
        setCalls(now)
        if (now.kind === 'on') await joinCalls(eveningId)
      })
      .catch((why: unknown) => console.warn('this device may not be called while it sleeps', why))
    return () => {
      left = true
    }
  }, [eveningId])

  const sound = useSyncExternalStore(parts?.sound.subscribe ?? nothing, () => parts?.sound.state() ?? 'none')
  const awake: Awake = useSyncExternalStore(parts?.lock.subscribe ?? nothing, () => parts?.lock.state() ?? 'off')
  const wantsLight = isOn && choices.awake
  useEffect(() => parts?.lock.want(wantsLight), [parts, wantsLight])

  return {
    here: {
      shape,
      choices,
      sound,
      canSpeak: 'speechSynthesis' in window,
      canVibrate: 'vibrate' in navigator,
      awake,
      calls,
      isPlain: !window.isSecureContext,
    },
    sound: useCallback(() => held.current, []),
    choose: (change) => setChoices(writeChoice(browserShelf(), shape, change)),
    async call(wanted) {
      try {
        if (wanted) setCalls(await startCalls(eveningId))
        else {
          await stopCalls()
          setCalls(await callsNow())
        }
        return true
      } catch (why) {
        console.warn('calls could not be turned on or off', why)
        setCalls(await callsNow())
        return false
      }
    },
  }
}

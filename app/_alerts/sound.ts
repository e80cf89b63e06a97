import type { Tone } from './chime.ts'

/** `locked`: browsers let a page make sounds only once it was touched. */
export type SoundState = 'none' | 'locked' | 'ready'

export interface Sound {
  readonly state: () => SoundState
  /** To be called from a touch or a key, and when the page is looked at again. */
  readonly unlock: () => void
  readonly play: (tones: readonly Tone[]) => void
  readonly subscribe: (listener: () => void) => () => void
  readonly close: () => void
}

const LOUD = 0.5
/** A tone that begins or ends at once clicks. */
const SWELL_S = 0.012

/** Tones made by the browser itself (Web Audio): there is no file that could fail to load. */
export const openSound = (): Sound => {
  const can = typeof AudioContext !== 'undefined'
  const listeners = new Set<() => void>()
  let context: AudioContext | null = null
  const changed = () => {
    for (const listener of listeners) listener()
  }
  return {
    state: () => (can ? (context?.state === 'running' ? 'ready' : 'locked') : 'none'),
    unlock() {
      if (!can || context?.state === 'running') return
      if (!context) {
        context = new AudioContext()
        context.onstatechange = changed
      }
      context.resume().then(changed, () => undefined)
    },
    play(tones) {
      if (context?.state !== 'running') return
      for (const { hz, from, long } of tones) {
        const at = context.currentTime + 0.03 + from
        const gain = context.createGain()
        gain.gain.setValueAtTime(0, at)
        gain.gain.linearRampToValueAtTime(LOUD, at + SWELL_S)
        gain.gain.exponentialRampToValueAtTime(0.001, at + long)
        gain.connect(context.destination)
        const voice = context.createOscillator()
        voice.type = 'triangle'
        voice.frequency.value = hz
        voice.connect(gain)
        voice.start(at)
        voice.stop(at + long)
      }
    },
    subscribe(listener) {
      listeners.add(listener)
      return () => void listeners.delete(listener)
    },
    close() {
      listeners.clear()
      if (context) context.onstatechange = null
      context?.close().catch((why: unknown) => console.warn('the sound did not end', why))
      context = null
    },
  }
}

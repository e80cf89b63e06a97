import type { ToPage } from '#app/_worker/messages.ts'

/** Answers the service worker when a call comes in: whether this page rings, and that a call was told by a notification. */
export const hearWorker = (rings: () => boolean, told: (alert: string) => void): (() => void) => {
  if (!('serviceWorker' in navigator)) return () => undefined
  const { serviceWorker } = navigator
  const hear = ({ data, ports }: MessageEvent<ToPage>) => {
    if (data.kind === 'do-you-ring') ports[0]?.postMessage(rings())
    else told(data.alert)
  }
  serviceWorker.addEventListener('message', hear)
  return () => serviceWorker.removeEventListener('message', hear)
}

import { PAGES, type ToWorker } from '#app/_worker/messages.ts'

/** Whether this page can have a service worker: plain http cannot, and in development what is kept would be out of date. */
export const hasWorker = (): boolean => process.env.NODE_ENV === 'production' && 'serviceWorker' in navigator

/** Has the service worker keep the pages of the night for when there is no network; again when it is replaced by a newer one. */
export const keepPages = (eveningId: string, name: string): (() => void) => {
  if (!hasWorker()) return () => undefined
  const { serviceWorker } = navigator
  const pages = ['tonight', 'order', 'shopping'].map((page) => `/evenings/${eveningId}/${page}`)
  const ask = () => serviceWorker.controller?.postMessage({ kind: 'keep', name, pages } satisfies ToWorker)
  serviceWorker.addEventListener('controllerchange', ask)
  serviceWorker
    .register('/sw.js', { updateViaCache: 'none' })
    .catch((why: unknown) => console.warn('nothing is kept on this device for when there is no network', why))
  ask()
  return () => serviceWorker.removeEventListener('controllerchange', ask)
}

/** Keeps no page any more: what was built, which is everybody's, may stay. */
export const forgetPages = async (): Promise<void> => {
  if (typeof caches === 'undefined') return
  const kept = (await caches.keys()).filter((name) => name.startsWith(PAGES))
  await Promise.all(kept.map((name) => caches.delete(name)))
}

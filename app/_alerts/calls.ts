import { hasWorker } from './keep-pages.ts'

/** Whether this device is called while it sleeps, or why it cannot be. */
export type Calls =
  | { readonly kind: 'on' }
  | { readonly kind: 'off' }
  /** This address is plain http, or this browser has no service worker. */
  | { readonly kind: 'no-worker' }
  /** This browser takes no calls; some do once the page is on the home screen. */
  | { readonly kind: 'no-push' }
  /** The person has said no to notifications here. */
  | { readonly kind: 'denied' }

const registered = async (): Promise<PushManager | null> =>
  hasWorker() ? ((await navigator.serviceWorker.getRegistration())?.pushManager ?? null) : null

export const callsNow = async (): Promise<Calls> => {
  if (!hasWorker()) return { kind: 'no-worker' }
  if (typeof PushManager === 'undefined' || typeof Notification === 'undefined') return { kind: 'no-push' }
  if (Notification.permission === 'denied') return { kind: 'denied' }
  const found = await (await registered())?.getSubscription()
  return { kind: found && Notification.permission === 'granted' ? 'on' : 'off' }
}

const bytesOf = (base64url: string): Uint8Array<ArrayBuffer> =>
  Uint8Array.from(atob(base64url.replaceAll('-', '+').replaceAll('_', '/')), (char) => char.charCodeAt(0))

const tellServer = async (path: string, method: 'POST' | 'DELETE', data: unknown): Promise<void> => {
  const answer = await fetch(path, { method, body: JSON.stringify(data), headers: { 'content-type': 'application/json' } })
  if (!answer.ok) throw new Error(`${path} answered ${answer.status}`)
}

/** Says at an evening that this device, which is called already, is to be called for it too. */
export const joinCalls = async (eveningId: string): Promise<void> => {
  const found = await (await registered())?.getSubscription()
  if (found) await tellServer(`/api/evenings/${eveningId}/push`, 'POST', found)
}

/** After a press of the person's own: browsers ask for leave only then. */
export const startCalls = async (eveningId: string): Promise<Calls> => {
  const can = await callsNow()
  if (can.kind !== 'off' && can.kind !== 'on') return can
  if ((await Notification.requestPermission()) !== 'granted') return callsNow()
  const manager = (await navigator.serviceWorker.ready).pushManager
  const { key } = (await (await fetch('/api/push')).json()) as { readonly key: string }
  const wanted = { userVisibleOnly: true, applicationServerKey: bytesOf(key) }
  try {
    await manager.subscribe(wanted)
  } catch {
    // It listens to a server with another key, which this one was before its data folder was lost.
    await (await manager.getSubscription())?.unsubscribe()
    await manager.subscribe(wanted)
  }
  await joinCalls(eveningId)
  return { kind: 'on' }
}

export const stopCalls = async (): Promise<void> => {
  const found = await (await registered())?.getSubscription()
  if (!found) return
  await found.unsubscribe()
  await tellServer('/api/push', 'DELETE', { endpoint: found.endpoint })
}

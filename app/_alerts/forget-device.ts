import { FILES, PAGES } from '#app/_worker/messages.ts'
import { stopCalls } from './calls.ts'

const forgetPages = async (): Promise<void> => {
  if (typeof caches === 'undefined') return
  const kept = (await caches.keys()).filter((name) => name.startsWith(PAGES) || name.startsWith(FILES))
  await Promise.all(kept.map((name) => caches.delete(name)))
}

/** Before somebody else may use this device: no page of this person is kept, and nobody is called here. */
export const forgetDevice = async (): Promise<void> => {
  for (const step of [stopCalls, forgetPages])
    await step().catch((why: unknown) => console.warn('something of this person may be left on this device', why))
}

import { IndexeddbPersistence } from 'y-indexeddb'
import type * as Y from 'yjs'
import type { Timers } from './timers.ts'

/** The copy of a plan that this device keeps. */
export interface Keeping {
  /** Whether an edit comes from the stored copy. */
  readonly isOrigin: (origin: unknown) => boolean
  readonly get: (key: string) => Promise<unknown>
  readonly set: (key: string, value: string) => void
  readonly close: () => void
}

/** A browser that has not opened its database by then is not going to. */
const PATIENCE_MS = 10_000

const can = (timers: Timers): Promise<boolean> =>
  new Promise((resolve) => {
    if (typeof indexedDB === 'undefined') return resolve(false)
    const cancel = timers.after(PATIENCE_MS, () => resolve(false))
    const answer = (yes: boolean) => {
      cancel()
      resolve(yes)
    }
    try {
      const asked = indexedDB.open('tableward')
      asked.onerror = () => answer(false)
      asked.onsuccess = () => {
        asked.result.close()
        answer(true)
      }
    } catch {
      answer(false)
    }
  })

/** What comes later is merged into the document when it comes. */
const within = (timers: Timers, done: Promise<unknown>): Promise<void> =>
  new Promise((resolve) => {
    const cancel = timers.after(PATIENCE_MS, resolve)
    void done.then(() => {
      cancel()
      resolve()
    })
  })

/** Reads the stored copy into the document and keeps it from then on; null where the browser keeps nothing. */
export const openKeeping = async (database: string, doc: Y.Doc, timers: Timers): Promise<Keeping | null> => {
  if (!(await can(timers))) return null
  const stored = new IndexeddbPersistence(database, doc)
  // Listening for edits while it reads, it would have all that it reads written out once more; what is edited before, it stores as it reads.
  doc.off('update', stored._storeUpdate)
  stored.on('synced', () => doc.on('update', stored._storeUpdate))
  await within(timers, stored.whenSynced)
  return {
    isOrigin: (origin) => origin === stored,
    get: (key) => stored.get(key),
    set(key, value) {
      // What is kept beside the document is a convenience: without it there is a moment of "planning" after a reload.
      stored.set(key, value).catch((why: unknown) => console.warn('not kept on this device', key, why))
    },
    close: () => void stored.destroy(),
  }
}

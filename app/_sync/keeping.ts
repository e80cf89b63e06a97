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

const PATIENCE_MS = 2_000

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

/** Reads the stored copy into the document and keeps it from then on; null where the browser keeps nothing. */
export const openKeeping = async (database: string, doc: Y.Doc, timers: Timers): Promise<Keeping | null> => {
  if (!(await can(timers))) return null
  const stored = new IndexeddbPersistence(database, doc)
  await stored.whenSynced
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

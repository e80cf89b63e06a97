import { clearDocument } from 'y-indexeddb'
import * as Y from 'yjs'
import { bringIn, countDifferences } from '#lib/plan/bring-in.ts'
import type { Copies } from './copies.ts'
import { openKeeping } from './keeping.ts'
import type { Timers } from './timers.ts'

/** What this device knew of a plan before that was put back from a backup, and has not thrown away. */
export interface Aside {
  /** How many things stand there otherwise. */
  readonly differs: number
  /** Brings them in, as an edit that can be undone. */
  readonly bringIn: () => void
  readonly leave: () => void
}

interface Parts {
  readonly doc: Y.Doc
  readonly copies: Copies
  readonly timers: Timers
  readonly role: () => 'host' | 'cook' | null
  readonly edit: (change: (doc: Y.Doc) => void) => void
  readonly changed: () => void
}

/** Reads the copies that were set aside when a plan was put back from a backup. */
export const openAside = ({ doc, copies, timers, role, edit, changed }: Parts) => {
  let looked = false
  let found: { readonly other: Y.Doc; readonly aside: Aside } | null = null

  const drop = (database: string) => {
    copies.drop(database)
    void clearDocument(database)
    found = null
    changed()
  }

  /** The newest of them that says anything else; those that say nothing else go. */
  const read = async (): Promise<void> => {
    for (const database of copies.ofBefore().toReversed()) {
      const other = new Y.Doc()
      const keeping = await openKeeping(database, other, timers)
      keeping?.close()
      const as = role()
      if (!keeping || as === null) return
      const differs = countDifferences(doc, other, as)
      if (differs === 0) drop(database)
      else {
        const done = () => drop(database)
        const aside = {
          differs,
          bringIn: () => {
            edit((into) => bringIn(into, other, as))
            done()
          },
          leave: done,
        }
        found = { other, aside }
        changed()
        return
      }
    }
  }

  return {
    /** The plan is as the server has it. */
    look() {
      if (looked || role() === null || copies.ofBefore().length === 0) return
      looked = true
      void read()
    },
    state: (): Aside | null => found?.aside ?? null,
  }
}

import * as z from 'zod/mini'
import type { Shelf } from './shelf.ts'

const Copy = z.object({ epoch: z.string(), number: z.int() })
const Aside = z.array(z.string())

/** Which of this device's stored copies of a plan is in use. */
export interface Copies {
  /** The document that the copy is of; null when there is no copy. */
  epoch(): string | null
  /** Where the copy in use keeps what belongs to it. */
  prefix(): string
  /** The copy's database; null when there is no copy. */
  database(): string | null
  /** From now on the copy is of this document; its database. */
  use(epoch: string): string
  /**
   * Starts afresh and leaves the old copy where it is: its document was replaced (`next` is the new one), or the server
   * refused what is in it. With edits that the server has never had, it is remembered.
   */
  setAside(next: string | null, withEdits: boolean): void
  /** Databases of copies that were set aside with such edits. */
  aside(): readonly string[]
  /** Those of them that are of before the plan was put back from a backup. */
  ofBefore(): readonly string[]
  /** Forgets one of them. */
  drop(database: string): void
}

const read = <T>(schema: z.ZodMiniType<T>, text: string | null): T | null => {
  try {
    return schema.parse(JSON.parse(text ?? 'null'))
  } catch {
    return null
  }
}

/** `base` names the evening and the user: two people of one device do not see each other's copies. */
export const openCopies = (shelf: Shelf, base: string): Copies => {
  const copyKey = `${base}copy`
  const asideKey = `${base}aside`
  const copy = () => read(Copy, shelf.get(copyKey))
  const aside = () => read(Aside, shelf.get(asideKey)) ?? []
  const number = () => copy()?.number ?? 0
  const prefix = () => `${base}${number()}/`
  const database = () => {
    const epoch = copy()?.epoch
    return epoch === undefined ? null : `${prefix()}${epoch}`
  }
  return {
    epoch: () => copy()?.epoch ?? null,
    prefix,
    database,
    use(epoch) {
      shelf.set(copyKey, JSON.stringify({ epoch, number: number() }))
      return `${prefix()}${epoch}`
    },
    setAside(next, withEdits) {
      const old = database()
      const epoch = next ?? copy()?.epoch
      if (old === null || epoch === undefined) return
      if (withEdits) shelf.set(asideKey, JSON.stringify([...aside(), old]))
      shelf.set(copyKey, JSON.stringify({ epoch, number: number() + 1 }))
    },
    aside,
    ofBefore: () => aside().filter((name) => !name.endsWith(`/${copy()?.epoch}`)),
    drop: (name) => shelf.set(asideKey, JSON.stringify(aside().filter((one) => one !== name))),
  }
}

import type { Shelf } from './shelf.ts'

export interface Draft {
  readonly text: string
  /** What the field said when the writing began. */
  readonly base: string
  /** What the field is called, and on which page it is: for saying so elsewhere. */
  readonly label: string
  readonly path: string
}
export type KeptDraft = Draft & { readonly key: string }

/** What was typed into fields of one person on this device and is not kept yet: it outlives the page. */
export interface Drafts {
  get(key: string): Draft | null
  set(key: string, draft: Draft): void
  remove(key: string): void
  /** Says that the field is on the screen; gives what says that it no longer is. */
  show(key: string): () => void
  /** Drafts whose fields are not on the screen; the same list until that changes. */
  hidden(): readonly KeptDraft[]
  subscribe(listener: () => void): () => void
}

// Read by hand: the frame of every screen has drafts, and no schema is to be loaded for them.
const parsed = (text: string | null): Draft | null => {
  try {
    const { text: typed, base, label, path }: Readonly<Record<string, unknown>> = JSON.parse(text ?? '{}')
    const isDraft = typeof typed === 'string' && typeof base === 'string' && typeof label === 'string' && typeof path === 'string'
    return isDraft ? { text: typed, base, label, path } : null
  } catch {
    return null
  }
}

export const openDrafts = (shelf: Shelf, prefix: string): Drafts => {
  const listeners = new Set<() => void>()
  const shown = new Map<string, number>()
  let hidden: readonly KeptDraft[] = []

  const look = () => {
    const found = shelf.keys(prefix).flatMap((full): KeptDraft[] => {
      const key = full.slice(prefix.length)
      const draft = shown.has(key) ? null : parsed(shelf.get(full))
      return draft ? [{ key, ...draft }] : []
    })
    found.sort((a, b) => (a.key < b.key ? -1 : 1))
    if (JSON.stringify(found) === JSON.stringify(hidden)) return
    hidden = found
    for (const listener of listeners) listener()
  }
  look()

  return {
    get: (key) => parsed(shelf.get(prefix + key)),
    set: (key, draft) => shelf.set(prefix + key, JSON.stringify(draft)),
    remove(key) {
      shelf.remove(prefix + key)
      look()
    },
    show(key) {
      shown.set(key, (shown.get(key) ?? 0) + 1)
      look()
      return () => {
        const left = (shown.get(key) ?? 1) - 1
        if (left > 0) shown.set(key, left)
        else shown.delete(key)
        look()
      }
    },
    hidden: () => hidden,
    subscribe(listener) {
      listeners.add(listener)
      return () => void listeners.delete(listener)
    },
  }
}

'use client'

import { createContext, type ReactNode, useContext, useLayoutEffect, useState } from 'react'
import { type Draft, type Drafts, openDrafts } from '#app/_sync/drafts.ts'
import { sessionShelf } from '#app/_sync/shelf.ts'

const DraftsContext = createContext<Drafts | null>(null)
const EntryContext = createContext('')

/** Where the fields below keep what is typed into them and not kept yet. Without it they keep it as long as the tab is open. */
export function DraftsProvider({ drafts, children }: { readonly drafts: Drafts; readonly children: ReactNode }) {
  return <DraftsContext value={drafts}>{children}</DraftsContext>
}

/** Fields below belong to this entry: their drafts are kept under its id. */
export function Entry({ id, children }: { readonly id: string; readonly children: ReactNode }) {
  return <EntryContext value={id}>{children}</EntryContext>
}

let ofTab: Drafts | null = null
const tabDrafts = (): Drafts => {
  ofTab ??= openDrafts(sessionShelf(), 'tableward/draft/')
  return ofTab
}

export interface FieldDraft {
  /** What was typed and is not kept yet; null when there is nothing. */
  readonly text: string | null
  /** It was found when the field came onto the screen: typed before the page was loaded again. */
  readonly isRestored: boolean
  /** What the field said when the writing began. */
  readonly base: string | null
  readonly write: (text: string) => void
  readonly clear: () => void
}

interface About {
  /** What the field is called, where it is spoken of elsewhere. */
  readonly label?: string
  /** What the field says now. */
  readonly base?: string
}

/** The draft of a field, by its name within its entry: what is typed outlives the page until it is cleared. */
export const useDraft = (field: string, { label = field, base = '' }: About = {}): FieldDraft => {
  const given = useContext(DraftsContext)
  const entry = useContext(EntryContext)
  const key = `${entry}/${field}`
  const [draft, setDraft] = useState<(Draft & { readonly isRestored: boolean }) | null>(null)
  // Before the first picture, and not while rendering: the server has no drafts.
  useLayoutEffect(() => {
    const drafts = given ?? tabDrafts()
    const found = drafts.get(key)
    setDraft(found ? { ...found, isRestored: true } : null)
    return drafts.show(key)
  }, [given, key])
  return {
    text: draft?.text ?? null,
    isRestored: draft?.isRestored === true,
    base: draft?.base ?? null,
    write(text) {
      const next = { text, base: draft?.base ?? base, label, path: window.location.pathname }
      ;(given ?? tabDrafts()).set(key, next)
      setDraft({ ...next, isRestored: draft?.isRestored === true })
    },
    clear() {
      if (!draft) return
      ;(given ?? tabDrafts()).remove(key)
      setDraft(null)
    },
  }
}

/** The drafts of fields below the nearest provider; null without one. */
export const useDrafts = (): Drafts | null => useContext(DraftsContext)

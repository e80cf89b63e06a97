import type { Doc } from 'yjs'
import type { TextDifference } from '#lib/plan/commands/text.ts'
import { sharedText } from '#lib/plan/commands/type-text.ts'

/** The field of a shared text's draft, by which it is known where the text is not on the screen. */
export const textField = (root: 'steps' | 'dishes', id: string, field: 'does' | 'notes'): string => `text:${root}/${id}/${field}`

/** The shared text that a draft is of, from its key; null for the draft of another field. */
export const textOfDraft = (doc: Doc, key: string): { readonly text: string | null } | null => {
  const [, root, id, field] = /text:(steps|dishes)\/([^/]+)\/(does|notes)$/.exec(key) ?? []
  if (id === undefined || field === undefined) return null
  return { text: sharedText(doc, root === 'steps' ? 'steps' : 'dishes', id, field)?.toString() ?? null }
}

/** Whether what was typed is in the text as it is now; what was only deleted is not missed. */
export const hasArrived = (typed: TextDifference, now: string): boolean => typed.put.trim() === '' || now.includes(typed.put)

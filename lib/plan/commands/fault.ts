import type * as z from 'zod/mini'
import { refusals } from '#lib/domain/parse.ts'
import type { Refusal } from '#lib/domain/result.ts'
import type { EntryRoot } from '#lib/plan/layout.ts'

/** Why an edit was not made; the document is as before. */
export type EditFault =
  | { readonly kind: 'unknown-entry'; readonly root: EntryRoot; readonly id: string }
  | { readonly kind: 'id-taken'; readonly id: string }
  | { readonly kind: 'refused'; readonly refusals: readonly Refusal[] }

export const refusedBy = (error: z.core.$ZodError): EditFault => ({ kind: 'refused', refusals: refusals(error) })

export const refusedFor = (path: string, why: string): EditFault => ({
  kind: 'refused',
  refusals: [{ path, kind: 'shape', why }],
})

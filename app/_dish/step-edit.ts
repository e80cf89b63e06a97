import type * as Y from 'yjs'
import { moveStep } from '#lib/plan/commands/move.ts'
import { type Edited, type Patch, setEach, setFields } from '#lib/plan/commands/set.ts'

export type StepPatch = Patch<'steps'>

/** What a sentence about a step can change: its own fields, those of several steps at once, or the dish it belongs to. */
export type StepEdit =
  | { readonly kind: 'fields'; readonly patch: StepPatch }
  | { readonly kind: 'each'; readonly edits: readonly (readonly [step: string, patch: StepPatch])[] }
  | { readonly kind: 'move'; readonly dish: string | null }

export const fields = (patch: StepPatch): StepEdit => ({ kind: 'fields', patch })

/** Writes it to the plan, all or none. */
export const applyStepEdit = (doc: Y.Doc, step: string, edit: StepEdit): Edited => {
  switch (edit.kind) {
    case 'fields':
      return setFields(doc, 'steps', step, edit.patch)
    case 'each':
      return setEach(doc, 'steps', edit.edits)
    case 'move':
      return moveStep(doc, step, edit.dish, { kind: 'last' })
  }
}

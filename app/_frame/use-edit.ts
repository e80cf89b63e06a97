'use client'

import { useCallback } from 'react'
import type * as Y from 'yjs'
import { usePlan } from '#app/_sync/use-plan.ts'
import { faultText } from '#app/_words/fault.ts'
import type { Result } from '#lib/domain/result.ts'
import type { EditFault } from '#lib/plan/commands/fault.ts'
import { remove, restore } from '#lib/plan/commands/remove.ts'
import { useStrip } from './strip.tsx'

type Removable = Parameters<typeof remove>[1]

export interface Edit {
  /** Makes an edit of one's own; returns what was wrong with it, or null. */
  readonly change: (edit: (doc: Y.Doc) => Result<unknown, EditFault>) => string | null
  /** As `change`, and says what was wrong in the strip. */
  readonly tell: (edit: (doc: Y.Doc) => Result<unknown, EditFault>) => boolean
  /** Removes an entry and offers the way back for a while. */
  readonly removeWithStrip: (root: Removable, id: string, name: string) => void
}

/** The way in which screens write to the plan. */
export const useEdit = (): Edit => {
  const { edit } = usePlan()
  const show = useStrip()
  const change = useCallback<Edit['change']>(
    (make) => {
      const made = edit(make)
      return made.ok ? null : faultText(made.error)
    },
    [edit],
  )
  const tell = useCallback<Edit['tell']>(
    (make) => {
      const problem = change(make)
      if (problem !== null) show(problem, null)
      return problem === null
    },
    [change, show],
  )
  const removeWithStrip = useCallback<Edit['removeWithStrip']>(
    (root, id, name) => {
      const problem = change((doc) => remove(doc, root, id))
      if (problem === null) show(`Removed ${name}.`, () => change((doc) => restore(doc, root, id)))
      else show(problem, null)
    },
    [change, show],
  )
  return { change, tell, removeWithStrip }
}

'use client'

import { newId } from '#app/_frame/new-id.ts'
import { useStrip } from '#app/_frame/strip.tsx'
import { useEdit } from '#app/_frame/use-edit.ts'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Button } from '#app/_ui/button.tsx'
import type { Names } from '#app/_words/names.ts'
import { safeFixText } from '#app/_words/safety.ts'
import { ok } from '#lib/domain/result.ts'
import type { SafeFix } from '#lib/domain/safe-fix.ts'
import { keepSafe } from '#lib/plan/commands/keep-safe.ts'

interface Props {
  readonly fixes: readonly SafeFix[]
  readonly names: Names
  /** Instead of the words of the one edit. */
  readonly words?: string
}

/** Puts one limit or several into the plan as one edit, and says what was done with the way back. */
export function FixButton({ fixes, names, words }: Props) {
  const { undo } = usePlan()
  const { tell } = useEdit()
  const show = useStrip()
  const [first] = fixes
  if (!first) return null
  const take = () => {
    const done = tell((doc) => {
      for (const fix of fixes) {
        const dish = fix.kind === 'fridge' ? (names.dish(names.step(fix.after)?.dish ?? null)?.name ?? '') : ''
        const made = keepSafe(doc, fix, { id: newId(), does: `Keep it cold: ${dish}`.slice(0, 400) })
        if (!made.ok) return made
      }
      return ok(null)
    })
    if (done) show('Done: the plan now keeps to it, and the order is made again.', undo)
  }
  return (
    <Button tone="word" onClick={take}>
      {words ?? safeFixText(first, names)}
    </Button>
  )
}

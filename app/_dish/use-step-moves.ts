'use client'

import { useEdit } from '#app/_frame/use-edit.ts'
import { usePlan } from '#app/_sync/use-plan.ts'
import { type Drag, useDrag } from '#app/_ui/drag.tsx'
import { numberAt, placeAfterMove } from '#app/_ui/move-place.ts'
import { movedText } from '#app/_words/moved.ts'
import { moveStep } from '#lib/plan/commands/move.ts'
import type { Place } from '#lib/plan/order-keys.ts'

export interface StepMoves {
  readonly drag: Drag
  readonly by: (id: string, by: -1 | 1) => void
}

/** Ordering the steps of a dish or the chores, by pointer and by buttons. */
export const useStepMoves = (dish: string | null): StepMoves => {
  const { evening } = usePlan()
  const { tell } = useEdit()
  const steps = evening.steps.filter((step) => step.dish === dish)
  const put = (id: string, place: Place): string | null => {
    if (!tell((doc) => moveStep(doc, id, dish, place))) return null
    const name = steps.find((step) => step.id === id)?.does ?? ''
    return movedText(`“${name}”`, numberAt(steps, id, place), steps.length)
  }
  const drag = useDrag((drop) => put(drop.id, drop.place))
  return {
    drag,
    by: (id, by) => {
      const place = placeAfterMove(steps, id, by)
      if (place) drag.say(put(id, place) ?? '')
    },
  }
}

'use client'

import { useState } from 'react'
import { newId } from '#app/_frame/new-id.ts'
import { useEdit } from '#app/_frame/use-edit.ts'
import { blankStep } from '#app/_menu/blank.ts'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Button } from '#app/_ui/button.tsx'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { addStep } from '#lib/plan/commands/add.ts'
import css from './step.module.css'
import { StepItem } from './step-item.tsx'
import { useStepMoves } from './use-step-moves.ts'

/** The list of the chores, for dragging. */
const HOUSE = 'house'

interface Props {
  /** null: the chores of the house. */
  readonly dish: string | null
  readonly planned: RunningOrder | null
}

/** The steps of a dish, one of them open to be changed, and a new one. */
export function StepList({ dish, planned }: Props) {
  const { evening } = usePlan()
  const { tell } = useEdit()
  const [open, setOpen] = useState<string | null>(null)
  const [fresh, setFresh] = useState<string | null>(null)
  const moves = useStepMoves(dish)
  const steps = evening.steps.filter((step) => step.dish === dish)
  const add = () => {
    const step = newId()
    if (tell((doc) => addStep(doc, blankStep(step, dish, steps[steps.length - 1])))) show(step)
  }
  const show = (step: string) => {
    setOpen(step)
    setFresh(step)
  }
  return (
    <>
      {steps.length === 0 ? (
        <p className={css.none}>
          No steps yet. Write what has to be done, one step after the other; for each, how long it takes and what it needs. The
          running order is made of these.
        </p>
      ) : (
        <ol {...moves.drag.list(dish ?? HOUSE, css.method)}>
          {steps.map((step, index) => (
            <StepItem
              key={step.id}
              step={step}
              steps={steps}
              index={index}
              isOpen={open === step.id}
              isFresh={fresh === step.id}
              onToggle={() => setOpen(open === step.id ? null : step.id)}
              onMade={show}
              moves={moves}
              planned={planned}
            />
          ))}
        </ol>
      )}
      {moves.drag.said}
      <p className={css.add}>
        <Button tone="soft" onClick={add}>
          Add a step
        </Button>
      </p>
    </>
  )
}

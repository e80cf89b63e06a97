'use client'

import { newId } from '#app/_frame/new-id.ts'
import { useEdit } from '#app/_frame/use-edit.ts'
import { blankStep } from '#app/_menu/blank.ts'
import { Button } from '#app/_ui/button.tsx'
import { Moves } from '#app/_ui/moves.tsx'
import type { Step } from '#lib/domain/menu.ts'
import { copyStep } from '#lib/plan/commands/copy-step.ts'
import { splitStep } from '#lib/plan/commands/split-step.ts'
import { splitWords } from './split-words.ts'
import css from './step.module.css'
import type { StepMoves } from './use-step-moves.ts'

interface Props {
  readonly step: Step
  readonly steps: readonly Step[]
  readonly moves: StepMoves
  /** Opens the step that was made. */
  readonly onMade: (id: string) => void
}

/** What can be made of a step, the next one, the two that it is in truth, the same once more; moving it and taking it away. */
export function StepActions({ step, steps, moves, onMade }: Props) {
  const { tell, removeWithStrip } = useEdit()
  const name = step.does || 'this step'
  const two = splitWords(step.does)
  const then = () => {
    const id = newId()
    const { order: _order, after: _after, dish: _dish, ...blank } = { order: '', ...blankStep(id, step.dish, undefined) }
    const next = { ...blank, role: step.role, where: step.where, does: two?.[1] ?? '' }
    if (tell((doc) => splitStep(doc, step.id, two?.[0] ?? step.does, next))) onMade(id)
  }
  const copy = () => {
    const id = newId()
    if (tell((doc) => copyStep(doc, step.id, id))) onMade(id)
  }
  return (
    <div className={css.actions}>
      <Button tone="word" onClick={then} aria-label={two ? `Split off from ${name}: ${two[1]}` : `Add a step after ${name}`}>
        {two ? `Split off “${two[1]}”` : 'Then …'}
      </Button>
      <Button tone="word" onClick={copy} aria-label={`Copy ${name}`}>
        Once more
      </Button>
      <span className={css.moves}>
        <Moves
          name={name}
          isFirst={steps[0]?.id === step.id}
          isLast={steps[steps.length - 1]?.id === step.id}
          onMove={(by) => moves.by(step.id, by)}
          onRemove={() => removeWithStrip('steps', step.id, `“${name}”`)}
        />
      </span>
    </div>
  )
}

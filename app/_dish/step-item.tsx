'use client'

import { useMemo } from 'react'
import { newId } from '#app/_frame/new-id.ts'
import { useEdit } from '#app/_frame/use-edit.ts'
import { usePlan } from '#app/_sync/use-plan.ts'
import { placeAfterMove } from '#app/_ui/move-place.ts'
import { Moves } from '#app/_ui/moves.tsx'
import { clockText, dayOf, shortDay } from '#app/_words/clock.ts'
import { namesOf } from '#app/_words/names.ts'
import { lagText, wayText } from '#app/_words/way.ts'
import type { Step } from '#lib/domain/menu.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { moveStep } from '#lib/plan/commands/move.ts'
import { type Scene, sceneOf } from './scene.ts'
import css from './step.module.css'
import { StepActions } from './step-actions.tsx'
import { StepEditor } from './step-editor.tsx'
import { moreLine } from './step-line.ts'

interface Props {
  readonly step: Step
  readonly steps: readonly Step[]
  readonly index: number
  readonly isOpen: boolean
  readonly isFresh: boolean
  readonly onToggle: () => void
  /** Opens a step that was made of this one. */
  readonly onMade: (id: string) => void
  readonly planned: RunningOrder | null
}

/** One step of a method: when it is, what it asks, and, opened, its words to change. */
export function StepItem({ step, steps, index, isOpen, isFresh, onToggle, onMade, planned }: Props) {
  const { evening } = usePlan()
  const { tell, removeWithStrip } = useEdit()
  const names = useMemo(() => namesOf(evening), [evening])
  const cue = planned?.cues.find((candidate) => candidate.step === step.id)
  const day = cue ? dayOf(evening, cue.start) : 0
  const name = step.does || 'a step without words'
  const lags = step.after.map((after) => ({ after, text: lagText(after) })).filter(({ text }) => text !== '')
  const previous = steps[index - 1]
  const way = step.ways[0]

  return (
    <>
      {lags.map(({ after, text }) => (
        <li className={css.lag} key={after.step}>
          {text}
          {after.step === previous?.id ? '' : ` after “${names.stepName(after.step)}”`}
        </li>
      ))}
      <li className={`${css.step} ${isOpen ? css.isOpen : ''}`} aria-label={`Step ${index + 1}: ${name}`}>
        <span className={css.time}>
          {cue ? (
            <>
              {day === 0 ? '' : <small>{shortDay(evening.date, day)}</small>}
              {clockText(cue.start, evening.zone)}
            </>
          ) : null}
        </span>
        <svg className={css.mark} width="16" height="46" viewBox="0 0 16 46" aria-hidden="true">
          {way?.care === 'leave' ? (
            <>
              <path className={css.stitch} d="M8 8V40" />
              <circle className={css.knot} cx="8" cy="6" r="4.6" />
              <circle className={css.knot} cx="8" cy="40" r="4.6" />
            </>
          ) : (
            <rect className={way?.care === 'eye' ? css.eye : css.knot} x="4.4" y="1" width="7.2" height="44" rx="3.4" />
          )}
        </svg>
        <div className={isOpen ? css.open : css.closed}>
          <div className={css.stepHead}>
            <h3>
              <button type="button" className={css.stepName} aria-expanded={isOpen} onClick={onToggle}>
                {name}
              </button>
            </h3>
            {isOpen ? (
              <Moves
                name={name}
                isFirst={index === 0}
                isLast={index === steps.length - 1}
                onMove={(by) => {
                  const place = placeAfterMove(steps, step.id, by)
                  if (place) tell((doc) => moveStep(doc, step.id, step.dish, place))
                }}
                onRemove={() => removeWithStrip('steps', step.id, `“${name}”`)}
              />
            ) : null}
          </div>
          {isOpen ? (
            <>
              <StepEditor step={step} isFresh={isFresh} />
              <StepActions step={step} onMade={onMade} />
            </>
          ) : (
            <Folded scene={sceneOf(step, { evening, kitchens: '', newId })} />
          )}
        </div>
      </li>
    </>
  )
}

/** The step in words, as it is read. */
function Folded({ scene }: { readonly scene: Scene }) {
  const more = moreLine(scene)
  return (
    <>
      {scene.step.ways.map(wayText).map((words, at) => (
        <p key={words}>{at === 0 ? words : `Or: ${words}`}</p>
      ))}
      {more ? <p className={css.sign}>{more}</p> : null}
    </>
  )
}

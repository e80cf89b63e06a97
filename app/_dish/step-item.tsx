'use client'

import { type ReactNode, useMemo } from 'react'
import { Here } from '#app/_frame/here.tsx'
import { newId } from '#app/_frame/new-id.ts'
import { TextWords } from '#app/_frame/text-words.tsx'
import { usePlan } from '#app/_sync/use-plan.ts'
import { clockText, dayOf, shortDay } from '#app/_words/clock.ts'
import { namesOf } from '#app/_words/names.ts'
import { lagText, wayText } from '#app/_words/way.ts'
import type { Care, Step } from '#lib/domain/menu.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { type Scene, sceneOf } from './scene.ts'
import css from './step.module.css'
import { StepActions } from './step-actions.tsx'
import { StepEditor } from './step-editor.tsx'
import { moreLine } from './step-line.ts'
import type { StepMoves } from './use-step-moves.ts'

interface Props {
  readonly step: Step
  readonly steps: readonly Step[]
  readonly index: number
  readonly isOpen: boolean
  readonly isFresh: boolean
  readonly onToggle: () => void
  /** Opens a step that was made of this one. */
  readonly onMade: (id: string) => void
  readonly moves: StepMoves
  readonly planned: RunningOrder | null
}

/** One step of a method: when it is, what it asks, and, opened, its words to change. */
export function StepItem({ step, steps, index, isOpen, isFresh, onToggle, onMade, moves, planned }: Props) {
  const { evening } = usePlan()
  const names = useMemo(() => namesOf(evening), [evening])
  const cue = planned?.cues.find((candidate) => candidate.step === step.id)
  const day = cue ? dayOf(evening, cue.start) : 0
  const name = step.does || 'a step without words'
  const lags = step.after.map((after) => ({ after, text: lagText(after) })).filter(({ text }) => text !== '')
  const previous = steps[index - 1]

  return (
    <>
      {lags.map(({ after, text }) => (
        <li className={css.lag} key={after.step}>
          {text}
          {after.step === previous?.id ? '' : ` after “${names.stepName(after.step)}”`}
        </li>
      ))}
      <li {...moves.drag.item(step.id, `${css.step} ${isOpen ? css.isOpen : ''}`)} aria-label={`Step ${index + 1}: ${name}`}>
        <span className={css.time}>
          {cue ? (
            <>
              {day === 0 ? '' : <small>{shortDay(evening.date, day)}</small>}
              {clockText(cue.start, evening.zone)}
            </>
          ) : null}
        </span>
        <Mark care={step.ways[0]?.care ?? 'hands-on'} />
        <div className={isOpen ? css.open : css.closed}>
          <Head
            step={step}
            name={name}
            isOpen={isOpen}
            isFresh={isFresh}
            onToggle={onToggle}
            handle={moves.drag.handle(step.id)}
          />
          <Here target={step.id} />
          {isOpen ? (
            <>
              <StepEditor step={step} />
              <StepActions step={step} steps={steps} moves={moves} onMade={onMade} />
            </>
          ) : (
            <Folded scene={sceneOf(step, { evening, kitchens: '', newId })} />
          )}
        </div>
      </li>
    </>
  )
}

interface HeadProps {
  readonly step: Step
  readonly name: string
  readonly isOpen: boolean
  readonly isFresh: boolean
  readonly onToggle: () => void
  readonly handle: ReactNode
}

/** What is done. The button that opens and folds the step is one and the same, so it keeps the focus. */
function Head({ step, name, isOpen, isFresh, onToggle, handle }: HeadProps) {
  return (
    <h3 className={css.stepHead}>
      {isOpen ? (
        <span className={css.does}>
          <TextWords
            root="steps"
            id={step.id}
            field="does"
            label="What is done"
            empty="What is done, such as: peel the potatoes"
            display
            autoFocus={isFresh}
          />
        </span>
      ) : null}
      <button
        type="button"
        className={isOpen ? css.fold : css.stepName}
        aria-expanded={isOpen}
        aria-label={isOpen ? `Fold ${name}` : undefined}
        onClick={onToggle}
      >
        {isOpen ? 'Fold' : name}
      </button>
      {isOpen ? null : handle}
    </h3>
  )
}

/** The thread beside a step: whole while hands are on it, open while it is watched, stitched while it is left. */
function Mark({ care }: { readonly care: Care }) {
  return (
    <svg className={css.mark} width="16" height="46" viewBox="0 0 16 46" aria-hidden="true">
      {care === 'leave' ? (
        <>
          <path className={css.stitch} d="M8 8V40" />
          <circle className={css.knot} cx="8" cy="6" r="4.6" />
          <circle className={css.knot} cx="8" cy="40" r="4.6" />
        </>
      ) : (
        <rect className={care === 'eye' ? css.eye : css.knot} x="4.4" y="1" width="7.2" height="44" rx="3.4" />
      )}
    </svg>
  )
}

/** The step in words, as it is read. */
function Folded({ scene }: { readonly scene: Scene }) {
  const more = moreLine(scene)
  return (
    <>
      {scene.step.ways.map(wayText).map((words, at) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a way is its place in the list
        <p key={at}>{at === 0 ? words : `Or: ${words}`}</p>
      ))}
      {more ? <p className={css.sign}>{more}</p> : null}
    </>
  )
}

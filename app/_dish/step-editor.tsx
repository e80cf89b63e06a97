'use client'

import { useParams } from 'next/navigation'
import { useMemo } from 'react'
import { ClaimLine } from '#app/_frame/claim.tsx'
import { newId } from '#app/_frame/new-id.ts'
import { useStrip } from '#app/_frame/strip.tsx'
import { useEdit } from '#app/_frame/use-edit.ts'
import { useWhere } from '#app/_frame/where.tsx'
import { UsualHere } from '#app/_learning/usual-here.tsx'
import { blankWay } from '#app/_menu/blank.ts'
import { EstimateMinutes } from '#app/_quantities/estimate-minutes.tsx'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Button } from '#app/_ui/button.tsx'
import { Sentence } from '#app/_ui/sentence.tsx'
import type { Span } from '#lib/domain/atoms.ts'
import type { Step } from '#lib/domain/menu.ts'
import { removeWay, setWay } from '#lib/plan/commands/method.ts'
import { moveStep } from '#lib/plan/commands/move.ts'
import { withTakes } from './minutes.ts'
import { type Scene, sceneOf } from './scene.ts'
import css from './step.module.css'
import { applyStepEdit, type StepEdit } from './step-edit.ts'
import { moreLine } from './step-line.ts'
import { aheadParts, isBlank, presetParts } from './step-presets.ts'
import { moreSentences, putWay, waitSentences, waySentences } from './step-sentences.ts'
import { toldParts } from './told-way.ts'
import { wayPlace } from './way-words.ts'

const MOST_WAYS = 3

/** A step as sentences: what it does, its ways, what it waits for, and, folded, all that is said more rarely. */
export function StepEditor({ step }: { readonly step: Step }) {
  const { evening } = usePlan()
  const { change } = useEdit()
  const show = useStrip()
  useWhere(step.id)
  const eveningId = String(useParams().id ?? evening.id)
  const scene = useMemo(
    () => sceneOf(step, { evening, kitchens: `/evenings/${eveningId}/kitchens`, newId }),
    [step, evening, eveningId],
  )
  const edit = (value: StepEdit) => {
    const problem = change((doc) => applyStepEdit(doc, step.id, value))
    // It is on another page then: say where, and offer the way back.
    if (problem === null && value.kind === 'move' && value.dish !== step.dish) {
      const where = value.dish === null ? 'the chores of the house' : scene.names.dishName(value.dish)
      show(`“${scene.name}” belongs to ${where} now.`, () => change((doc) => moveStep(doc, step.id, step.dish, { kind: 'last' })))
    }
    return problem
  }
  const told = toldParts(scene)
  const usual = [...presetParts(scene), ...aheadParts(scene)]
  // What its own words say is the likeliest; the usual steps stand open only where nothing better is offered.
  const offers = !isBlank(scene) ? [] : told.length > 0 ? told : usual
  return (
    <div className={css.editor}>
      {offers.length > 0 ? (
        <div className={css.usual}>
          <Sentence of={step.id} parts={offers} onEdit={edit} />
        </div>
      ) : null}
      <Ways scene={scene} onEdit={edit} />
      <div className={css.waits}>
        {waitSentences(scene).map(({ key, parts }) => (
          <Sentence key={key} of={scene.step.id} parts={parts} onEdit={edit} />
        ))}
      </div>
      <More scene={scene} usual={offers === usual ? [] : usual} onEdit={edit} />
      <p className={css.claim}>
        <ClaimLine target={step.id} name={scene.name} giving />
      </p>
    </div>
  )
}

interface PartProps {
  readonly scene: Scene
  readonly onEdit: (edit: StepEdit) => string | null
}

function Ways({ scene, onEdit }: PartProps) {
  const { tell } = useEdit()
  const { step, name } = scene
  const { ways } = step
  return (
    <>
      {waySentences(scene).map(({ key, parts }, index) => (
        <div className={css.way} key={key}>
          {index === 0 ? null : <span className={css.or}>or</span>}
          <div>
            <Sentence of={step.id} parts={parts} onEdit={onEdit} />
            <Estimate scene={scene} index={index} onEdit={onEdit} />
            {ways.length > 1 ? (
              <Button
                tone="late"
                onClick={() => tell((doc) => removeWay(doc, step.id, index))}
                aria-label={`Remove way ${index + 1} of ${name}`}
              >
                Not this way
              </Button>
            ) : null}
          </div>
        </div>
      ))}
      {ways.length < MOST_WAYS ? (
        <Button tone="word" onClick={() => tell((doc) => setWay(doc, step.id, ways.length, ways[0] ?? blankWay))}>
          {ways.length === 1 ? 'Add another way' : 'Add a third way'}
        </Button>
      ) : null}
    </>
  )
}

function More({ scene, usual, onEdit }: PartProps & { readonly usual: ReturnType<typeof presetParts> }) {
  const line = moreLine(scene)
  return (
    <details className={css.more}>
      <summary>
        More about this step
        {line ? <span>{line}</span> : null}
      </summary>
      {moreSentences(scene).map(({ key, parts }) => (
        <Sentence key={key} of={scene.step.id} parts={parts} onEdit={onEdit} />
      ))}
      {usual.length > 0 ? (
        <div className={css.usual}>
          <span>Make it a usual step:</span>
          <Sentence of={scene.step.id} parts={usual} onEdit={onEdit} />
        </div>
      ) : null}
    </details>
  )
}

/** Minutes from nights before, and reckoned ones for who does not know them. */
function Estimate({ scene, index, onEdit }: PartProps & { readonly index: number }) {
  const { step } = scene
  const way = step.ways[index]
  if (!way) return null
  const shared = {
    step,
    way,
    named: wayPlace(scene, index).named,
    onTake: (takes: Span) => onEdit(putWay(scene, index)(withTakes(way, takes))),
  }
  return (
    <>
      <UsualHere key={`usual ${step.id}.${index}`} {...shared} />
      <EstimateMinutes key={`${step.id}.${index}`} {...shared} />
    </>
  )
}

'use client'

import { sceneOf } from '#app/_dish/scene.ts'
import { StepEditor } from '#app/_dish/step-editor.tsx'
import { moreLine } from '#app/_dish/step-line.ts'
import { ClaimLine } from '#app/_frame/claim.tsx'
import { Foldable } from '#app/_frame/foldable.tsx'
import { newId } from '#app/_frame/new-id.ts'
import { TextWords } from '#app/_frame/text-words.tsx'
import { useEdit } from '#app/_frame/use-edit.ts'
import { usePlan } from '#app/_sync/use-plan.ts'
import { useDrag } from '#app/_ui/drag.tsx'
import { numberAt, placeAfterMove } from '#app/_ui/move-place.ts'
import { Moves } from '#app/_ui/moves.tsx'
import { clockText, dayName, dayOf } from '#app/_words/clock.ts'
import { movedText } from '#app/_words/moved.ts'
import { shorten } from '#app/_words/shorten.ts'
import { wayText } from '#app/_words/way.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { Step } from '#lib/domain/menu.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { moveStep } from '#lib/plan/commands/move.ts'
import type { Place } from '#lib/plan/order-keys.ts'
import css from './chores.module.css'

interface Props {
  readonly chores: readonly Step[]
  readonly planned: RunningOrder | null
  readonly open: string | null
  readonly onOpen: (id: string | null) => void
}

const nameOf = (chore: Step): string => shorten(chore.does || 'A chore without words', 60)

/** The chores in an order of one's own, each with its minutes, its hours and who has it; one is open to be changed. */
export function ChoreList({ chores, planned, open, onOpen }: Props) {
  const { evening } = usePlan()
  const { tell, removeWithStrip } = useEdit()
  const move = (chore: Step, place: Place): string | null =>
    tell((doc) => moveStep(doc, chore.id, null, place))
      ? movedText(nameOf(chore), numberAt(chores, chore.id, place), chores.length)
      : null
  const drag = useDrag(({ id, place }) => {
    const chore = chores.find((each) => each.id === id)
    return chore ? move(chore, place) : null
  })
  return (
    <>
      <ul {...drag.list('chores', css.list)}>
        {chores.map((chore, index) => (
          <li key={chore.id} {...drag.item(chore.id, css.item)}>
            <Foldable
              id={chore.id}
              name={nameOf(chore)}
              about={plannedText(evening, chore, planned)}
              isOpen={open === chore.id}
              onToggle={() => onOpen(open === chore.id ? null : chore.id)}
              moves={
                <span className={css.moves}>
                  {drag.handle(chore.id)}
                  <Moves
                    name={nameOf(chore)}
                    isFirst={index === 0}
                    isLast={index === chores.length - 1}
                    onMove={(by) => {
                      const place = placeAfterMove(chores, chore.id, by)
                      const said = place && move(chore, place)
                      if (said) drag.say(said)
                    }}
                    onRemove={() => removeWithStrip('steps', chore.id, `“${nameOf(chore)}”`)}
                  />
                </span>
              }
            >
              {open === chore.id ? (
                <>
                  <TextWords root="steps" id={chore.id} field="does" label="What is done" empty="what wants doing" />
                  <StepEditor step={chore} />
                </>
              ) : (
                <Summary chore={chore} />
              )}
            </Foldable>
          </li>
        ))}
      </ul>
      {drag.said}
    </>
  )
}

/** When the running order has it: "Saturday 17:40", or nothing yet. */
const plannedText = (evening: Evening, chore: Step, planned: RunningOrder | null): string => {
  const cue = planned?.cues.find((candidate) => candidate.step === chore.id)
  if (!cue) return planned ? 'not in the order yet' : ''
  const day = dayOf(evening, cue.start)
  return `${day === 0 ? 'at' : dayName(evening.date, day)} ${clockText(cue.start, evening.zone)}`
}

/** A chore as it is read: how long, from when and until when, and who has it. */
function Summary({ chore }: { readonly chore: Step }) {
  const { evening } = usePlan()
  const more = moreLine(sceneOf(chore, { evening, kitchens: '', newId }))
  return (
    <div className={css.summary}>
      {chore.ways.map(wayText).map((words, at) => (
        <p key={words}>{at === 0 ? words : `Or: ${words}`}</p>
      ))}
      {more ? <p>{more}</p> : null}
      <ClaimLine target={chore.id} name={nameOf(chore)} giving />
    </div>
  )
}

'use client'

import { newId } from '#app/_frame/new-id.ts'
import { useEdit } from '#app/_frame/use-edit.ts'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Button } from '#app/_ui/button.tsx'
import { Fold } from '#app/_ui/fold.tsx'
import { Link } from '#app/_ui/link.tsx'
import { Sentence } from '#app/_ui/sentence.tsx'
import { namesOf } from '#app/_words/names.ts'
import { presenceFaultText } from '#app/_words/presence.ts'
import type { Cook } from '#lib/domain/kitchen.ts'
import { presenceFault } from '#lib/domain/presence.ts'
import { setPresence } from '#lib/plan/commands/presence.ts'
import { setFields } from '#lib/plan/commands/set.ts'
import css from './bring.module.css'
import { addHome, addHomeDay, homeDayOf } from './home.ts'
import { type HomeEdit, homeDayText, homeParts } from './home-sentence.ts'

interface Props {
  readonly eveningId: string
  readonly cook: Cook
  /** The home that is spoken of; undefined while the plan knows none. */
  readonly kitchen: string | undefined
  readonly onHome: (kitchen: string) => void
}

/** Where a cook brings from: their home is written down in one tap, and then how far it is and when they are where. */
export function HomeLine({ eveningId, cook, kitchen: id, onHome }: Props) {
  const { evening, me } = usePlan()
  const { change, tell } = useEdit()
  const names = namesOf(evening)
  const kitchen = evening.kitchens.find((each) => each.id === id && id !== evening.host)
  const own = cook.id === me?.cook
  // Hosts who say nothing else are at home beside the table.
  if (!kitchen && cook.host) return null
  if (!kitchen) {
    const begin = () => {
      const fresh = newId()
      if (tell((doc) => addHome(doc, evening, cook, fresh, newId))) onHome(fresh)
    }
    return (
      <p className={css.home}>
        It would be made in {names.kitchenName(evening.host)}.{' '}
        <Button tone="word" onClick={begin}>
          {own ? 'It comes from my own kitchen' : `It comes from ${cook.name}’s own kitchen`}
        </Button>
      </p>
    )
  }
  const write = (edit: HomeEdit): string | null => {
    if (edit.kind === 'way') return change((doc) => setFields(doc, 'kitchens', kitchen.id, edit.patch))
    const fault = presenceFault(evening, edit.presence)
    return fault
      ? presenceFaultText(fault, edit.presence, evening.date)
      : change((doc) => setPresence(doc, cook.id, edit.presence))
  }
  const day = homeDayOf(evening, cook, kitchen.id)
  const words = (
    <Sentence of={`home ${kitchen.id} ${cook.id}`} parts={homeParts({ evening, names, cook, kitchen })} onEdit={write} />
  )
  return (
    <div className={css.home}>
      {day === null ? words : <Fold title={homeDayText(evening, names, kitchen, day)}>{words}</Fold>}
      {day === null ? (
        <p>
          The running order does not know when {own ? 'you are' : `${cook.name} is`} at home on the day, so nothing can be planned
          there.{' '}
          <Button tone="word" onClick={() => tell((doc) => addHomeDay(doc, evening, cook, kitchen))}>
            {own ? 'I am at home until I leave' : `${cook.name} is at home until it is time to leave`}
          </Button>{' '}
          <Link href={`/evenings/${eveningId}/kitchens`}>Other hours</Link>
        </p>
      ) : null}
    </div>
  )
}

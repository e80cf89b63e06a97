'use client'

import { useParams } from 'next/navigation'
import { useEffect, useState } from 'react'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Button } from '#app/_ui/button.tsx'
import { kinText, ovenText, usualHereText } from '#app/_words/learning.ts'
import type { Span } from '#lib/domain/atoms.ts'
import type { Step, Way } from '#lib/domain/menu.ts'
import { kindOf, type Observation } from '#lib/learning/observation.ts'
import { ovenPace, paceOf, usualOf } from '#lib/learning/usual.ts'
import { memoryAction } from './actions.ts'
import css from './learning.module.css'

interface Props {
  readonly step: Step
  readonly way: Way
  /** "Boil the water: minutes", for those who cannot see the sentence. */
  readonly named: (what: string) => string
  /** Takes the minutes over; returns what is wrong with them, or null. */
  readonly onTake: (takes: Span) => string | null
}

/** What this step, or steps like it, took on nights before: offered, never taken by itself. Nothing where no night was told. */
export function UsualHere({ step, way, named, onTake }: Props) {
  const { evening } = usePlan()
  const memory = useMemory(String(useParams().id ?? evening.id))
  const [said, setSaid] = useState<string | null>(null)
  const dish = evening.dishes.find(({ id }) => id === step.dish)
  const home = step.role === 'make' ? (dish?.kitchen ?? evening.host) : evening.host
  const kitchen = evening.kitchens.find(({ id }) => id === home)
  if (!dish || !kitchen || memory.length === 0) return null
  const claim = evening.claims.find(({ target }) => target === step.id || target === dish.id)
  const cook = evening.cooks.find(({ id }) => id === claim?.cook)
  const usual = usualOf(way, { dish: dish.name, does: step.does, kitchen: kitchen.name }, memory)
  const kind = kindOf(step, way)
  const oven = kind.kit === 'oven' && kind.care === 'leave' ? ovenPace(kitchen.name, memory) : null
  const kin = usual || oven || way.upTo ? null : paceOf(kind, { kitchen: kitchen.name, cook: cook?.id ?? null }, memory)
  if (!usual && !oven && !kin && said === null) return null
  return (
    <div className={css.usual}>
      {usual ? (
        <p>
          {usualHereText(usual, way.takes)}{' '}
          <Button
            tone="soft"
            aria-label={named('take what it usually takes here')}
            onClick={() => setSaid(onTake(usual.takes) ?? 'Taken; undo takes it back.')}
          >
            Take it
          </Button>
        </p>
      ) : null}
      {kin ? <p>{kinText(kin, cook?.name ?? null, way.takes)}</p> : null}
      {oven ? <p>{ovenText(oven)}</p> : null}
      <p role="status">{said}</p>
    </div>
  )
}

const NONE: readonly Observation[] = []

/** Asked for when a step is opened. Without a connection there is none, and the step is as it was. */
const useMemory = (eveningId: string): readonly Observation[] => {
  const [memory, setMemory] = useState(NONE)
  useEffect(() => {
    if (!navigator.onLine) return
    let gone = false
    memoryAction(eveningId).then(
      (found) => gone || setMemory(found),
      () => gone || setMemory(NONE),
    )
    return () => {
      gone = true
    }
  }, [eveningId])
  return memory
}

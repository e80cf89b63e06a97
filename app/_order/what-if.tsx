'use client'

import { memo, useEffect, useMemo, useState } from 'react'
import { newId } from '#app/_frame/new-id.ts'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Button } from '#app/_ui/button.tsx'
import { Fold } from '#app/_ui/fold.tsx'
import { Sentence } from '#app/_ui/sentence.tsx'
import { faultText } from '#app/_words/fault.ts'
import { namesOf } from '#app/_words/names.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { carryOut, firstIdea, type Idea, isForHosts } from './idea.ts'
import { ideaParts, ideaText } from './idea-sentence.ts'
import { type Look, useLook } from './look.tsx'
import { useTaken } from './taken.tsx'
import css from './what-if.module.css'

const OF = 'what-if'

/** Trying something else without disturbing anybody: it is looked at here alone until it is kept. */
export const WhatIf = memo(function WhatIf({ order }: { readonly order: RunningOrder }) {
  const { evening, me, edit, undo } = usePlan()
  const { look, lookAt, leave } = useLook()
  const { note } = useTaken()
  const [freshId, setFreshId] = useState(newId)
  const [idea, setIdea] = useState<Idea | null>(null)
  const names = useMemo(() => namesOf(evening), [evening])
  const around = { evening, order, names, freshId }
  const shown = sound(idea, around) ?? firstIdea('sit-down', evening, order, freshId)
  const isLookedAt = look?.key.startsWith(OF) ?? false

  // What it is about was removed meanwhile.
  const isLost = idea !== null && sound(idea, around) === null
  useEffect(() => {
    if (!isLost) return
    setIdea(null)
    if (isLookedAt) leave()
  }, [isLost, isLookedAt, leave])
  if (!shown) return null

  const keep = (kept: Idea) => {
    const made = edit((doc) => carryOut(doc, kept))
    if (!made.ok) return note({ text: `It was not kept. ${faultText(made.error)}`, clash: null, before: null, takeBack: null })
    setFreshId(newId())
    setIdea(null)
    const takeBack = () => {
      undo()
      return null
    }
    return note({ text: `Kept: ${ideaText(kept, around).replace(/^what if /, '')}.`, clash: null, before: null, takeBack })
  }
  const lookFor = (tried: Idea): Look => ({
    key: `${OF} ${JSON.stringify(tried)}`,
    title: ideaText(tried, around),
    make: (copy) => {
      const made = carryOut(copy, tried)
      return made.ok ? null : faultText(made.error)
    },
    keepWords: 'Keep it',
    keep: () => keep(tried),
    barred: me?.role !== 'host' && isForHosts(evening, tried) ? 'Only a host can keep this: tell one.' : null,
  })

  return (
    <section className={css.whatIf}>
      <Fold title="What if…">
        <Sentence
          of={OF}
          parts={ideaParts(shown, around)}
          onEdit={(next) => {
            setIdea(next)
            if (isLookedAt) lookAt(lookFor(next))
            return null
          }}
        />
        <p className={css.private}>Nobody else sees it until you keep it.</p>
        {isLookedAt ? (
          <Button tone="soft" onClick={leave}>
            Leave it
          </Button>
        ) : (
          <Button onClick={() => lookAt(lookFor(shown))}>Try it</Button>
        )}
      </Fold>
    </section>
  )
})

/** The idea, unless the plan no longer has what it is about. */
const sound = (
  idea: Idea | null,
  { evening, order }: { evening: Parameters<typeof firstIdea>[1]; order: RunningOrder },
): Idea | null => {
  if (idea?.kind === 'course') return order.courses.some(({ course }) => course === idea.course) ? idea : null
  if (idea?.kind === 'way') return (evening.steps.find(({ id }) => id === idea.step)?.ways.length ?? 0) > idea.way ? idea : null
  if (idea?.kind === 'cook') return evening.kitchens.some(({ id }) => id === idea.kitchen) ? idea : null
  return idea
}

'use client'

import { useMemo, useState } from 'react'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Button } from '#app/_ui/button.tsx'
import { arrivedText, leftText } from '#app/_words/bring.ts'
import { dayOf } from '#app/_words/clock.ts'
import { refusalText } from '#app/_words/link.ts'
import { namesOf } from '#app/_words/names.ts'
import type { Said } from '#lib/plan/say.ts'
import css from './home-screen.module.css'
import { carriesFrom, wayTold } from './sheet.ts'

/** On the evening's day, to who carries from here: "I have left", "I am here", for all that is carried at once. */
export function OnTheWay({ kitchen }: { readonly kitchen: string }) {
  const { evening, order, me, tell, now } = usePlan()
  const names = useMemo(() => namesOf(evening), [evening])
  const [last, setLast] = useState<readonly { readonly op: string; readonly said: Said }[]>([])
  const [refused, setRefused] = useState<string | null>(null)
  const planned = order.kind === 'none' ? null : order.order
  const mine = carriesFrom(evening, kitchen).filter(
    (step) => me?.cook && planned?.cues.some((cue) => cue.step === step && cue.cooks.includes(me.cook ?? '')),
  )
  const closed = evening.night.some((fact) => 'night' in fact && fact.closed !== undefined)
  const begun = evening.night.some((fact) => 'night' in fact)
  if (mine.length === 0 || closed || !(begun || dayOf(evening, now()) === 0)) return null
  const { left, there } = wayTold(evening, mine)
  const say = (kind: 'started' | 'done') => {
    setRefused(null)
    const told = mine.map((step) => {
      const said: Said = { kind, step }
      const { op, answered } = tell(said)
      void answered.then((outcome) => {
        if (outcome.kind === 'refused') setRefused(refusalText(outcome.why, names))
      })
      return { op, said }
    })
    setLast(told)
  }
  const takeBack = () => {
    for (const { op, said } of last) tell({ kind: 'take-back', of: op, said })
    setLast([])
  }
  return (
    <section className={css.way} aria-label="On the way">
      {there ? (
        <p role="status">{arrivedText(there, evening.zone)}</p>
      ) : left ? (
        <p role="status">{leftText(left, evening.zone)}</p>
      ) : null}
      {there ? null : left ? (
        <Button tone="now" large onClick={() => say('done')}>
          I am here
        </Button>
      ) : (
        <Button tone="now" large onClick={() => say('started')}>
          I have left
        </Button>
      )}
      {last.length > 0 && left ? (
        <Button tone="word" onClick={takeBack}>
          Take it back
        </Button>
      ) : null}
      {refused ? (
        <p className={css.refused} role="alert">
          {refused}
        </p>
      ) : null}
    </section>
  )
}

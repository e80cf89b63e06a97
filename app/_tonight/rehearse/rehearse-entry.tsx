'use client'

import { usePlan } from '#app/_sync/use-plan.ts'
import { Button } from '#app/_ui/button.tsx'
import css from './rehearse.module.css'
import { useRehearsing } from './use-rehearsal.ts'

/** Before its day: plays the evening on this device alone. */
export function RehearseEntry() {
  const { evening } = usePlan()
  const { played, start } = useRehearsing()
  if (played || evening.night.length > 0) return null
  return (
    <section className={css.entry} aria-labelledby="rehearse">
      <h2 id="rehearse">Rehearse it</h2>
      <p>
        The evening is played here, on its own clock and as fast as you like: who is called when, and what happens when something
        goes wrong. Nobody else sees anything of it, and when you leave it nothing is left of it.
      </p>
      {start ? (
        <Button tone="soft" onClick={start}>
          Rehearse it
        </Button>
      ) : (
        <p>There is no running order to play yet.</p>
      )}
    </section>
  )
}

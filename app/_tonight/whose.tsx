'use client'

import { Button } from '#app/_ui/button.tsx'
import mine from './mine.module.css'
import { useNight } from './use-night.ts'

/** A device that does not know yet whose it is asks once. */
export function Whose() {
  const { evening, names, setCook } = useNight()
  return (
    <section className={mine.ask} aria-labelledby="whose">
      <h1 id="whose">Whose board is this?</h1>
      <p>
        {evening.cooks.length > 0
          ? 'It is remembered on this device.'
          : 'This evening has no cooks yet. Add one under “Cooks & kitchens”.'}
      </p>
      <div>
        {evening.cooks.map(({ id }) => (
          <Button key={id} tone="soft" large onClick={() => setCook(id)}>
            {names.cookName(id)}
          </Button>
        ))}
      </div>
    </section>
  )
}

'use client'

import { useMemo } from 'react'
import { useNight } from '#app/_tonight/use-night.ts'
import { CLOSED, closeText } from '#app/_words/afterwards.ts'
import css from './afterwards.module.css'
import { ClosingSteps } from './closing-steps.tsx'
import { Leftovers } from './leftovers.tsx'
import { Timings } from './timings.tsx'

/** The courses are eaten: what is left and by when, who does what is still to do, what really took how long, and the end. */
export function Afterwards() {
  const { evening, order, tell, cook } = useNight()
  const night = useMemo(() => evening.night.find((fact) => 'night' in fact), [evening.night])
  const isClosed = night !== undefined && 'night' in night && night.closed !== undefined
  if (order === null) return null
  return (
    <div className={css.after}>
      {isClosed ? null : (
        <>
          <Leftovers />
          <ClosingSteps />
        </>
      )}
      <Timings />
      {isClosed ? <Leftovers /> : null}
      <section className={css.part} aria-labelledby="close">
        <h2 id="close">{isClosed ? 'The evening is closed' : 'The end'}</h2>
        <p>{isClosed ? CLOSED : closeText}</p>
        {isClosed ? (
          <p>
            <a href="/dishes">How the dishes went</a>
          </p>
        ) : null}
        {isClosed ? (
          <button type="button" className={css.soft} onClick={() => tell({ kind: 'begin' }, cook ?? undefined)}>
            Open it again
          </button>
        ) : (
          <button type="button" className={css.close} onClick={() => tell({ kind: 'close' }, cook ?? undefined)}>
            Close the evening
          </button>
        )}
      </section>
    </div>
  )
}

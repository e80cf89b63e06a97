'use client'

import { usePlan } from '#app/_sync/use-plan.ts'
import { countOf, sentence } from '#app/_words/clock.ts'
import type { Names } from '#app/_words/names.ts'
import { cookHasText, cookStandText, whereText } from '#app/_words/share.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { standOf } from '#lib/sharing/stand.ts'
import css from './share.module.css'

/** A sentence or two for each cook, and how much nobody has. */
export function CookStands({ order, names }: { readonly order: RunningOrder; readonly names: Names }) {
  const { evening, me } = usePlan()
  const { open, steps } = standOf(evening)
  return (
    <section aria-labelledby="stands">
      <h2 id="stands">How the work lies</h2>
      <ul className={css.cooks}>
        {evening.cooks.map((cook) => {
          const planned = order.cooks.find((each) => each.cook === cook.id)
          return (
            <li key={cook.id}>
              <h3>{cook.id === me?.cook ? `${cook.name}, you` : cook.name}</h3>
              {planned ? <p>{cookStandText(planned, cook.eats)}</p> : null}
              <p>{cookHasText(evening, cook.id)}</p>
              <p className={css.quiet}>{whereText(evening, cook.id, names)}</p>
            </li>
          )
        })}
      </ul>
      <p className={css.open}>
        {open === 0
          ? 'Every step has somebody.'
          : `${sentence(countOf(open, 'step'))} of ${steps} ${open === 1 ? 'is' : 'are'} nobody’s yet: the running order gives them to whoever is free.`}
      </p>
    </section>
  )
}

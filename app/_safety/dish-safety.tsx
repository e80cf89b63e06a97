'use client'

import { useMemo } from 'react'
import { usePlan } from '#app/_sync/use-plan.ts'
import type { Names } from '#app/_words/names.ts'
import { DEFER } from '#app/_words/safety.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { safetyOf } from '#lib/safety/safety-of.ts'
import css from './safety.module.css'
import { Beyond, keyOf, Todo } from './safety.tsx'

interface Props {
  readonly dish: string
  readonly order: RunningOrder
  readonly names: Names
}

/** What the rules say of one dish, on its page. */
export function DishSafety({ dish, order, names }: Props) {
  const { evening } = usePlan()
  const found = useMemo(() => safetyOf(evening, order).filter((finding) => finding.dish === dish), [evening, order, dish])
  return (
    <section className={css.safety}>
      <h2>Food safety</h2>
      {found.length === 0 ? (
        <p className={css.quiet}>Nothing was found to say of this dish, which does not make it safe.</p>
      ) : (
        <ul>
          {found.map((finding) =>
            finding.weight === 'beyond' ? (
              <Beyond key={keyOf(finding)} finding={finding} names={names} />
            ) : (
              <Todo key={keyOf(finding)} finding={finding} names={names} />
            ),
          )}
        </ul>
      )}
      <p className={css.quiet}>{DEFER}</p>
    </section>
  )
}

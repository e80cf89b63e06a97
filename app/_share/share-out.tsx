'use client'

import { useMemo } from 'react'
import { usePlan } from '#app/_sync/use-plan.ts'
import { namesOf } from '#app/_words/names.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { CookStands } from './cook-stands.tsx'
import { CourseClaims } from './course-claims.tsx'
import css from './share.module.css'
import { Suggestion } from './suggestion.tsx'

/** Sharing out the work: what everybody has, who takes what, who leads, and a suggestion for what nobody has. */
export function ShareOut({ order }: { readonly order: RunningOrder }) {
  const { evening } = usePlan()
  const names = useMemo(() => namesOf(evening), [evening])
  return (
    <div className={css.share}>
      <CookStands order={order} names={names} />
      <Suggestion order={order} names={names} />
      <CourseClaims names={names} />
    </div>
  )
}

'use client'

import { useRef, useState } from 'react'
import { usePlan } from '#app/_sync/use-plan.ts'
import { type Comparison, comparedText } from '#app/_words/compare.ts'
import { namesOf } from '#app/_words/names.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { carryOutClaim } from '#lib/plan/carry-out-claim.ts'
import { claimsAfter } from '#lib/plan/claims-after.ts'
import type { Wish } from '#lib/plan/decide-claim.ts'
import { orderKeeps } from '#lib/sharing/same-order.ts'

/** What claims would make better and worse, by a trial of them on this device. */
export interface Price {
  /** As it is known now, of the order on the screen; null while it is not. */
  readonly known: (wishes: readonly Wish[]) => Comparison | null
  /** Works it out; null when that cannot be told within the time one would wait for it. */
  readonly find: (wishes: readonly Wish[], patienceMs: number) => Promise<Comparison | null>
}

const NOTHING: Comparison = { better: [], worse: [], moved: null, same: true }

/** `asker` keeps the trials of one place apart from those of others. */
export const usePrice = (asker: string): Price => {
  const { evening, order: state, me, tryOut } = usePlan()
  const order = state.kind === 'current' ? state.order : null
  const [found, setFound] = useState<{ of: string; order: RunningOrder | null; price: Comparison } | null>(null)
  const newest = useRef('')

  const known = (wishes: readonly Wish[]): Comparison | null =>
    found && found.of === JSON.stringify(wishes) && found.order === order ? found.price : null

  const find = async (wishes: readonly Wish[], patienceMs: number): Promise<Comparison | null> => {
    const before = known(wishes)
    if (before || order === null || me === null) return before
    const asked = { role: me.role, cook: me.cook }
    const of = JSON.stringify(wishes)
    newest.current = of
    if (orderKeeps(evening, order, claimsAfter(evening, asked, wishes))) {
      setFound({ of, order, price: NOTHING })
      return NOTHING
    }
    const trial = await inTime(
      tryOut((copy) => {
        for (const wish of wishes) carryOutClaim(copy, asked, wish)
      }, asker),
      patienceMs,
    )
    if (trial === null || newest.current !== of) return null
    const price = comparedText(trial.before, trial.after, namesOf(trial.evening))
    setFound({ of, order: trial.before, price })
    return price
  }
  return { known, find }
}

const inTime = <T>(promise: Promise<T>, patienceMs: number): Promise<T | null> =>
  new Promise((resolve, reject) => {
    const timer = setTimeout(() => resolve(null), patienceMs)
    promise.then(
      (value) => {
        clearTimeout(timer)
        resolve(value)
      },
      (cause: unknown) => {
        clearTimeout(timer)
        reject(cause)
      },
    )
  })

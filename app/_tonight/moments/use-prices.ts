'use client'

import { useEffect, useRef, useState } from 'react'
import type { Trial } from '#app/_sync/plan.ts'
import { usePlan } from '#app/_sync/use-plan.ts'
import { useNight } from '#app/_tonight/use-night.ts'
import { carryOutTell } from '#lib/plan/carry-out-tell.ts'
import { type Answer, editOf, tellsOf } from './answer.ts'

/** `trying`: it is being worked out. `unknown`: this device cannot. */
export type AnswerPrice =
  | { readonly kind: 'trying' }
  | { readonly kind: 'unknown' }
  | { readonly kind: 'known'; readonly trial: Trial }

const TRYING: AnswerPrice = { kind: 'trying' }

/** What each answer would come to, tried here one after the other on the newest plan; nobody else sees anything of it. */
export const usePrices = (asker: string, answers: readonly Answer[]): ((answer: Answer) => AnswerPrice) => {
  const { tryOut, me, order: state, now } = usePlan()
  const { evening, own, cook } = useNight()
  const order = state.kind === 'current' ? state.order : null
  const key = JSON.stringify(answers)
  const [found, setFound] = useState<{ of: unknown; prices: ReadonlyMap<string, AnswerPrice> }>({ of: null, prices: new Map() })
  const newest = useRef<unknown>(null)
  const around = { evening, now, as: cook ?? undefined, asked: { role: me?.role ?? 'cook', cook: own } } as const
  const look = useRef<typeof around>(around)
  look.current = around

  useEffect(() => {
    if (order === null) return
    const of = { key, order }
    newest.current = of
    setFound({ of: key, prices: new Map() })
    void (async () => {
      for (const answer of JSON.parse(key) as readonly Answer[]) {
        const edit = editOf(look.current.evening, answer)
        const { asked, as } = look.current
        const trial = await tryOut((copy) => {
          for (const say of tellsOf(answer)) carryOutTell(copy, asked, { say, as }, look.current.now())
          edit?.(copy)
        }, asker)
        if (newest.current !== of) return
        const price: AnswerPrice = trial === null ? { kind: 'unknown' } : { kind: 'known', trial }
        setFound(({ prices }) => ({ of: key, prices: new Map([...prices, [JSON.stringify(answer), price]]) }))
      }
    })()
    return () => {
      newest.current = null
    }
  }, [key, order, tryOut, asker])

  return (answer) => (found.of === key ? (found.prices.get(JSON.stringify(answer)) ?? TRYING) : TRYING)
}

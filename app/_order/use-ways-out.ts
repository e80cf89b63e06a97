'use client'

import type * as Y from 'yjs'
import { usePlan } from '#app/_sync/use-plan.ts'
import { coldWords, remedyText } from '#app/_words/clash.ts'
import { faultText } from '#app/_words/fault.ts'
import { refusalText } from '#app/_words/link.ts'
import { namesOf } from '#app/_words/names.ts'
import type { Clash, Remedy } from '#lib/domain/running-order.ts'
import { carryOutClaim } from '#lib/plan/carry-out-claim.ts'
import { isFirst } from '#lib/plan/commands/serve-course.ts'
import { claimOfRemedy, takeRemedy } from '#lib/plan/commands/take-remedy.ts'
import type { Wish } from '#lib/plan/decide-claim.ts'
import { type Look, useLook } from './look.tsx'
import { useTaken } from './taken.tsx'

type GiveTo = Extract<Remedy, { kind: 'give-to' }>

/** Looking at ways out of clashes, and taking them: each is one edit of the plan, or a claim, and can be taken back. */
export const useWaysOut = () => {
  const { evening, me, order, edit, undo, send } = usePlan()
  const { lookAt } = useLook()
  const { note } = useTaken()
  const names = namesOf(evening)
  const before = order.kind === 'none' ? null : order.order
  const textOf = (way: Remedy) => remedyText(way, names, evening).replace(/^./, (letter) => letter.toLowerCase())

  const wordsFor = (way: Remedy) => coldWords(way.kind === 'bring-cold' ? names.dishName(way.dish) : '')

  /** Asks for one after the other; gives why the first that was refused was. */
  const ask = async (wishes: readonly Wish[]): Promise<string | null> => {
    const outcomes = await Promise.all(wishes.map(send))
    const refused = outcomes.find((outcome) => outcome.kind === 'refused')
    return refused?.kind === 'refused' ? refusalText(refused.why, names) : null
  }

  const give = (way: GiveTo, clash: Clash) => {
    const held = evening.claims.find(({ target }) => target === way.step)
    const back: readonly Wish[] =
      held === undefined
        ? [{ kind: 'release', target: way.step, cook: way.cook }]
        : [
            { kind: 'release', target: way.step, cook: way.cook },
            { kind: 'claim', target: way.step, cook: held.cook, ...(held.also ? { also: [...held.also] } : {}) },
          ]
    const takeBack = async () => {
      const why = await ask(back)
      return why === null ? null : `It could not be taken back: ${why}`
    }
    note({ text: `Asked for: ${textOf(way)}.`, clash, before, takeBack: null })
    void ask([claimOfRemedy(evening.claims, way)]).then((why) =>
      note(
        why === null
          ? { text: `Done: ${textOf(way)}.`, clash, before, takeBack }
          : { text: `It was not done: ${why}`, clash: null, before: null, takeBack: null },
      ),
    )
  }

  const take = (way: Remedy, clash: Clash) => {
    if (way.kind === 'give-to') return give(way, clash)
    const made = edit((doc) => takeRemedy(doc, way, wordsFor(way)))
    if (!made.ok) return note({ text: `It was not done. ${faultText(made.error)}`, clash: null, before: null, takeBack: null })
    const takeBack = () => {
      undo()
      return null
    }
    return note({ text: `Done: ${textOf(way)}.`, clash, before, takeBack })
  }

  /** Why this person may not take it; null: they may. */
  const barred = (way: Remedy): string | null => {
    if (me?.role === 'host') return null
    if (way.kind === 'course-later' && isFirst(evening, way.course)) return 'A host says when everybody sits down: ask one.'
    if (way.kind !== 'give-to') return null
    const held = evening.claims.find(({ target }) => target === way.step)
    const mine = me?.cook ?? null
    if (mine !== null && (held ? held.cook === mine : way.cook === mine)) return null
    return `A host can give it away${held ? `, or ${names.cookName(held.cook)}` : ''}: ask them.`
  }

  const make = (way: Remedy) => (copy: Y.Doc) => {
    if (way.kind === 'give-to') {
      const decision = carryOutClaim(copy, { role: 'host', cook: null }, claimOfRemedy(evening.claims, way))
      return decision.kind === 'refused' ? refusalText(decision.why, names) : null
    }
    const made = takeRemedy(copy, way, wordsFor(way))
    return made.ok ? null : faultText(made.error)
  }

  const lookFor = (way: Remedy, clash: Clash): Look => ({
    key: JSON.stringify(way),
    title: textOf(way),
    make: make(way),
    keepWords: 'Take it',
    keep: () => take(way, clash),
    barred: barred(way),
  })

  return { take, barred, lookFor, lookAtWay: (way: Remedy, clash: Clash) => lookAt(lookFor(way, clash)) }
}

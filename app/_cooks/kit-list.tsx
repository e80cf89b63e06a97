'use client'

import { useState } from 'react'
import { newId } from '#app/_frame/new-id.ts'
import { useStrip } from '#app/_frame/strip.tsx'
import { useEdit } from '#app/_frame/use-edit.ts'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Button } from '#app/_ui/button.tsx'
import { countOf, sentence } from '#app/_words/clock.ts'
import { kitText } from '#app/_words/kit-piece.ts'
import { missingKit } from '#lib/domain/kit-wants.ts'
import type { Kit, Kitchen } from '#lib/domain/kitchen.ts'
import { addKit, removeKit } from '#lib/plan/commands/kitchen.ts'
import { KitLine } from './kit-line.tsx'
import css from './kitchens.module.css'
import { kitToAdd } from './usual-kit.ts'

const ORDER: readonly Kit['kind'][] = ['oven', 'ring', 'cold', 'worktop', 'tool']
const MOST = 60

/** What a kitchen has, each thing a sentence, and what can be added to it in one tap. */
export function KitList({ kitchen }: { readonly kitchen: Kitchen }) {
  const { evening } = usePlan()
  const { change, tell } = useEdit()
  const show = useStrip()
  const [fresh, setFresh] = useState<string | null>(null)
  const kit = ORDER.flatMap((kind) => kitchen.kit.filter((piece) => piece.kind === kind))

  const leaveOut = (piece: Kit) => {
    const index = kitchen.kit.indexOf(piece)
    if (!tell((doc) => removeKit(doc, kitchen.id, piece.id))) return
    const without = { ...kitchen, kit: kitchen.kit.filter((other) => other !== piece) }
    const kitchens = evening.kitchens.map((other) => (other.id === kitchen.id ? without : other))
    const wanting = missingKit({ ...evening, kitchens }).length - missingKit(evening).length
    const still = wanting > 0 ? ` It is still wanted in ${countOf(wanting, 'place')}: see below.` : ''
    show(`Left out: ${kitText(piece)}.${still}`, () => change((doc) => addKit(doc, kitchen.id, piece, index)))
  }
  const add = (piece: ReturnType<typeof kitToAdd>[number][1]) => {
    const id = newId()
    if (tell((doc) => addKit(doc, kitchen.id, { ...piece, id }))) setFresh(id)
  }

  return (
    <>
      <ul className={css.kit} aria-label={`Kit of ${kitchen.name}`}>
        {kit.map((piece) => {
          const name = `${sentence(kitText(piece))} of ${kitchen.name}`
          return (
            <li key={piece.id} className={piece.kind === 'oven' ? css.wide : undefined}>
              <span className={css.words}>
                <KitLine kitchen={kitchen} kit={piece} name={name} autoFocus={piece.id === fresh} />
              </span>
              <Button tone="quiet" aria-label={`Leave out: ${name}`} onClick={() => leaveOut(piece)}>
                leave out
              </Button>
            </li>
          )
        })}
      </ul>
      {kitchen.kit.length < MOST ? (
        <details className={css.fold}>
          <summary>Add to it</summary>
          <p className={css.offers}>
            {kitToAdd(kitchen.kit).map(([words, piece]) => (
              <Button key={words} tone="soft" aria-label={`Add to ${kitchen.name}: ${words}`} onClick={() => add(piece)}>
                {words}
              </Button>
            ))}
          </p>
        </details>
      ) : null}
    </>
  )
}

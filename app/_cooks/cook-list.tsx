'use client'

import { useState } from 'react'
import { newId } from '#app/_frame/new-id.ts'
import { useStrip } from '#app/_frame/strip.tsx'
import { useEdit } from '#app/_frame/use-edit.ts'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Button } from '#app/_ui/button.tsx'
import { useDrag } from '#app/_ui/drag.tsx'
import { numberAt, placeAfterMove } from '#app/_ui/move-place.ts'
import { Moves } from '#app/_ui/moves.tsx'
import { claimedText } from '#app/_words/claimed.ts'
import { movedText } from '#app/_words/moved.ts'
import type { Cook } from '#lib/domain/kitchen.ts'
import { usualPresence } from '#lib/domain/presence.ts'
import { addCook } from '#lib/plan/commands/add.ts'
import { moveCook } from '#lib/plan/commands/move.ts'
import { remove, restore } from '#lib/plan/commands/remove.ts'
import { MOST } from '#lib/plan/layout.ts'
import type { Place } from '#lib/plan/order-keys.ts'
import { CookItem } from './cook-item.tsx'
import css from './cooks.module.css'
import type { Member } from './member.ts'

/** The cooks, each folded to what matters, in an order of one's own. */
export function CookList({ members }: { readonly members: readonly Member[] }) {
  const { evening } = usePlan()
  const { change, tell } = useEdit()
  const show = useStrip()
  const [open, setOpen] = useState<string | null>(null)
  const [fresh, setFresh] = useState<string | null>(null)
  const { cooks } = evening

  const move = (cook: Cook, place: Place): string | null =>
    tell((doc) => moveCook(doc, cook.id, place)) ? movedText(cook.name, numberAt(cooks, cook.id, place), cooks.length) : null
  const drag = useDrag(({ id, place }) => {
    const cook = cooks.find((each) => each.id === id)
    return cook ? move(cook, place) : null
  })
  const add = () => {
    const id = newId()
    const presence = cooks[0]?.presence ?? usualPresence(evening.host)
    const cook = { id, name: 'A new cook', host: false, eats: true, pace: 1, presence: [...presence] }
    if (!tell((doc) => addCook(doc, cook))) return
    setOpen(id)
    setFresh(id)
  }
  const away = (cook: Cook) => {
    const theirs = claimedText(evening, cook.id)
    if (!tell((doc) => remove(doc, 'cooks', cook.id))) return
    show(`Removed ${cook.name}.${theirs ? ` Nobody has what was theirs: ${theirs}.` : ''}`, () =>
      change((doc) => restore(doc, 'cooks', cook.id)),
    )
  }

  return (
    <>
      {cooks.length === 0 ? <p className={css.quiet}>Nobody yet, so nothing can be put in order.</p> : null}
      <ul {...drag.list('cooks', css.list)}>
        {cooks.map((cook, index) => (
          <li key={cook.id} {...drag.item(cook.id, css.item)}>
            <CookItem
              cook={cook}
              member={members.find((member) => member.cook === cook.id)}
              isOpen={open === cook.id}
              isFresh={fresh === cook.id}
              onToggle={() => setOpen(open === cook.id ? null : cook.id)}
              moves={
                <span className={css.moves}>
                  {drag.handle(cook.id)}
                  <Moves
                    name={cook.name}
                    isFirst={index === 0}
                    isLast={index === cooks.length - 1}
                    onMove={(by) => {
                      const place = placeAfterMove(cooks, cook.id, by)
                      const said = place && move(cook, place)
                      if (said) drag.say(said)
                    }}
                    onRemove={() => away(cook)}
                  />
                </span>
              }
            />
          </li>
        ))}
      </ul>
      {drag.said}
      {cooks.length < MOST.cooks ? (
        <Button tone="soft" onClick={add}>
          Add a cook
        </Button>
      ) : (
        <p className={css.quiet}>That is as many cooks as an evening holds.</p>
      )}
    </>
  )
}

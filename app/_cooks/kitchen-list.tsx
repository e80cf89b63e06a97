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
import { countOf, sentence } from '#app/_words/clock.ts'
import { templateWords } from '#app/_words/kitchen-template.ts'
import { movedText } from '#app/_words/moved.ts'
import type { Kitchen } from '#lib/domain/kitchen.ts'
import { KITCHEN_TEMPLATES, type KitchenTemplate, templateKit } from '#lib/domain/kitchen-templates.ts'
import { addKitchen } from '#lib/plan/commands/add.ts'
import { moveKitchen } from '#lib/plan/commands/move.ts'
import { remove, restore } from '#lib/plan/commands/remove.ts'
import { MOST } from '#lib/plan/layout.ts'
import type { Place } from '#lib/plan/order-keys.ts'
import css from './cooks.module.css'
import { KitchenItem } from './kitchen-item.tsx'
import fold from './kitchens.module.css'

/** The kitchens, and another one by its kind in two taps. */
export function KitchenList() {
  const { evening } = usePlan()
  const { change, tell } = useEdit()
  const show = useStrip()
  const { kitchens } = evening
  const [open, setOpen] = useState<string | null>(null)
  const [fresh, setFresh] = useState<string | null>(null)

  const move = (kitchen: Kitchen, place: Place): string | null =>
    tell((doc) => moveKitchen(doc, kitchen.id, place))
      ? movedText(kitchen.name, numberAt(kitchens, kitchen.id, place), kitchens.length)
      : null
  const drag = useDrag(({ id, place }) => {
    const kitchen = kitchens.find((each) => each.id === id)
    return kitchen ? move(kitchen, place) : null
  })
  const add = (template: KitchenTemplate) => {
    const id = newId()
    const kitchen = { id, name: templateWords[template].name, toTable: 'PT10M', kit: templateKit(template, newId) }
    if (!tell((doc) => addKitchen(doc, kitchen))) return
    setOpen(id)
    setFresh(id)
  }
  const away = (kitchen: Kitchen) => {
    if (kitchen.id === evening.host)
      return show(
        kitchens.length > 1
          ? 'This is the kitchen beside the table. Say first, in another kitchen, that it is the one beside the table.'
          : 'A dinner needs a kitchen beside the table. Change this one, or take another kind of kitchen for it.',
        null,
      )
    if (!tell((doc) => remove(doc, 'kitchens', kitchen.id))) return
    show(`Removed ${kitchen.name}.${leftText(kitchen.id)}`, () => change((doc) => restore(doc, 'kitchens', kitchen.id)))
  }
  const leftText = (kitchen: string): string => {
    const dishes = evening.dishes.filter((dish) => dish.kitchen === kitchen).length
    const cooks = evening.cooks.filter((cook) => cook.presence.some((hours) => hours.kitchen === kitchen)).length
    const made = dishes > 0 ? ` ${sentence(countOf(dishes, 'dish', 'dishes'))} made there: now beside the table.` : ''
    return `${made}${cooks > 0 ? ` ${sentence(countOf(cooks, 'cook'))} had hours there: without them now.` : ''}`
  }

  return (
    <>
      <ul {...drag.list('kitchens', css.list)}>
        {kitchens.map((kitchen, index) => (
          <li key={kitchen.id} {...drag.item(kitchen.id, css.item)}>
            <KitchenItem
              kitchen={kitchen}
              isOpen={open === kitchen.id}
              isFresh={fresh === kitchen.id}
              onToggle={() => setOpen(open === kitchen.id ? null : kitchen.id)}
              moves={
                <span className={css.moves}>
                  {drag.handle(kitchen.id)}
                  <Moves
                    name={kitchen.name}
                    isFirst={index === 0}
                    isLast={index === kitchens.length - 1}
                    onMove={(by) => {
                      const place = placeAfterMove(kitchens, kitchen.id, by)
                      const said = place && move(kitchen, place)
                      if (said) drag.say(said)
                    }}
                    onRemove={() => away(kitchen)}
                  />
                </span>
              }
            />
          </li>
        ))}
      </ul>
      {drag.said}
      {kitchens.length < MOST.kitchens ? (
        <details className={fold.fold}>
          <summary>Add a kitchen</summary>
          <p className={fold.offers}>
            {KITCHEN_TEMPLATES.map((template) => (
              <Button
                key={template}
                tone="soft"
                onClick={() => add(template)}
                aria-label={`Add: ${templateWords[template].name}`}
              >
                {templateWords[template].name}
              </Button>
            ))}
          </p>
        </details>
      ) : null}
    </>
  )
}

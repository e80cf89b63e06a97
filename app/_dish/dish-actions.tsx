'use client'

import { useRouter } from 'next/navigation'
import { newId } from '#app/_frame/new-id.ts'
import { useStrip } from '#app/_frame/strip.tsx'
import { useEdit } from '#app/_frame/use-edit.ts'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Button } from '#app/_ui/button.tsx'
import type { Dish } from '#lib/domain/menu.ts'
import { bringDish } from '#lib/plan/commands/bring.ts'
import { remove } from '#lib/plan/commands/remove.ts'
import { copiedDish } from '#lib/plan/copy-dish.ts'
import css from './dish.module.css'

/** The dish once more beside itself, and the dish away, with the way back. */
export function DishActions({ dish, eveningId }: { readonly dish: Dish; readonly eveningId: string }) {
  const { evening } = usePlan()
  const { tell, removeWithStrip } = useEdit()
  const show = useStrip()
  const router = useRouter()
  const again = () => {
    const there = new Set(evening.steps.map((step) => step.id))
    const copy = copiedDish(evening, dish.id, newId, (step) => there.has(step))
    if (!copy) return
    const named = { ...copy, dish: { ...copy.dish, name: `${dish.name}, again`.slice(0, 120) } }
    if (!tell((doc) => bringDish(doc, named, { kind: 'after', id: dish.id }))) return
    show(`This is the copy of ${dish.name}.`, () => tell((doc) => remove(doc, 'dishes', copy.dish.id)))
    router.push(`/evenings/${eveningId}/menu/${copy.dish.id}`)
  }
  const away = () => {
    removeWithStrip('dishes', dish.id, dish.name)
    router.push(`/evenings/${eveningId}/menu`)
  }
  return (
    <p className={css.actions}>
      <Button tone="word" onClick={again}>
        Copy this dish
      </Button>
      <Button tone="late" onClick={away}>
        Remove this dish
      </Button>
    </p>
  )
}

import type * as Y from 'yjs'
import type { Evening } from '#lib/domain/evening.ts'
import { setDishKitchen } from '#lib/plan/commands/kitchen-of-dish.ts'
import { moveDish } from '#lib/plan/commands/move.ts'
import { type Edited, setFields } from '#lib/plan/commands/set.ts'
import type { DishEdit } from './dish-sentences.ts'

/** Writes it to the plan, all or none. */
export const applyDishEdit = (doc: Y.Doc, evening: Evening, dish: string, edit: DishEdit, newId: () => string): Edited => {
  switch (edit.kind) {
    case 'fields':
      return setFields(doc, 'dishes', dish, edit.patch)
    case 'course':
      return moveDish(doc, dish, edit.course, { kind: 'last' })
    case 'kitchen': {
      const nameOf = (list: readonly { readonly id: string; readonly name: string }[], id: string) =>
        list.find((each) => each.id === id)?.name ?? ''
      const does = `Carry ${nameOf(evening.dishes, dish)} to ${nameOf(evening.kitchens, evening.host)}`.slice(0, 400)
      return setDishKitchen(doc, evening, dish, edit.kitchen, { id: newId(), does })
    }
  }
}

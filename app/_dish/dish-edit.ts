import type * as Y from 'yjs'
import { means, type Said } from '#app/_ui/parts.ts'
import type { Evening } from '#lib/domain/evening.ts'
import { setDishKitchen } from '#lib/plan/commands/kitchen-of-dish.ts'
import { moveDish } from '#lib/plan/commands/move.ts'
import { type Edited, type Patch, setFields } from '#lib/plan/commands/set.ts'

/** What a sentence about a dish can change: its own fields, its course, or the kitchen it is made in, which makes it be carried. */
export type DishEdit =
  | { readonly kind: 'fields'; readonly patch: Patch<'dishes'> }
  | { readonly kind: 'course'; readonly course: string }
  | { readonly kind: 'kitchen'; readonly kitchen: string }

/** What words come to that change fields of the dish. */
export const meansFields = (patch: Patch<'dishes'>): Said<DishEdit> => means({ kind: 'fields', patch })

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

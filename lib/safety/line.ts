import type { Evening } from '#lib/domain/evening.ts'
import type { Step } from '#lib/domain/menu.ts'

/** The step and all that it waits for within its dish, however far back. */
export const lineOf = (evening: Evening, step: Step): ReadonlySet<string> => {
  const byId = new Map(evening.steps.flatMap((each) => (each.dish === step.dish ? [[each.id, each] as const] : [])))
  const found = new Set<string>()
  const todo = [step.id]
  for (let id = todo.pop(); id !== undefined; id = todo.pop()) {
    const each = byId.get(id)
    if (!each || found.has(id)) continue
    found.add(id)
    todo.push(...each.after.map((after) => after.step))
  }
  return found
}

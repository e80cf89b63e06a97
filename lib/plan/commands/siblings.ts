import * as Y from 'yjs'
import { ENTRY_ROOTS, type EntryRoot, entryMap, rootMap } from '#lib/plan/layout.ts'

/** The entry that this id has and that is not removed. */
export const presentEntry = (doc: Y.Doc, root: EntryRoot, id: string): Y.Map<unknown> | null => {
  const map = entryMap(doc, root, id)
  return map && map.size > 0 && map.get('gone') !== true ? map : null
}

/** Whether any root uses the id, also for what is removed. */
export const idTaken = (doc: Y.Doc, id: string): boolean =>
  ENTRY_ROOTS.some((root) => rootMap(doc, root)?.has(id)) ||
  [...(rootMap(doc, 'kitchens')?.values() ?? [])].some((kitchen) => {
    const kit: unknown = kitchen instanceof Y.Map ? kitchen.get('kit') : undefined
    return Array.isArray(kit) && kit.some((one) => one?.id === id)
  })

export interface Sibling {
  readonly id: string
  readonly order: string
}

const PARENT: { readonly [root in EntryRoot]: string | null } = {
  kitchens: null,
  cooks: null,
  courses: null,
  dishes: 'course',
  steps: 'dish',
  ingredients: 'dish',
  drinks: 'course',
  shopping: null,
  ticks: null,
  offers: null,
}

/** The field that names an entry's parent, or null when the root has no parents. */
export const parentField = (root: EntryRoot): string | null => PARENT[root]

/** The entries of a root under one parent that are not removed, in order, without `id` itself. */
export const siblingsOf = (doc: Y.Doc, root: EntryRoot, parent: unknown, id: string): Sibling[] => {
  const field = PARENT[root]
  const found: Sibling[] = []
  for (const [other, map] of rootMap(doc, root)?.entries() ?? []) {
    if (other === id || !(map instanceof Y.Map) || map.size === 0 || map.get('gone') === true) continue
    if (field !== null && map.get(field) !== parent) continue
    const order = map.get('order')
    found.push({ id: other, order: typeof order === 'string' ? order : '' })
  }
  return found.toSorted((a, b) => (a.order < b.order ? -1 : a.order > b.order ? 1 : a.id < b.id ? -1 : 1))
}

import { sameTool } from './kit-wants.ts'
import type { Kit } from './kitchen.ts'

/** Whether two pieces are the same thing, whatever their numbers: what one kitchen has in the place of the other. */
const isSameThing = (a: Kit, b: Kit): boolean => {
  switch (a.kind) {
    case 'ring':
      return b.kind === 'ring' && a.size === b.size
    case 'oven':
      return b.kind === 'oven'
    case 'cold':
      return b.kind === 'cold' && a.keep === b.keep
    case 'worktop':
      return b.kind === 'worktop'
    case 'tool':
      return b.kind === 'tool' && sameTool(a.tool, b.tool)
  }
}

/**
 * The wanted kit, each piece under the id of the same thing in the present kit where there is one: steps that name an
 * oven keep it. Ovens of the same name pair first, then in their order.
 */
export const keepIds = (present: readonly Kit[], wanted: readonly Kit[]): Kit[] => {
  const left = [...present]
  const ids = new Map<Kit, string>()
  const pair = (isPair: (was: Kit, is: Kit) => boolean) => {
    for (const piece of wanted) {
      if (ids.has(piece)) continue
      const at = left.findIndex((was) => isPair(was, piece))
      const [taken] = at < 0 ? [] : left.splice(at, 1)
      if (taken) ids.set(piece, taken.id)
    }
  }
  pair((was, is) => was.kind === 'oven' && is.kind === 'oven' && was.name === is.name)
  pair(isSameThing)
  return wanted.map((piece) => ({ ...piece, id: ids.get(piece) ?? piece.id }))
}

/** How a piece of kit differs between two kitchens. */
export type KitChange =
  | { readonly kind: 'new'; readonly is: Kit }
  | { readonly kind: 'gone'; readonly was: Kit }
  | { readonly kind: 'other'; readonly was: Kit; readonly is: Kit }

/** What differs between two states of a kitchen's kit, by the pieces' ids: what comes, what goes, what is not as it was. */
export const kitChanges = (before: readonly Kit[], after: readonly Kit[]): KitChange[] => {
  const was = new Map(before.map((piece) => [piece.id, piece]))
  const is = new Set(after.map((piece) => piece.id))
  return [
    ...before.flatMap((piece): KitChange[] => (is.has(piece.id) ? [] : [{ kind: 'gone', was: piece }])),
    ...after.flatMap((piece): KitChange[] => {
      const old = was.get(piece.id)
      if (!old) return [{ kind: 'new', is: piece }]
      return isEqual(old, piece) ? [] : [{ kind: 'other', was: old, is: piece }]
    }),
  ]
}

const isEqual = (a: Kit, b: Kit): boolean => {
  const [left, right] = [new Map(Object.entries(a)), Object.entries(b)]
  return left.size === right.length && right.every(([name, value]) => left.get(name) === value)
}

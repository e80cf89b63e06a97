import type { Place } from '#lib/plan/order-keys.ts'

/** Where an entry goes when it is moved by one among its siblings; null when it is at that end already. */
export const placeAfterMove = (siblings: readonly { readonly id: string }[], id: string, by: -1 | 1): Place | null => {
  const at = siblings.findIndex((sibling) => sibling.id === id)
  if (at < 0) return null
  if (by === 1) {
    const next = siblings[at + 1]
    return next ? { kind: 'after', id: next.id } : null
  }
  if (at === 0) return null
  const before = siblings[at - 2]
  return before ? { kind: 'after', id: before.id } : { kind: 'first' }
}

/** The number from 0 that an entry will have at that place among its siblings, whether it is one of them already or not. */
export const numberAt = (siblings: readonly { readonly id: string }[], id: string, place: Place): number => {
  const others = siblings.filter((sibling) => sibling.id !== id)
  if (place.kind === 'first') return 0
  const found = place.kind === 'after' ? others.findIndex((other) => other.id === place.id) : -1
  return found < 0 ? others.length : found + 1
}

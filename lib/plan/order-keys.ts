import { generateKeyBetween, generateNKeysBetween } from 'fractional-indexing'
import { OrderKey } from '#lib/domain/atoms.ts'

/** Where among its siblings: first, after one of them, or (absent) last. */
export type Place = { readonly kind: 'first' } | { readonly kind: 'after'; readonly id: string } | { readonly kind: 'last' }

interface Sibling {
  readonly id: string
  readonly order: string
}

/** `n` keys in ascending order. */
export const spreadKeys = (n: number): string[] => generateNKeysBetween(null, null, n)

/**
 * Keys that put `id` at the place among its siblings, which are sorted and without it. One key when there is room
 * between the neighbours; when there is none (two equal keys, keys from elsewhere, keys grown too long), new keys for all.
 * A place after somebody unknown is the last one.
 */
export const keysFor = (siblings: readonly Sibling[], id: string, place: Place): ReadonlyMap<string, string> => {
  const found = place.kind === 'after' ? siblings.findIndex((sibling) => sibling.id === place.id) : -1
  const index = place.kind === 'first' ? 0 : found >= 0 ? found + 1 : siblings.length
  const key = keyBetween(siblings[index - 1]?.order ?? null, siblings[index]?.order ?? null)
  if (key !== null) return new Map([[id, key]])
  const ids = [
    ...siblings.slice(0, index).map((sibling) => sibling.id),
    id,
    ...siblings.slice(index).map((sibling) => sibling.id),
  ]
  const keys = spreadKeys(ids.length)
  return new Map(ids.map((one, at) => [one, keys[at] ?? '']))
}

const keyBetween = (before: string | null, after: string | null): string | null => {
  if (before !== null && after !== null && before >= after) return null
  const key = tryKey(before, after)
  return key !== null && OrderKey.safeParse(key).success && (before ?? '') < key && (after === null || key < after) ? key : null
}

/** The library throws on keys that it did not make: evenings from elsewhere have such. */
const tryKey = (before: string | null, after: string | null): string | null => {
  try {
    return generateKeyBetween(before, after)
  } catch {
    return null
  }
}

import type { Evening } from '#lib/domain/evening.ts'

type Listed = 'kitchens' | 'cooks' | 'courses' | 'dishes' | 'steps'

/** What is only said of things, and moves nothing. */
const WORDS: Readonly<Record<Listed, readonly string[]>> = {
  kitchens: ['name'],
  cooks: ['name'],
  courses: ['name', 'service'],
  dishes: ['name', 'notes', 'source'],
  steps: ['does', 'until'],
}
const LISTS = ['kitchens', 'cooks', 'courses', 'dishes', 'steps'] as const
const OWN = ['id', 'date', 'zone', 'guestsFrom', 'sitDown', 'covers', 'host', 'claims', 'night'] as const

const sameValue = (a: unknown, b: unknown): boolean => a === b || JSON.stringify(a) === JSON.stringify(b)

const sameBut = (words: readonly string[], a: object, b: object): boolean => {
  if (a === b) return true
  const names = new Set([...Object.keys(a), ...Object.keys(b)])
  return [...names].every((name) => words.includes(name) || sameValue(Reflect.get(a, name), Reflect.get(b, name)))
}

/**
 * Whether two readings of a plan differ in words alone, so that the same running order is surely right for both. Much
 * cheaper than the hash, which decides; a no may still turn out to be the same problem.
 */
export const sameProblem = (a: Evening, b: Evening): boolean =>
  OWN.every((name) => sameValue(a[name], b[name])) &&
  LISTS.every((list) => {
    const [before, after]: readonly (readonly object[])[] = [a[list], b[list]]
    return before?.length === after?.length && before?.every((one, at) => sameBut(WORDS[list], one, after?.[at] ?? {}))
  })

const MOST_REMEMBERED = 20_000

/** What was worked out for this key before, or is now: for what a plan asks hundreds of times. */
export const remembered = <T>(known: Map<string, T>, key: string, work: () => T): T => {
  const found = known.get(key)
  if (found !== undefined) return found
  const made = work()
  if (known.size >= MOST_REMEMBERED) known.clear()
  known.set(key, made)
  return made
}

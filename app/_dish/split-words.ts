import { sentence } from '#app/_words/clock.ts'

const THEN = /(?:,|;|\.)?\s+(?:and\s+)?then\s+|;\s+|\.\s+(?=\S)/i

/** "Peel the potatoes, then boil them" → "Peel the potatoes" and "Boil them"; null when the words are of one thing. */
export const splitWords = (does: string): readonly [first: string, then: string] | null => {
  const found = THEN.exec(does)
  if (!found) return null
  const first = does.slice(0, found.index).trim()
  const then = does.slice(found.index + found[0].length).trim()
  return first && then ? [first, sentence(then)] : null
}

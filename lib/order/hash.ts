import { digest } from 'lib0/hash/sha256'
import { encodeUtf8 } from 'lib0/string'
import type { Evening } from '#lib/domain/evening.ts'
import { type ProblemOptions, toProblem } from './to-problem.ts'

/** JSON with sorted keys and without undefined fields: equal values give equal text. */
export const canonicalJson = (value: unknown): string => {
  if (Array.isArray(value)) return `[${value.map((item) => canonicalJson(item ?? null)).join(',')}]`
  if (value === null || typeof value !== 'object') return JSON.stringify(value)
  const fields = Object.entries(value)
    .filter(([, field]) => field !== undefined)
    .sort(([a], [b]) => (a < b ? -1 : 1))
  return `{${fields.map(([key, field]) => `${JSON.stringify(key)}:${canonicalJson(field)}`).join(',')}}`
}

/**
 * Hex SHA-256 of the problem, with the evening's id, date and zone: it changes when the running order may, and not
 * when a note, a name or a drink does.
 */
export const problemHash = (evening: Evening, options: ProblemOptions = {}): string => {
  const { problem } = toProblem(evening, options)
  const text = canonicalJson({ evening: evening.id, date: evening.date, zone: evening.zone, problem })
  return Array.from(digest(encodeUtf8(text)), (byte) => byte.toString(16).padStart(2, '0')).join('')
}

import { readFileSync } from 'node:fs'
import type { Evening } from '#lib/domain/evening.ts'
import { parseEvening } from '#lib/domain/parse.ts'

/** An evening of tests/support/evenings/. Throws when the file is none. */
export const loadEvening = (name: 'a-lamb' | 'c-pork' | 'potluck'): Evening => {
  const parsed = parseEvening(JSON.parse(readFileSync(new URL(`evenings/${name}.json`, import.meta.url), 'utf8')))
  if (parsed.ok) return parsed.value
  throw new Error(parsed.error.map(({ path, why }) => `${path} ${why}`).join('; '))
}

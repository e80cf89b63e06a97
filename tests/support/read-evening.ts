import { readFileSync } from 'node:fs'
import type { Evening } from '#lib/domain/evening.ts'
import { parseEvening } from '#lib/domain/parse.ts'

/** An evening of tests/support/evenings, by its file's name. */
export const readEvening = (name: string): Evening => {
  const parsed = parseEvening(JSON.parse(readFileSync(new URL(`./evenings/${name}.json`, import.meta.url), 'utf8')))
  if (!parsed.ok) throw new Error(`${name} is no evening: ${JSON.stringify(parsed.error)}`)
  return parsed.value
}

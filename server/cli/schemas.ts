import { readFileSync, writeFileSync } from 'node:fs'
import { z } from 'zod'
import { Evening } from '#lib/domain/evening.ts'
import { RunningOrder } from '#lib/domain/running-order.ts'

/** The published JSON Schemas (draft 2020-12) by file name in docs/. */
export const schemas = (): Record<string, string> =>
  Object.fromEntries(
    [
      ['evening.schema.json', 'An evening of Tableward', Evening] as const,
      ['running-order.schema.json', 'A running order of Tableward', RunningOrder] as const,
    ].map(([file, title, schema]) => {
      const json = { title, ...z.toJSONSchema(schema, { io: 'input', unrepresentable: 'any' }) }
      return [file, `${JSON.stringify(json, null, 2)}\n`]
    }),
  )

const path = (file: string) => new URL(`../../docs/${file}`, import.meta.url)

/** The schema as it stands in docs/. */
export const published = (file: string): string => readFileSync(path(file), 'utf8')

if (process.argv[1]?.endsWith('schemas.ts')) {
  for (const [file, text] of Object.entries(schemas())) writeFileSync(path(file), text)
}

import * as z from 'zod/mini'
import { mediumDate } from '#app/_words/clock.ts'

/** An evening within the file of all of one's own. */
export interface Kept {
  readonly words: string
  /** The evening as a file of its own. */
  readonly file: File
}

const Own = z.object({
  format: z.literal('tableward-account/1'),
  evenings: z.array(z.object({ evening: z.nullable(z.looseObject({ name: z.string(), date: z.string() })) })),
})

/** The evenings in a file of all of one's own, the latest first; none in any other file, which is then taken as an evening itself. */
export const keptEvenings = async (file: File): Promise<readonly Kept[]> => {
  const own = Own.safeParse(parsed(await file.text()))
  if (!own.success) return []
  return own.data.evenings
    .flatMap(({ evening }) => (evening === null ? [] : [evening]))
    .toSorted((a, b) => (a.date < b.date ? 1 : -1))
    .map((evening) => ({
      words: `${evening.name}, ${mediumDate(evening.date)}`,
      file: new File([JSON.stringify(evening)], file.name, { type: 'application/json' }),
    }))
}

const parsed = (text: string): unknown => {
  try {
    return JSON.parse(text)
  } catch {
    return null
  }
}

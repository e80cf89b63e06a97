import * as z from 'zod/mini'
import type { Shelf } from '#app/_sync/shelf.ts'

export type Shape = 'worktop' | 'mine' | 'table'

/** How a device calls its cook. */
const Choices = z.object({ sound: z.boolean(), speech: z.boolean(), vibration: z.boolean(), awake: z.boolean() })
export type Choices = z.infer<typeof Choices>

/** What nobody has chosen: a tablet on the worktop stays lit, a phone in a pocket does not. */
const usual = (shape: Shape): Choices => ({ sound: true, speech: false, vibration: true, awake: shape === 'worktop' })

const KEY = 'tableward/alerts'

export const readChoices = (shelf: Shelf, shape: Shape): Choices => {
  try {
    return { ...usual(shape), ...z.partial(Choices).parse(JSON.parse(shelf.get(KEY) ?? '{}')) }
  } catch {
    return usual(shape)
  }
}

export const writeChoice = (shelf: Shelf, shape: Shape, change: Partial<Choices>): Choices => {
  const chosen = { ...readChoices(shelf, shape), ...change }
  shelf.set(KEY, JSON.stringify(chosen))
  return chosen
}

'use server'

import { eveningRefusalText } from '#app/_evenings/refusal.ts'
import { copiedText } from '#app/_words/copied.ts'
import type { Observation } from '#lib/learning/observation.ts'
import { currentUser, requireUser } from '#server/auth/who.ts'
import { putDish, sayOfDish, Word } from '#server/learning/library.ts'
import { readMemory } from '#server/learning/memory.ts'

/** What steps took on other evenings that one may know of; none where one has no seat. It sends nobody to sign in: a step was only opened. */
export const memoryAction = async (eveningId: string): Promise<readonly Observation[]> => {
  const user = await currentUser()
  if (!user) return []
  const read = await readMemory(user.id, eveningId)
  return read.ok ? read.value : []
}

/** Writes down how one found a dish; gives what is wrong, or null. */
export const sayOfDishAction = async (word: unknown): Promise<string | null> => {
  const user = await requireUser()
  const parsed = Word.safeParse(word)
  if (!parsed.success) return 'Write at most 400 letters in one line.'
  const said = await sayOfDish(user.id, parsed.data)
  return said.ok ? null : eveningRefusalText(said.error)
}

interface Place {
  readonly eveningId: string
  readonly dish: string
}

/** Puts a dish into a course of another evening: what came of it, in words, and where it is now. */
export const putDishAction = async (
  from: Place,
  into: { readonly eveningId: string; readonly course: string },
): Promise<{ readonly says: string; readonly to: string | null }> => {
  const user = await requireUser()
  const put = await putDish(user.id, from, into)
  if (!put.ok)
    return {
      says:
        put.error.kind === 'too-many'
          ? 'That course is gone, or the evening is full. Load the page again.'
          : eveningRefusalText(put.error),
      to: null,
    }
  return { says: copiedText(put.value.name, put.value.cuts), to: `/evenings/${into.eveningId}/menu/${put.value.dish}` }
}

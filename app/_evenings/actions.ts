'use server'

import { redirect } from 'next/navigation'
import { fileRefusalText } from '#app/_words/refused.ts'
import { EVENING_FORMAT } from '#lib/domain/evening.ts'
import { requireUser } from '#server/auth/who.ts'
import { importEvening } from '#server/evenings/file.ts'
import { eveningRefusalText } from './refusal.ts'

export interface ImportAnswer {
  readonly message: string | null
  /** Each refused field of the file. */
  readonly fields: readonly string[]
  readonly more: number
}

const LARGEST_BYTES = 4 * 1024 * 1024
const SHOWN = 12

export const importEveningAction = async (_before: ImportAnswer, form: FormData): Promise<ImportAnswer> => {
  const user = await requireUser()
  const file = form.get('file')
  const refused = (message: string): ImportAnswer => ({ message, fields: [], more: 0 })
  if (!(file instanceof File) || file.size === 0) return refused('Choose an evening file first.')
  if (file.size > LARGEST_BYTES) return refused('This file is larger than 4 MB: it is no evening file.')
  const made = await importEvening(user.id, await file.text())
  if (!made.ok) {
    if (made.error.kind !== 'invalid') return refused(eveningRefusalText(made.error))
    const { refusals } = made.error
    // What does not even say that it is an evening is told so, and not what every field of one would be.
    if (refusals.some(({ path }) => path === 'format'))
      return refused(
        `“${file.name}” is no evening file from Tableward: it has no format “${EVENING_FORMAT}”. Nothing was made of it.`,
      )
    return {
      message: `“${file.name}” is not an evening as it stands. Nothing was made of it.`,
      fields: refusals.slice(0, SHOWN).map(fileRefusalText),
      more: Math.max(0, refusals.length - SHOWN),
    }
  }
  redirect(`/evenings/${made.value.eveningId}/menu`)
}

import { eveningRefusalText } from '#app/_evenings/refusal.ts'
import { refusedByField } from '#app/_words/refused.ts'
import { currentUser } from '#server/auth/who.ts'
import { createEvening } from '#server/evenings/create.ts'
import { readJson } from '#server/web/read-json.ts'

/** More than the largest menu that an evening holds. */
const MOST_BYTES = 3_000_000

const refuse = (status: number, message: string, fields: Readonly<Record<string, string>> = {}): Response =>
  Response.json({ message, fields }, { status })

/** Makes an evening, with its menu when there is one, in one go. */
export const POST = async (request: Request): Promise<Response> => {
  const user = await currentUser()
  if (!user) return refuse(401, 'You are signed out. Sign in in another tab, then try again: what you wrote stays here.')
  const data = await readJson(request, MOST_BYTES)
  if (!data.ok)
    return data.error === 'too-large'
      ? refuse(413, 'This menu is larger than an evening can be. Take some of it away.')
      : refuse(400, 'The server did not understand that. Load the page again: what you wrote is kept.')
  const made = await createEvening(user.id, data.value)
  if (made.ok) return Response.json({ id: made.value.eveningId }, { status: 201 })
  if (made.error.kind !== 'invalid') return refuse(403, eveningRefusalText(made.error))
  return refuse(422, 'Something needs another look.', refusedByField(made.error.refusals))
}

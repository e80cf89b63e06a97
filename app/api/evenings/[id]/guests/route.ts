import { sendLetter } from '#app/_reply/letter.ts'
import { guestRefusedText } from '#app/_words/guest-refused.ts'
import { currentUser } from '#server/auth/who.ts'
import { doGuestCommand } from '#server/guests/do-command.ts'
import type { GuestRefusal } from '#server/guests/refusal.ts'
import { tableOf } from '#server/guests/table.ts'
import { readJson } from '#server/web/read-json.ts'

interface Context {
  readonly params: Promise<{ readonly id: string }>
}

const MOST_BYTES = 64 * 1024
const SIGNED_OUT = 'You are signed out. Sign in in another tab, then try again.'

const STATUS: Readonly<Record<GuestRefusal['kind'], number>> = {
  'not-found': 404,
  'not-allowed': 403,
  invalid: 422,
  gone: 409,
  withdrawn: 409,
  'too-many': 409,
  promised: 409,
  'no-mail': 502,
}

const answer = (status: number, data: unknown): Response =>
  Response.json(data, { status, headers: { 'cache-control': 'private, no-store' } })

const refuse = (refusal: GuestRefusal): Response =>
  answer(STATUS[refusal.kind], { kind: refusal.kind, message: guestRefusedText(refusal) })

/** The guests and their invitations, for hosts. */
export const GET = async (_request: Request, { params }: Context): Promise<Response> => {
  const user = await currentUser()
  if (!user) return answer(401, { kind: 'signed-out', message: SIGNED_OUT })
  const table = await tableOf(user.id, (await params).id)
  return table.ok ? answer(200, table.value) : refuse(table.error)
}

/** One command of a host about them (server/guests/command.ts). */
export const POST = async (request: Request, { params }: Context): Promise<Response> => {
  const user = await currentUser()
  if (!user) return answer(401, { kind: 'signed-out', message: SIGNED_OUT })
  const { id } = await params
  const data = await readJson(request, MOST_BYTES)
  const done = await doGuestCommand(user.id, id, data.ok ? data.value : null, sendLetter(id))
  return done.ok ? answer(200, done.value) : refuse(done.error)
}

import { currentUser } from '#server/auth/who.ts'
import { live } from '#server/live.ts'
import { removeDevice } from '#server/push/devices.ts'
import { readJson } from '#server/web/read-json.ts'

const MOST_BYTES = 4 * 1024

/** The key by which a browser lets this server call it, and no other. */
export const GET = async (): Promise<Response> => {
  const user = await currentUser()
  if (!user) return new Response(null, { status: 401 })
  return Response.json({ key: live().push.publicKey }, { headers: { 'cache-control': 'private, no-store' } })
}

/** This browser is not called for this person any more. */
export const DELETE = async (request: Request): Promise<Response> => {
  const user = await currentUser()
  if (!user) return new Response(null, { status: 401 })
  const data = await readJson(request, MOST_BYTES)
  const removed = await removeDevice(user.id, data.ok ? data.value : null)
  return new Response(null, { status: removed.ok ? 204 : 422 })
}

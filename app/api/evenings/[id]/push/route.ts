import { currentUser } from '#server/auth/who.ts'
import { addDevice } from '#server/push/devices.ts'
import { readJson } from '#server/web/read-json.ts'

interface Context {
  readonly params: Promise<{ readonly id: string }>
}

const MOST_BYTES = 4 * 1024

/** From now on this browser is called for what concerns its cook of the evening, also while it sleeps. */
export const POST = async (request: Request, { params }: Context): Promise<Response> => {
  const user = await currentUser()
  if (!user) return new Response(null, { status: 401 })
  const data = await readJson(request, MOST_BYTES)
  const added = await addDevice(user.id, (await params).id, data.ok ? data.value : null)
  return new Response(null, { status: added.ok ? 204 : added.error.kind === 'not-found' ? 404 : 422 })
}

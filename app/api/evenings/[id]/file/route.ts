import { currentUser } from '#server/auth/who.ts'
import { exportEvening } from '#server/evenings/file.ts'

/** The evening as a file to keep. Whoever has no seat there is told what is told of an evening that does not exist. */
export const GET = async (_request: Request, { params }: { params: Promise<{ id: string }> }): Promise<Response> => {
  const user = await currentUser()
  if (!user) return new Response('Sign in first.\n', { status: 401 })
  const file = await exportEvening(user.id, (await params).id)
  if (!file.ok) return new Response('There is no such evening.\n', { status: 404 })
  return new Response(file.value.text, {
    headers: {
      'content-type': 'application/json; charset=utf-8',
      'content-disposition': `attachment; filename="${file.value.name}"`,
      'cache-control': 'private, no-store',
    },
  })
}

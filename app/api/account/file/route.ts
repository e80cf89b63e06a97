import { exportAccount } from '#server/auth/own-data.ts'
import { currentUser } from '#server/auth/who.ts'
import { live } from '#server/live.ts'

/** All of one's own in one file: the account, the evenings, what was chosen, what was changed. */
export const GET = async (): Promise<Response> => {
  const user = await currentUser()
  if (!user) return new Response('Sign in first.\n', { status: 401 })
  const seconds = await live().limits.try('own-data', user.id)
  if (seconds > 0)
    return new Response('That was often enough for now. Try again later.\n', {
      status: 429,
      headers: { 'retry-after': String(seconds) },
    })
  const text = await exportAccount(user.id, Date.now())
  if (text === null) return new Response('There is no such account.\n', { status: 404 })
  return new Response(text, {
    headers: {
      'content-type': 'application/json; charset=utf-8',
      'content-disposition': 'attachment; filename="tableward-account.json"',
      'cache-control': 'private, no-store',
    },
  })
}

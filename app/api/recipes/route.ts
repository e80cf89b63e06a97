import * as z from 'zod/mini'
import { pageRefusalText } from '#app/_words/page-refusal.ts'
import { currentUser } from '#server/auth/who.ts'
import { bringPage } from '#server/recipes/bring-page.ts'
import { readJson } from '#server/web/read-json.ts'

const Asked = z.strictObject({ address: z.string().check(z.maxLength(2000)) })
const MOST_BYTES = 16 * 1024

const refuse = (status: number, message: string, headers: HeadersInit = {}): Response =>
  Response.json({ message }, { status, headers: { 'cache-control': 'no-store', ...headers } })

/** The words of the page at an address, for somebody who is signed in. Requests of other sites do not come this far. */
export const POST = async (request: Request): Promise<Response> => {
  const user = await currentUser()
  if (!user) return refuse(401, 'Sign in first.')
  const data = await readJson(request, MOST_BYTES)
  const asked = Asked.safeParse(data.ok ? data.value : null)
  if (!asked.success) return refuse(400, pageRefusalText({ kind: 'not-fetched', why: 'address' }))
  const page = await bringPage(user.id, asked.data.address)
  if (page.ok) return Response.json(page.value, { headers: { 'cache-control': 'no-store' } })
  return page.error.kind === 'too-often'
    ? refuse(429, pageRefusalText(page.error), { 'retry-after': String(page.error.seconds) })
    : refuse(422, pageRefusalText(page.error))
}

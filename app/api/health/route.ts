import { live } from '#server/live.ts'

export const dynamic = 'force-dynamic'

/** Whether the site and its database answer. */
export const GET = async (): Promise<Response> => {
  try {
    await live().db.$queryRaw`SELECT 1`
    return Response.json({ ok: true })
  } catch (cause) {
    console.error('the database does not answer', cause)
    return Response.json({ ok: false }, { status: 503 })
  }
}

import { calendarOf } from '#app/_calendar/calendar-of.ts'
import { currentUser } from '#server/auth/who.ts'
import { seatFed } from '#server/calendar/open-feed.ts'

/** What the asker does at this evening, as a calendar file to keep. */
export const GET = async (_request: Request, { params }: { params: Promise<{ id: string }> }): Promise<Response> => {
  const user = await currentUser()
  if (!user) return new Response('Sign in first.\n', { status: 401 })
  const fed = await seatFed(user.id, (await params).id)
  if (!fed.ok) return new Response('There is no such evening.\n', { status: 404 })
  return new Response(await calendarOf(fed.value, true), {
    headers: {
      'content-type': 'text/calendar; charset=utf-8',
      'content-disposition': `attachment; filename="${fed.value.evening.date}.ics"`,
      'cache-control': 'private, no-store',
    },
  })
}

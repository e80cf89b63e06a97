import { calendarOf } from '#app/_calendar/calendar-of.ts'
import { tooManyTriesText } from '#app/_words/reply.ts'
import { addressOf } from '#server/auth/request.ts'
import { openFeed } from '#server/calendar/open-feed.ts'

interface Context {
  readonly params: Promise<{ readonly file: string }>
}

/** A cook's calendar, for the program that follows it: whoever has the address may read it. */
export const GET = async (request: Request, { params }: Context): Promise<Response> => {
  const { file } = await params
  const fed = await openFeed(file.replace(/\.ics$/, ''), addressOf(request.headers))
  if (fed.ok)
    return new Response(await calendarOf(fed.value, false), { headers: { 'content-type': 'text/calendar; charset=utf-8' } })
  if (fed.error.kind === 'unknown') return new Response('This address opens nothing.\n', { status: 404 })
  return new Response(`${tooManyTriesText(fed.error.seconds)}\n`, {
    status: 429,
    headers: { 'retry-after': String(fed.error.seconds) },
  })
}

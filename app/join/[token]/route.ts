import { firstFields, joinPage, type ShownSeat } from '#app/_join/join-page.ts'
import { problemsOf, readFields, type SittingFields, sittingOf } from '#app/_join/read-sitting.ts'
import { plainPage } from '#app/_reply/page.ts'
import { frameOf, refuseLink, respond } from '#app/_reply/respond.ts'
import { sitRefusedText } from '#app/_words/join.ts'
import { addressOf, isSecure } from '#server/auth/request.ts'
import { sessionCookieLine, type User, userOfCookies } from '#server/auth/session.ts'
import { cookiesOf } from '#server/auth/upgrade.ts'
import { readOffer } from '#server/seats/offer.ts'
import { type SitRefusal, Sitting, sit } from '#server/seats/sit.ts'
import { readForm } from '#server/web/read-form.ts'

// The page of a seat's link: plain HTML, as that of a guest's (docs/decisions/015), and for the same reasons.

interface Context {
  readonly params: Promise<{ readonly token: string }>
}

const MOST_BYTES = 16 * 1024

const userOf = (request: Request): Promise<User | null> =>
  userOfCookies(cookiesOf(request.headers.get('cookie') ?? ''), isSecure(request.headers))

const show = (request: Request, status: number, shown: ShownSeat): Response => respond(status, joinPage(frameOf(request), shown))

/** Changes nothing: a robot that previews links takes nobody's seat. */
export const GET = async (request: Request, { params }: Context): Promise<Response> => {
  const { token } = await params
  const offer = await readOffer(token, addressOf(request.headers), await userOf(request))
  if (!offer.ok) return refuseLink(request, offer.error)
  return show(request, 200, { offer: offer.value, fields: firstFields(offer.value), problems: [], refused: null })
}

export const POST = async (request: Request, { params }: Context): Promise<Response> => {
  const { token } = await params
  const from = addressOf(request.headers)
  const user = await userOf(request)
  const offer = await readOffer(token, from, user)
  if (!offer.ok) return refuseLink(request, offer.error)
  const form = await readForm(request, MOST_BYTES)
  if (!form.ok)
    return respond(
      form.error === 'type' ? 415 : 413,
      plainPage(frameOf(request), 'That could not be read', ['Go back, make it shorter, and send it again.']),
    )
  const fields = readFields(form.value)
  const problems = problemsOf(fields)
  if (problems.length > 0) return show(request, 422, { offer: offer.value, fields, problems, refused: null })
  const asked = Sitting.safeParse(sittingOf(fields))
  if (!asked.success)
    return show(request, 422, {
      offer: offer.value,
      fields,
      problems: [],
      refused: 'Something in it could not be read. Load the page again, then write it once more.',
    })
  const seated = await sit(token, from, asked.data, user)
  if (!seated.ok) return refuse(request, token, seated.error, fields)
  const { eveningId, ...claims } = seated.value
  return new Response(null, {
    status: 303,
    headers: {
      location: `/evenings/${eveningId}`,
      'cache-control': 'no-store',
      // Who sits down by their account is signed in already.
      ...(asked.data.as === 'account' ? {} : { 'set-cookie': await sessionCookieLine(claims, isSecure(request.headers)) }),
    },
  })
}

/** The page as it is now, with why nobody sat down. */
const refuse = async (request: Request, token: string, refusal: SitRefusal, fields: SittingFields): Promise<Response> => {
  if (refusal.kind === 'unknown' || refusal.kind === 'too-many-tries') return refuseLink(request, refusal)
  const offer = await readOffer(token, addressOf(request.headers), await userOf(request))
  if (!offer.ok) return refuseLink(request, offer.error)
  return show(request, 409, { offer: offer.value, fields, problems: [], refused: sitRefusedText(refusal) })
}

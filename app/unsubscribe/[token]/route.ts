import { html } from '#app/_reply/html.ts'
import { headOf, pageOf, plainPage } from '#app/_reply/page.ts'
import { frameOf, respond } from '#app/_reply/respond.ts'
import { noticeKindText } from '#app/_words/notice.ts'
import { meantBy, unsubscribe } from '#server/notify/unsubscribe.ts'

// The page of the link in a letter: plain HTML, without an account. Looking at it changes nothing; the button does, and so does
// the reader's own, which posts to the same address without a page (RFC 8058).

interface Context {
  readonly params: Promise<{ readonly token: string }>
}

const unknown = (request: Request): Response =>
  respond(
    404,
    plainPage(frameOf(request), 'This link opens nothing', [
      'It may be cut off. What you are told of stands on the page of your account, where you can change it.',
    ]),
  )

export const GET = async (request: Request, { params }: Context): Promise<Response> => {
  const meant = meantBy((await params).token)
  if (meant === null) return unknown(request)
  const title = 'No more of these letters?'
  return respond(
    200,
    pageOf(
      frameOf(request),
      title,
      html`${headOf('Tableward', title, [])}<main id="main" class="plain"><p>You asked: “Tell me by e-mail ${noticeKindText[meant.kind]}.”</p><form method="post"><button type="submit">Tell me no longer</button></form></main>`,
    ),
  )
}

export const POST = async (request: Request, { params }: Context): Promise<Response> => {
  const meant = meantBy((await params).token)
  if (meant === null) return unknown(request)
  await unsubscribe(meant)
  return respond(
    200,
    plainPage(frameOf(request), 'You are told no longer', [
      'No more letters of this kind come for that evening. You can turn them on again on the page of your account.',
    ]),
  )
}

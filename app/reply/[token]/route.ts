import { answerOf } from '#app/_reply/answer-of.ts'
import { fieldsOf, type ReplyFields, readFields } from '#app/_reply/fields.ts'
import { plainPage } from '#app/_reply/page.ts'
import { replyPage, type Shown } from '#app/_reply/reply-form.ts'
import { frameOf, refuseLink, respond } from '#app/_reply/respond.ts'
import { answerRefusedText } from '#app/_words/reply.ts'
import { addressOf } from '#server/auth/request.ts'
import { type AnswerRefusal, answerReply } from '#server/guests/answer.ts'
import { eraseReply, exportReply, type Reply, readReply } from '#server/guests/reply.ts'
import { readForm } from '#server/web/read-form.ts'

// The page of a guest's link. It is plain HTML and not one of the app's screens: it works without JavaScript, is told apart
// from what needs an account, and answers with the status that is meant.

interface Context {
  readonly params: Promise<{ readonly token: string }>
}

const MOST_BYTES = 128 * 1024

const show = (request: Request, status: number, shown: Shown): Response => respond(status, replyPage(frameOf(request), shown))

/** Changes nothing, whoever looks: a robot that previews links leaves no trace. `?file`: all that is stored, to keep. */
export const GET = async (request: Request, { params }: Context): Promise<Response> => {
  const { token } = await params
  const asked = new URL(request.url).searchParams
  const from = addressOf(request.headers)
  if (asked.has('file')) {
    const file = await exportReply(token, from)
    if (!file.ok) return refuseLink(request, file.error)
    return new Response(`${JSON.stringify(file.value, null, 2)}\n`, {
      headers: {
        'content-type': 'application/json; charset=utf-8',
        'content-disposition': 'attachment; filename="my-answer.json"',
        'cache-control': 'no-store',
      },
    })
  }
  const reply = await readReply(token, from)
  if (!reply.ok) return refuseLink(request, reply.error)
  return show(request, 200, {
    reply: reply.value,
    fields: fieldsOf(reply.value),
    problems: [],
    refused: null,
    sent: asked.has('sent'),
  })
}

export const POST = async (request: Request, { params }: Context): Promise<Response> => {
  const { token } = await params
  const from = addressOf(request.headers)
  const reply = await readReply(token, from)
  if (!reply.ok) return refuseLink(request, reply.error)
  const form = await readForm(request, MOST_BYTES)
  if (!form.ok)
    return respond(
      form.error === 'type' ? 415 : 413,
      plainPage(frameOf(request), 'That could not be read', ['Go back, make it shorter, and send it again.']),
    )
  if (form.value.get('do') === 'erase') return erase(request, token, from, form.value.get('sure') === 'yes', reply.value)
  const fields = readFields(form.value)
  const answer = answerOf(fields, reply.value)
  if (!answer.ok) return show(request, 422, { reply: reply.value, fields, problems: answer.error, refused: null, sent: false })
  const stored = await answerReply(token, from, answer.value)
  // Another page, so that loading it again does not send it again.
  if (stored.ok)
    return new Response(null, { status: 303, headers: { location: `/reply/${token}?sent`, 'cache-control': 'no-store' } })
  return refuse(request, stored.error, fields, reply.value)
}

const refuse = (request: Request, refusal: AnswerRefusal, fields: ReplyFields, reply: Reply): Response => {
  if (refusal.kind === 'unknown' || refusal.kind === 'too-many-tries') return refuseLink(request, refusal)
  // Sent again, it is meant to take the place of what was told meanwhile.
  const again = refusal.kind === 'changed-meanwhile' ? { ...fields, revision: String(refusal.revision) } : fields
  return show(request, refusal.kind === 'invalid' ? 422 : 409, {
    reply,
    fields: again,
    problems: [],
    refused: answerRefusedText(refusal),
    sent: false,
  })
}

const erase = async (request: Request, token: string, from: string, sure: boolean, reply: Reply): Promise<Response> => {
  if (!sure)
    return show(request, 422, {
      reply,
      fields: fieldsOf(reply),
      problems: [],
      refused: 'Nothing was erased. Tick that you want all of it erased for good.',
      sent: false,
    })
  const erased = await eraseReply(token, from)
  if (!erased.ok) return refuseLink(request, erased.error)
  return new Response(null, { status: 303, headers: { location: '/reply/erased', 'cache-control': 'no-store' } })
}

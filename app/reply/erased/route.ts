import { plainPage } from '#app/_reply/page.ts'
import { frameOf, respond } from '#app/_reply/respond.ts'

/** After an erasure. It knows nothing of whose it was. */
export const GET = (request: Request): Response =>
  respond(
    200,
    plainPage(frameOf(request), 'It is erased', [
      'Your names, your answers and your words are gone, and the link opens nothing any more.',
      'Your hosts see only that somebody has erased an answer. Tell them yourself whether you come.',
    ]),
  )

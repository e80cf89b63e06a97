import { readTheme, THEME_COOKIE } from '#app/_ui/theme.ts'
import { tooManyTriesText } from '#app/_words/reply.ts'
import type { FindRefusal } from '#server/guests/find.ts'
import { readStyles } from '#server/web/look.ts'
import { type Frame, plainPage, unknownPage } from './page.ts'

const STYLES = ['app/tokens.css', 'app/base.css', 'app/_reply/reply.css']

/** What every page of a link needs of the request. */
export const frameOf = (request: Request): Frame => ({
  css: readStyles(STYLES),
  nonce: request.headers.get('x-nonce') ?? '',
  theme: readTheme(new RegExp(`(?:^|;\\s*)${THEME_COOKIE}=([^;]*)`).exec(request.headers.get('cookie') ?? '')?.[1]),
})

/** A page is for this moment and this reader alone. */
export const respond = (status: number, page: string, headers: Readonly<Record<string, string>> = {}): Response =>
  new Response(page, { status, headers: { 'content-type': 'text/html; charset=utf-8', 'cache-control': 'no-store', ...headers } })

/** The same for every link that opens nothing, whatever the reason. */
export const refuseLink = (request: Request, refusal: FindRefusal): Response =>
  refusal.kind === 'unknown'
    ? respond(404, unknownPage(frameOf(request)))
    : respond(429, plainPage(frameOf(request), 'Too many tries', [tooManyTriesText(refusal.seconds)]), {
        'retry-after': String(refusal.seconds),
      })

import { readServiceWorker } from '#server/web/look.ts'

/** The program that keeps pages for when there is no network and hears calls; looked for anew at each visit. */
export const GET = (): Response => {
  const program = readServiceWorker()
  if (program === null) return new Response(null, { status: 404 })
  return new Response(new Uint8Array(program), {
    headers: { 'content-type': 'text/javascript; charset=utf-8', 'cache-control': 'no-cache' },
  })
}

import { readFont } from '#server/web/look.ts'

interface Context {
  readonly params: Promise<{ readonly name: string }>
}

/** The two fonts, under addresses that stay: for pages that are not made by the screens' own machinery. */
export const GET = async (_request: Request, { params }: Context): Promise<Response> => {
  const font = readFont((await params).name)
  if (font === null) return new Response('There is no such font.\n', { status: 404 })
  return new Response(new Uint8Array(font), {
    headers: { 'content-type': 'font/woff2', 'cache-control': 'public, max-age=604800' },
  })
}

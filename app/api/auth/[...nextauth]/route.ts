import type { NextRequest } from 'next/server'
import NextAuth from 'next-auth'
import { authOptions } from '#server/auth/options.ts'

interface Context {
  readonly params: Promise<{ nextauth: string[] }>
}

const MOST_BYTES = 16 * 1024

export const GET = (request: NextRequest, context: Context): Promise<Response> =>
  NextAuth(request, context, authOptions(request.headers))

/** Forms alone, as next-auth's own client sends them: its handler answers a body that it cannot read with a 500. */
export const POST = async (request: NextRequest, context: Context): Promise<Response> => {
  // Where next-auth's client reports its errors: anybody could fill our log there.
  if ((await context.params).nextauth[0] === '_log') return new Response(null, { status: 204 })
  if (!request.headers.get('content-type')?.startsWith('application/x-www-form-urlencoded'))
    return new Response(null, { status: 415 })
  const length = Number(request.headers.get('content-length') ?? Number.NaN)
  if (!(length <= MOST_BYTES)) return new Response(null, { status: 413 })
  return NextAuth(request, context, authOptions(request.headers))
}

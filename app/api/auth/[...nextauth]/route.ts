import type { NextRequest } from 'next/server'
import NextAuth from 'next-auth'
import { authOptions } from '#server/auth/options.ts'

const handler = (request: NextRequest, context: { params: Promise<{ nextauth: string[] }> }): Promise<Response> =>
  NextAuth(request, context, authOptions(request.headers))

export { handler as GET, handler as POST }

import { fail, ok, type Result } from '#lib/domain/result.ts'
import { readBytes } from './read-bytes.ts'

/** The fields of a posted form, kept up to so many bytes. */
export const readForm = async (request: Request, most: number): Promise<Result<URLSearchParams, 'type' | 'too-large'>> => {
  if (!/^application\/x-www-form-urlencoded\s*(;|$)/i.test(request.headers.get('content-type') ?? '')) return fail('type')
  const body = await readBytes(request, most)
  return body === null ? fail('too-large') : ok(new URLSearchParams(body.toString('utf8')))
}

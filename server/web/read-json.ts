import { fail, ok, type Result } from '#lib/domain/result.ts'
import { readBytes } from './read-bytes.ts'

/** The JSON of a request, kept up to so many bytes. */
export const readJson = async (request: Request, most: number): Promise<Result<unknown, 'type' | 'too-large' | 'not-json'>> => {
  if (!/^application\/json\s*(;|$)/i.test(request.headers.get('content-type') ?? '')) return fail('type')
  const body = await readBytes(request, most)
  if (body === null) return fail('too-large')
  try {
    return ok(JSON.parse(body.toString('utf8')))
  } catch {
    return fail('not-json')
  }
}

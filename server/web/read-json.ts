import { fail, ok, type Result } from '#lib/domain/result.ts'

/** How many times too long a body may be. */
const HEARD_OUT = 4

/**
 * The JSON of a request, kept up to so many bytes. A body that is somewhat longer is read to its end and thrown away: to stop
 * in the middle ends the connection, and the answer that says why may be lost with it.
 */
export const readJson = async (request: Request, most: number): Promise<Result<unknown, 'type' | 'too-large' | 'not-json'>> => {
  if (!/^application\/json\s*(;|$)/i.test(request.headers.get('content-type') ?? '')) return fail('type')
  const reader = request.body?.getReader()
  const chunks: Uint8Array[] = []
  let bytes = 0
  for (let read = await reader?.read(); read && !read.done; read = await reader?.read()) {
    bytes += read.value.byteLength
    if (bytes <= most) chunks.push(read.value)
    else chunks.length = 0
    if (bytes > most * HEARD_OUT) {
      await reader?.cancel()
      return fail('too-large')
    }
  }
  if (bytes > most) return fail('too-large')
  try {
    return ok(JSON.parse(Buffer.concat(chunks).toString('utf8')))
  } catch {
    return fail('not-json')
  }
}

import { fail, ok, type Result } from '#lib/domain/result.ts'

/** The JSON of a request, read no further than so many bytes. */
export const readJson = async (request: Request, most: number): Promise<Result<unknown, 'type' | 'too-large' | 'not-json'>> => {
  if (!/^application\/json\s*(;|$)/i.test(request.headers.get('content-type') ?? '')) return fail('type')
  const reader = request.body?.getReader()
  const chunks: Uint8Array[] = []
  let bytes = 0
  for (let read = await reader?.read(); read && !read.done; read = await reader?.read()) {
    bytes += read.value.byteLength
    if (bytes > most) {
      await reader?.cancel()
      return fail('too-large')
    }
    chunks.push(read.value)
  }
  try {
    return ok(JSON.parse(Buffer.concat(chunks).toString('utf8')))
  } catch {
    return fail('not-json')
  }
}

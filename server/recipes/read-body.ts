import { type Readable, Transform } from 'node:stream'
import { pipeline } from 'node:stream/promises'
import { createBrotliDecompress, createGunzip, createInflate } from 'node:zlib'
import { fail, ok, type Result } from '#lib/domain/result.ts'

class TooLarge extends Error {}

/** Lets so many bytes pass and fails at the next one. */
const atMost = (bytes: number): Transform => {
  let seen = 0
  return new Transform({
    transform(chunk: Buffer, _, done) {
      seen += chunk.length
      if (seen > bytes) done(new TooLarge())
      else done(null, chunk)
    },
  })
}

const decoderOf = (encoding: string): Transform | null => {
  if (encoding === 'gzip' || encoding === 'x-gzip') return createGunzip()
  if (encoding === 'deflate') return createInflate()
  return encoding === 'br' ? createBrotliDecompress() : null
}

/** A body unpacked, at most so many bytes before and after; anything that is packed twice or in another way is refused unread. */
export const readBody = async (
  body: Readable,
  encoding: string,
  most: number,
  signal: AbortSignal,
): Promise<Result<Buffer, 'too-large' | 'type' | 'network'>> => {
  const plain = encoding === '' || encoding === 'identity'
  const decoder = plain ? null : decoderOf(encoding)
  if (!plain && !decoder) return fail('type')
  const chunks: Buffer[] = []
  const collect = async (source: AsyncIterable<Buffer>) => {
    for await (const chunk of source) chunks.push(chunk)
  }
  try {
    if (decoder) await pipeline(body, atMost(most), decoder, atMost(most), collect, { signal })
    else await pipeline(body, atMost(most), collect, { signal })
    return ok(Buffer.concat(chunks))
  } catch (error) {
    return fail(error instanceof TooLarge ? 'too-large' : 'network')
  }
}

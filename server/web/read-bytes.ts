/** How many times too long a body may be. */
const HEARD_OUT = 4

/**
 * The body of a request, kept up to so many bytes; null when it is longer. One that is somewhat longer is read to its end and
 * thrown away: to stop in the middle ends the connection, and the answer that says why may be lost with it.
 */
export const readBytes = async (request: Request, most: number): Promise<Buffer | null> => {
  const reader = request.body?.getReader()
  const chunks: Uint8Array[] = []
  let bytes = 0
  for (let read = await reader?.read(); read && !read.done; read = await reader?.read()) {
    bytes += read.value.byteLength
    if (bytes <= most) chunks.push(read.value)
    else chunks.length = 0
    if (bytes > most * HEARD_OUT) {
      await reader?.cancel()
      return null
    }
  }
  return bytes > most ? null : Buffer.concat(chunks)
}

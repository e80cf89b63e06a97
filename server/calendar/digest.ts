import { createHash } from 'node:crypto'

/** A mark of what was said, by which a change of it is seen and from which it cannot be read. */
export const digestOf = (said: readonly unknown[]): string =>
  createHash('sha256').update(JSON.stringify(said)).digest('base64url').slice(0, 22)

import { createHash, randomBytes } from 'node:crypto'

/** 128 random bits, as they stand in a link. */
export const newToken = (): string => randomBytes(16).toString('base64url')

/** What is stored of a token; null when the text cannot be one. */
export const hashOf = (token: string): string | null =>
  /^[A-Za-z0-9_-]{22}$/.test(token) ? createHash('sha256').update(token).digest('base64url') : null

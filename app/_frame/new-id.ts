/** A fresh id for an entry of the plan: 80 random bits. Works on plain http, where randomUUID is missing. */
export const newId = (): string =>
  Array.from(crypto.getRandomValues(new Uint8Array(10)), (byte) => byte.toString(16).padStart(2, '0')).join('')

import { fileURLToPath } from 'node:url'

/** The project's folder, with a trailing slash: server/ and dist/ both stand right in it. */
export const root = fileURLToPath(new URL('..', import.meta.url))

import { existsSync, readFileSync } from 'node:fs'
import { live } from '#server/live.ts'

/** The style sheets of this many files of ours in one, for pages that are not made by the screens' own machinery. */
export const readStyles = (files: readonly string[]): string =>
  files.map((file) => readFileSync(`${live().root}${file}`, 'utf8')).join('\n')

const FONTS: Readonly<Record<string, string>> = {
  figtree: '@fontsource-variable/figtree/files/figtree-latin-wght-normal.woff2',
  piazzolla: '@fontsource-variable/piazzolla/files/piazzolla-latin-opsz-normal.woff2',
}

/** A font by its name; null when it is none of ours. */
export const readFont = (name: string): Buffer | null => {
  const file = Object.hasOwn(FONTS, name) ? FONTS[name] : undefined
  return file === undefined ? null : readFileSync(`${live().root}node_modules/${file}`)
}

/** The service worker's program; null where none was built, as in development. */
export const readServiceWorker = (): Buffer | null => {
  const file = `${live().root}dist/service-worker.js`
  return existsSync(file) ? readFileSync(file) : null
}

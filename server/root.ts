import { existsSync } from 'node:fs'
import { fileURLToPath } from 'node:url'

const upToPackage = (folder: URL): URL =>
  existsSync(new URL('package.json', folder)) ? folder : upToPackage(new URL('..', folder))

/** The project's folder, with a trailing slash; from the sources and from wherever they are bundled within it. */
export const root = fileURLToPath(upToPackage(new URL('.', import.meta.url)))

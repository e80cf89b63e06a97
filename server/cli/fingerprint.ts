import { createHash } from 'node:crypto'
import { readdirSync, readFileSync, statSync } from 'node:fs'
import { root } from '#server/root.ts'

const SOURCES = [
  'app',
  'lib',
  'server',
  'prisma',
  'public',
  'package-lock.json',
  'package.json',
  'next.config.js',
  'tsconfig.json',
]

/** A hash of everything that a build is made of: names and contents. The generated client follows from the schema. */
export const fingerprint = (): string => {
  const hash = createHash('sha256').update(process.version)
  for (const file of SOURCES.flatMap(filesOf))
    hash
      .update(`${file}\0`)
      .update(readFileSync(`${root}${file}`))
      .update('\0')
  return hash.digest('hex')
}

const filesOf = (path: string): string[] => {
  if (path === 'prisma/client') return []
  const found = statSync(`${root}${path}`, { throwIfNoEntry: false })
  if (!found?.isDirectory()) return found ? [path] : []
  return readdirSync(`${root}${path}`)
    .sort()
    .flatMap((name) => filesOf(`${path}/${name}`))
}

import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'

/** One source file: its path from the repository's root and its text. */
export interface Source {
  readonly path: string
  readonly text: string
}

const ROOT = fileURLToPath(new URL('../..', import.meta.url))
const LEFT_OUT = new Set(['node_modules', 'client', 'migrations'])

/** Every TypeScript file below these folders, generated code left out. */
export const sources = (folders: readonly string[]): Source[] =>
  folders.flatMap((folder) =>
    readdirSync(join(ROOT, folder), { withFileTypes: true }).flatMap((entry) => {
      const path = `${folder}/${entry.name}`
      if (entry.isDirectory()) return LEFT_OUT.has(entry.name) ? [] : sources([path])
      return /\.tsx?$/.test(entry.name) ? [{ path, text: readFileSync(join(ROOT, path), 'utf8') }] : []
    }),
  )

export const readDocument = (path: string): string => readFileSync(join(ROOT, path), 'utf8')

import { createHash } from 'node:crypto'
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, renameSync, rmSync } from 'node:fs'
import { bundleProgram } from '#server/cli/bundle.ts'
import { root } from '#server/root.ts'

const made = new Map<string, Promise<string>>()

/** The file of a program of tests/support, bundled with its threads: tsx would read every source again at each start. */
export const bundled = (name: string): Promise<string> => {
  const known = made.get(name) ?? bundle(name)
  made.set(name, known)
  return known
}

/** Once a test process, under the name of what is in it. */
const bundle = async (name: string): Promise<string> => {
  mkdirSync(`${root}.cache`, { recursive: true })
  const making = mkdtempSync(`${root}.cache/${name}-new-`)
  await bundleProgram(`tests/support/${name}.ts`, making)
  const hash = createHash('sha256')
  for (const file of readdirSync(making).sort()) hash.update(file).update(readFileSync(`${making}/${file}`))
  const folder = `${root}.cache/${name}-${hash.digest('hex').slice(0, 12)}`
  try {
    renameSync(making, folder)
  } catch (cause) {
    // Another test process was first.
    if (!existsSync(`${folder}/server.js`)) throw cause
    rmSync(making, { recursive: true })
  }
  return `${folder}/server.js`
}

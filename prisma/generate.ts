import { spawnSync } from 'node:child_process'
import { createHash } from 'node:crypto'
import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { fileURLToPath } from 'node:url'

/**
 * Prisma's command line wants to download its schema engine before anything else, though these three never use it. Under
 * the setting below it does not; any other command would then do nothing and may still exit 0, so none is let through.
 */
const ALLOWED = ['generate', 'validate', 'format']

const root = fileURLToPath(new URL('..', import.meta.url))
const stamp = `${root}prisma/client/.made-of`

/** Runs one of Prisma's commands that need no engine. Throws with its output when it fails. */
export const prisma = (command: string): void => {
  if (!ALLOWED.includes(command)) throw new Error(`"${command}" needs Prisma's engine; only ${ALLOWED.join(', ')} work here`)
  const done = spawnSync(process.execPath, [`${root}node_modules/prisma/build/index.js`, command], {
    cwd: root,
    encoding: 'utf8',
    env: {
      PRISMA_SCHEMA_ENGINE_BINARY: process.execPath,
      PRISMA_HIDE_UPDATE_MESSAGE: '1',
      CHECKPOINT_DISABLE: '1',
      ...process.env,
    },
  })
  if (done.status !== 0) throw new Error(`prisma ${command} failed:\n${done.stdout}${done.stderr}`)
}

const madeOf = (): string => {
  const { version } = createRequire(import.meta.url)('prisma/package.json') as { version: string }
  return createHash('sha256')
    .update(version)
    .update(readFileSync(`${root}prisma/schema.prisma`))
    .digest('hex')
}

/** Makes the database client unless the one that stands there was made of this schema by this Prisma. */
export const generateClient = (): void => {
  const now = madeOf()
  if (existsSync(stamp) && readFileSync(stamp, 'utf8') === now) return
  prisma('generate')
  writeFileSync(stamp, now)
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const command = process.argv[2] ?? 'generate'
  try {
    if (command === 'generate') generateClient()
    else prisma(command)
  } catch (cause) {
    console.error(cause instanceof Error ? cause.message : cause)
    process.exitCode = 1
  }
}

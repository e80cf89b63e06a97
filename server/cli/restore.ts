import { existsSync } from 'node:fs'
import { resolve } from 'node:path'
import { backupNames } from '#server/backup/copies.ts'
import { restoreBackup } from '#server/backup/restore.ts'
import { openDataFolder } from '#server/data-folder.ts'
import { parseEnv } from '#server/env.ts'
import { orRefuse, RefuseStart } from '#server/refuse-start.ts'
import { root } from '#server/root.ts'

// Puts a backup in the place of the database, while the server is stopped:  npm run restore -- FILE

const run = (): void => {
  const parsed = parseEnv(process.env)
  if (!parsed.ok) throw new RefuseStart(parsed.error.join('\n'))
  const { dataFolder, secret, backup } = parsed.value
  const asked = process.argv[2]
  if (!asked) throw new RefuseStart(`Say which: npm run restore -- FILE. ${foundText(backup.folder)}`)
  const file = existsSync(asked) ? resolve(asked) : resolve(backup.folder, asked)
  const folder = openDataFolder(dataFolder, secret)
  try {
    const stamp = new Date().toISOString().replace(/[:.]/g, '-')
    const done = orRefuse(folder.path, () => restoreBackup(folder, file, { migrations: `${root}prisma/migrations`, stamp }))
    console.log(`Restored ${done.evenings} evenings from ${file}.`)
    if (done.before !== null) console.log(`What was there before: ${done.before}`)
    console.log('Start Tableward again. Devices with later changes set them aside and offer to bring them in again.')
  } finally {
    folder.release()
  }
}

const foundText = (folder: string): string => {
  const names = backupNames(folder)
  return names.length === 0
    ? `There is none in ${folder}.`
    : `In ${folder} there are:\n${names.map((name) => `  ${name}`).join('\n')}`
}

try {
  run()
} catch (cause) {
  console.error(cause instanceof RefuseStart ? cause.message : cause)
  process.exitCode = 1
}

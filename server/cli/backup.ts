import { resolve } from 'node:path'
import { backupName, keepBackup } from '#server/backup/copies.ts'
import { holdCopies } from '#server/backup/hold.ts'
import { parseEnv } from '#server/env.ts'
import { reasonOf } from '#server/sync/reason.ts'

// A backup now, also while the server runs:  npm run backup [-- FOLDER]

const run = async (): Promise<void> => {
  const parsed = parseEnv(process.env)
  if (!parsed.ok) throw new Error(parsed.error.join('\n'))
  const { dataFolder, backup } = parsed.value
  const folder = process.argv[2] ? resolve(process.argv[2]) : backup.folder
  const name = backupName(Date.now())
  console.log(await holdCopies(dataFolder, async () => keepBackup(`${dataFolder}/tableward.db`, folder, name, backup.keep)))
}

run().catch((cause: unknown) => {
  console.error(`backup: ${reasonOf(cause)}`)
  process.exitCode = 1
})

import { backupName, keepBackup } from '#server/backup/copies.ts'
import { holdCopies } from '#server/backup/hold.ts'

// Makes a backup each time it is told to, as npm run backup does:  DATA_FOLDER BACKUP_FOLDER
const [dataFolder = '', folder = ''] = process.argv.slice(2)

process.on('message', (keep: number) => {
  holdCopies(dataFolder, async () => keepBackup(`${dataFolder}/tableward.db`, folder, backupName(Date.now()), keep)).then(
    (file) => process.send?.({ file }),
    (cause: unknown) => process.send?.({ why: String(cause) }),
  )
})
process.send?.({ ready: true })

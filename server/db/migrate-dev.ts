import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { fileURLToPath } from 'node:url'
import { openEngine, readMigrations } from './schema-engine.ts'

// Makes the next migration: applies the history to a scratch file and writes what the schema has beyond it.
//   node --import tsx server/db/migrate-dev.ts NAME

const folder = fileURLToPath(new URL('../../prisma/migrations', import.meta.url))
const schema = fileURLToPath(new URL('../../prisma/schema.prisma', import.meta.url))

const name = process.argv[2] ?? ''
if (!/^[a-z0-9]+(_[a-z0-9]+)*$/.test(name)) {
  console.error('say what the migration does, in lower-case words joined by underscores: server/db/migrate-dev.ts add_guests')
  process.exit(2)
}

const scratch = mkdtempSync(`${tmpdir()}/tableward-migrate-`)
try {
  const engine = await openEngine(schema, `${scratch}/scratch.db`)
  await engine.apply(readMigrations(folder))
  const sql = await engine.diff()
  if (sql === null) console.log('the migrations already lead to the schema: nothing to do')
  else {
    const stamp = new Date().toISOString().replace(/\D/g, '').slice(0, 14)
    mkdirSync(`${folder}/${stamp}_${name}`)
    writeFileSync(`${folder}/${stamp}_${name}/migration.sql`, sql)
    console.log(`prisma/migrations/${stamp}_${name}/migration.sql:\n\n${sql}`)
  }
} finally {
  rmSync(scratch, { recursive: true })
}
// The engine leaves handles open that would keep the process waiting.
process.exit()

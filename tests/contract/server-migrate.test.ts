import { cpSync, existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import Database from 'libsql'
import { afterEach, beforeEach, expect, test } from 'vitest'
import { migrateDatabase, type Places } from '#server/db/migrate.ts'
import { RefuseStart } from '#server/refuse-start.ts'
import { root } from '#server/root.ts'
import { newDataFolder } from '#tests/support/start-server.ts'

let folder: string
let places: Places
beforeEach(() => {
  folder = newDataFolder()
  cpSync(`${root}prisma/migrations`, `${folder}/migrations`, { recursive: true })
  places = {
    databaseFile: `${folder}/tableward.db`,
    copies: `${folder}/copies`,
    schemaFile: `${root}prisma/schema.prisma`,
    migrations: `${folder}/migrations`,
    stamp: 'copy-1',
  }
})
afterEach(() => rmSync(folder, { recursive: true, force: true }))

const addMigration = (sql: string) => {
  mkdirSync(`${folder}/migrations/29990101000000_later`)
  writeFileSync(`${folder}/migrations/29990101000000_later/migration.sql`, sql)
}

const rows = (file: string, sql: string): unknown[] => {
  const db = new Database(file)
  const found = db.prepare(sql).all()
  db.close()
  return found
}

/** By plain statements: a prepared one keeps its connection, and the log with it, until it is collected. */
const addUser = (): Database.Database => {
  const db = new Database(places.databaseFile)
  db.exec(`PRAGMA journal_mode = WAL;
    INSERT INTO "User" (id, email, name, passwordHash) VALUES ('u', 'u@test.example', 'U', 'x')`)
  return db
}

test('A4 a first start applies every migration and copies nothing; a next one does nothing', async () => {
  const names = readdirSync(`${root}prisma/migrations`)
    .filter((name) => /^\d/.test(name))
    .sort()
  expect(names.length).toBeGreaterThan(0)
  expect(await migrateDatabase(places)).toEqual({ applied: names, copy: null })
  expect(await migrateDatabase(places)).toEqual({ applied: [], copy: null })
  expect(existsSync(places.copies)).toBe(false)
})

test('A4 before a migration the database is copied, what is still in its log too', async () => {
  await migrateDatabase(places)
  const db = addUser()
  const wal = readFileSync(`${places.databaseFile}-wal`)
  const main = readFileSync(places.databaseFile)
  db.close()
  // As a kill leaves it: the row is in the write-ahead log alone.
  writeFileSync(places.databaseFile, main)
  writeFileSync(`${places.databaseFile}-wal`, wal)
  expect(wal.length).toBeGreaterThan(0)

  addMigration('ALTER TABLE "User" ADD COLUMN "later" TEXT;')
  const done = await migrateDatabase(places)
  expect(done).toEqual({ applied: ['29990101000000_later'], copy: `${folder}/copies/copy-1.db` })
  expect(rows(`${folder}/copies/copy-1.db`, 'SELECT id FROM User')).toEqual([{ id: 'u' }])
  expect(rows(`${folder}/copies/copy-1.db`, "SELECT name FROM pragma_table_info('User') WHERE name = 'later'")).toEqual([])
  expect(rows(places.databaseFile, 'SELECT id, later FROM User')).toEqual([{ id: 'u', later: null }])
})

test('A4 a migration that fails leaves the database as it was', async () => {
  await migrateDatabase(places)
  addUser().close()
  addMigration('ALTER TABLE "User" ADD COLUMN "later" TEXT; SELECT * FROM "NoSuchTable";')
  await expect(migrateDatabase(places)).rejects.toThrow(/NoSuchTable/)
  expect(rows(places.databaseFile, 'SELECT id FROM User')).toEqual([{ id: 'u' }])
  expect(rows(places.databaseFile, "SELECT name FROM pragma_table_info('User') WHERE name = 'later'")).toEqual([])
  rmSync(`${folder}/migrations/29990101000000_later`, { recursive: true })
  expect(await migrateDatabase(places)).toEqual({ applied: [], copy: null })
})

test('A4 a migration that builds the table of people anew keeps their seats and what hangs on them', async () => {
  const rebuilding = `${folder}/migrations/20261126051425_seat_links`
  renameSync(rebuilding, `${folder}/held-back`)
  await migrateDatabase(places)
  const db = addUser()
  db.exec(`INSERT INTO "Evening" (id, epoch, summary) VALUES ('e', 'e', '{}');
    INSERT INTO "Member" (id, eveningId, userId, role, cook) VALUES ('m', 'e', 'u', 'host', 'kim');
    INSERT INTO "PlanUpdate" (eveningId, bytes, memberId) VALUES ('e', x'00ff', 'm');
    INSERT INTO "PlanClient" (eveningId, clientId, memberId) VALUES ('e', '7', 'm');
    INSERT INTO "PlanOp" (eveningId, op, memberId, outcome) VALUES ('e', 'o', 'm', '{}');
    INSERT INTO "PushDevice" (id, memberId, endpoint, p256dh, auth) VALUES ('d', 'm', 'https://push.example', 'p', 'a')`)
  db.close()
  const tables = ['User', 'Evening', 'Member', 'PlanUpdate', 'PlanClient', 'PlanOp', 'PushDevice']
  const all = (file: string) => tables.map((table) => rows(file, `SELECT * FROM "${table}"`))

  renameSync(`${folder}/held-back`, rebuilding)
  const copy = `${folder}/copies/copy-1.db`
  expect(await migrateDatabase(places)).toEqual({ applied: ['20261126051425_seat_links'], copy })
  expect(all(copy).map((found) => found.length)).toEqual(tables.map(() => 1))
  expect(all(places.databaseFile)).toEqual(all(copy))
  expect(rows(places.databaseFile, 'PRAGMA foreign_key_check')).toEqual([])
  // A seat still hangs on its person.
  const after = new Database(places.databaseFile)
  after.exec(`PRAGMA foreign_keys = ON; DELETE FROM "User" WHERE id = 'u'`)
  after.close()
  expect(rows(places.databaseFile, 'SELECT id FROM "Member" UNION ALL SELECT id FROM "PushDevice"')).toEqual([])
})

test('A4 what a killed migration has left is thrown away', async () => {
  await migrateDatabase(places)
  addUser().close()
  writeFileSync(`${places.databaseFile}.next`, 'half')
  writeFileSync(`${places.databaseFile}.next-wal`, 'half')
  addMigration('ALTER TABLE "User" ADD COLUMN "later" TEXT;')
  await migrateDatabase(places)
  expect(rows(places.databaseFile, 'SELECT id, later FROM User')).toEqual([{ id: 'u', later: null }])
  expect(existsSync(`${places.databaseFile}.next-wal`)).toBe(false)
})

test('A4 a damaged database is not migrated', async () => {
  await migrateDatabase(places)
  addUser().close()
  const bytes = readFileSync(places.databaseFile)
  bytes.fill(7, 4096 * 2, 4096 * 6)
  writeFileSync(places.databaseFile, bytes)
  addMigration('ALTER TABLE "User" ADD COLUMN "later" TEXT;')
  await expect(migrateDatabase(places)).rejects.toSatisfy(
    (cause) => cause instanceof RefuseStart || /malformed|corrupt/i.test(String(cause)),
  )
  expect(readFileSync(places.databaseFile).equals(bytes)).toBe(true)
})

test('A4 the migrations lead to the schema: nothing is missing from them', async () => {
  const { openEngine, readMigrations } = await import('#server/db/schema-engine.ts')
  const engine = await openEngine(places.schemaFile, `${folder}/scratch.db`)
  await engine.apply(readMigrations(places.migrations))
  expect(await engine.diff()).toBeNull()
  engine.free()
})

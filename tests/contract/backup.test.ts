import { type ChildProcess, fork, spawnSync } from 'node:child_process'
import { once } from 'node:events'
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync, watch, writeFileSync } from 'node:fs'
import Database from 'libsql'
import { afterEach, expect, test, vi } from 'vitest'
import * as Y from 'yjs'
import { setFields } from '#lib/plan/commands/set.ts'
import { readPlan } from '#lib/plan/read.ts'
import { writeEvening } from '#lib/plan/write-evening.ts'
import { backupName, backupNames, cleanCopies, copyDatabase, keepBackup } from '#server/backup/copies.ts'
import { isDue } from '#server/backup/open-backups.ts'
import { restoreBackup } from '#server/backup/restore.ts'
import { eveningOf } from '#server/evenings/create.ts'
import { printSummary } from '#server/evenings/summary.ts'
import { RefuseStart } from '#server/refuse-start.ts'
import { root } from '#server/root.ts'
import { LIMITS } from '#server/sync/limits.ts'
import { openPlanTables } from '#server/sync/plan-tables.ts'
import { bundled } from '#tests/support/bundled.ts'
import { memberIn, planDatabase } from '#tests/support/plan-database.ts'
import { sessionCookie } from '#tests/support/session-cookie.ts'
import { isSaved, type SocketClient, socketClient } from '#tests/support/socket-client.ts'
import { newDataFolder, type StartedServer, startServer } from '#tests/support/start-server.ts'
import { syncClient } from '#tests/support/sync-client.ts'

// The long run: KILLS=100 npx vitest run -c tests/vitest.config.ts tests/contract/backup
const KILLS = Number(process.env.KILLS ?? 2)
vi.setConfig({ testTimeout: 120_000 + KILLS * 10_000 })

const ends: (() => unknown)[] = []
afterEach(async () => {
  for (const end of ends.splice(0)) await end()
})

// A closed connection lives on until its statements are collected, and holds the database: before a restore none is opened here.
const query = <T>(file: string, sql: string): T[] => {
  const db = new Database(file, { timeout: 5000 })
  try {
    return db.prepare(sql).all([]) as T[]
  } finally {
    db.close()
  }
}
const isWhole = (file: string): boolean =>
  query<{ integrity_check: string }>(file, 'PRAGMA integrity_check').every((row) => row.integrity_check === 'ok')

/** Every row of every table, but for what a restore changes. */
const contentOf = (file: string): object => {
  const tables = query<{ name: string }>(file, "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite%'")
  expect(tables.length).toBeGreaterThan(10)
  return Object.fromEntries(
    tables.map(({ name }) => {
      const columns = query<{ name: string }>(file, `PRAGMA table_info("${name}")`)
        .map((column) => column.name)
        .filter((column) => column !== 'epoch')
      return [name, query(file, `SELECT ${columns.map((column) => `hex("${column}")`).join(', ')} FROM "${name}" ORDER BY 1, 2`)]
    }),
  )
}

const planIn = (file: string): Y.Doc => {
  const tables = openPlanTables(file)
  const stored = tables.load('e')
  tables.close()
  const doc = new Y.Doc()
  for (const update of stored?.updates ?? []) Y.applyUpdate(doc, update)
  return doc
}
const clockIn = (doc: Y.Doc, client: number) => Y.decodeStateVector(Y.encodeStateVector(doc)).get(client) ?? 0

/** A program that makes a backup when it is told to. */
const backupProcess = async (dataFolder: string, folder: string): Promise<ChildProcess> => {
  const child = fork(await bundled('backup-process'), [dataFolder, folder], { stdio: ['ignore', 'inherit', 'inherit', 'ipc'] })
  ends.push(() => child.kill('SIGKILL'))
  await once(child, 'message')
  return child
}
const makeOne = async (child: ChildProcess, keep: number): Promise<string> => {
  child.send(keep)
  const [{ file, why }] = (await once(child, 'message')) as [{ file?: string; why?: string }]
  if (!file) throw new Error(why)
  return file
}

const restore = async (dataFolder: string, ...asked: readonly string[]) => {
  const done = spawnSync(process.execPath, [await bundled('restore-process'), ...asked], {
    cwd: root,
    encoding: 'utf8',
    env: { ...process.env, DATA_DIR: dataFolder },
  })
  return { code: done.status, said: `${done.stdout}${done.stderr}` }
}

const lineTo = async (server: StartedServer): Promise<SocketClient> => {
  const cookie = await sessionCookie(readFileSync(`${server.dataFolder}/secret`, 'utf8').trim(), 'u-kim')
  const address = `ws://localhost:${server.port}/sync/e`
  return socketClient(address, syncClient(), { cookie, origin: server.address })
}

test(`DA1 DA3 a backup made while people edit is whole and holds all that was saved before it; ${KILLS} kills of a backup harm nothing; restored, all is as it was, under a new epoch`, async () => {
  const { folder: dataFolder, file } = scene()
  const server = await startServer({ dataFolder, env: { DEMO: '0' } })
  ends.push(() => server.remove())
  const folder = `${dataFolder}/backups`
  const line = await lineTo(server)
  await line.until(isSaved)
  const { client } = line
  const epoch = client.hello?.epoch
  const maker = await backupProcess(dataFolder, folder)

  // Edits go on as fast as they are saved and may come, from here until the server is killed.
  let edits = 0
  const edit = () => setFields(client.doc, 'kitchens', 'home', { name: `Kitchen ${edits++}` })
  const editing = setInterval(() => client.acked === client.sent && edit(), 1000 / (LIMITS.messagesASecond * 0.8))
  line.socket.on('close', () => clearInterval(editing))

  for (let n = 0; n < 3; n += 1) {
    const { ackedClock } = client
    const before = edits
    const made = await makeOne(maker, 14)
    expect(isWhole(made)).toBe(true)
    expect(clockIn(planIn(made), ackedClock.client)).toBeGreaterThanOrEqual(ackedClock.clock)
    await line.until(() => edits > before + 5)
  }
  expect(statSync(folder).mode & 0o777).toBe(0o700)

  let halves = 0
  for (let kill = 0; kill < KILLS; kill += 1) {
    const doomed = await backupProcess(dataFolder, folder)
    const begun = new Promise<void>((resolve) => {
      const watcher = watch(folder, (_event, name) => {
        if (!name?.endsWith('.partly')) return
        watcher.close()
        resolve()
      })
    })
    doomed.send(14)
    await begun
    doomed.kill('SIGKILL')
    await once(doomed, 'exit')
    if (readdirSync(folder).some((name) => name.includes('.partly'))) halves += 1
    for (const name of backupNames(folder)) expect(isWhole(`${folder}/${name}`)).toBe(true)
    const before = edits
    await line.until(() => edits > before + 5)
  }
  const last = await makeOne(maker, 14)
  expect(readdirSync(folder).filter((name) => name.includes('.partly'))).toEqual([])

  const refused = await restore(dataFolder, last)
  expect([refused.code, refused.said]).toEqual([1, expect.stringContaining('already runs on the data folder')])
  const before = edits
  await line.until(() => edits > before + 5)
  maker.kill('SIGKILL')
  await Promise.all([once(maker, 'exit'), server.kill('SIGKILL'), line.ended])
  const kept = contentOf(last)
  const since = readPlan(client.doc).evening
  const began = performance.now()
  const done = await restore(dataFolder, last)
  expect([done.code, done.said]).toEqual([0, expect.stringContaining('Restored 1 evenings')])
  const again = await startServer({ dataFolder, env: { DEMO: '0' } })
  ends.push(() => again.kill('SIGKILL'))
  const seconds = (performance.now() - began) / 1000
  console.log(
    `DA1: ${edits} edits, ${KILLS} kills of a backup (${halves} left a half one), restored and up in ${seconds.toFixed(1)} s`,
  )

  const back = await lineTo(again)
  await back.until((one) => one.hello !== null && readPlan(one.doc).evening.name === 'Soup')
  expect(back.client.hello?.epoch).not.toBe(epoch)
  expect(readPlan(back.client.doc).evening).toEqual(readPlan(planIn(last)).evening)
  expect(readPlan(back.client.doc).evening).not.toEqual(since)
  back.close()
  await back.ended
  await again.kill()
  const restored = contentOf(file)
  for (const table of ['User', 'Member', 'Guest', 'Invitation', 'Replies', 'PlanClient', 'PlanOp'] as const)
    expect([table, Reflect.get(restored, table)]).toEqual([table, Reflect.get(kept, table)])
  const aside = readdirSync(`${dataFolder}/copies`).filter((name) => name.startsWith('before-restore-'))
  expect(aside).toHaveLength(1)
  expect(readPlan(planIn(`${dataFolder}/copies/${aside[0]}`)).evening.kitchens).toHaveLength(since.kitchens.length)
})

const scene = () => {
  const folder = newDataFolder()
  const database = planDatabase(folder)
  ends.push(() => rmSync(folder, { recursive: true, force: true }))
  database.add('e', ['kim', 'noor'])
  const doc = new Y.Doc()
  const dinner = { name: 'Soup', date: '2099-03-06', zone: 'Europe/London', sitDown: '19:30', covers: 4 }
  const plan = eveningOf(dinner, 'Kim')
  writeEvening(doc, plan, { epoch: 'epoch-1', minClient: 1 })
  const tables = openPlanTables(database.file)
  tables.create('e', Y.encodeStateAsUpdate(doc))
  tables.close()
  // The helper writes the tables without Prisma: a restore asks which migrations a file has.
  const names = readdirSync(`${root}prisma/migrations`).filter((name) => /^\d/.test(name))
  const file = `${folder}/tableward.db`
  const run = (sql: string) => {
    const opened = new Database(file)
    opened.exec(sql)
    opened.close()
  }
  copyDatabase(database.file, file)
  run(`PRAGMA journal_mode = WAL;
    CREATE TABLE _prisma_migrations (migration_name TEXT, finished_at TEXT, rolled_back_at TEXT);
    INSERT INTO _prisma_migrations VALUES ${names.map((name) => `('${name}', 'x', NULL)`).join(', ')};
    UPDATE Evening SET summary = '${printSummary(plan)}'`)
  const places = { databaseFile: file, copies: `${folder}/copies` }
  const restoreFrom = (file: string) => restoreBackup(places, file, { migrations: `${root}prisma/migrations`, stamp: 's' })
  return { folder, file, run, restoreFrom }
}

test('DA2 a backup is made once a day from its time on, late if need be, and the oldest ones go', () => {
  const at = (text: string) => Date.parse(text)
  const due = (made: readonly string[], now: string, time: string | null = '04:00') =>
    isDue(made.map(at), time, at(now), 'Europe/London')
  expect(due([], '2027-01-05T03:59:00Z')).toBe(false)
  expect(due([], '2027-01-05T04:00:00Z')).toBe(true)
  expect(due(['2027-01-04T04:00:00Z'], '2027-01-05T16:00:00Z')).toBe(true)
  expect(due(['2027-01-05T00:30:00Z'], '2027-01-05T16:00:00Z')).toBe(false)
  expect(due([], '2027-01-05T16:00:00Z', null)).toBe(false)
  // In summer the clock of the house is an hour ahead; on the night it goes back an hour comes twice.
  expect(due([], '2027-07-05T03:00:00Z')).toBe(true)
  expect(due(['2027-10-31T00:30:00Z'], '2027-10-31T04:30:00Z')).toBe(false)

  const { folder, file } = scene()
  const backups = `${folder}/backups`
  const names = [1, 2, 3, 4, 5].map((day) => backupName(Date.UTC(2027, 0, day)))
  for (const name of names) keepBackup(file, backups, name, 3)
  writeFileSync(`${backups}/mine.db`, 'not ours')
  expect(backupNames(backups)).toEqual(names.slice(2))
  keepBackup(file, backups, backupName(Date.UTC(2027, 0, 6)), 1)
  expect(readdirSync(backups)).toEqual(['mine.db', backupName(Date.UTC(2027, 0, 6))])
})

test('DA4 what was closed or erased since the backup stays so', () => {
  const { folder, file, run, restoreFrom } = scene()
  const kim = memberIn('e', 'kim')
  run(`
    INSERT INTO Invitation (id, eveningId, label, places, tokenHash) VALUES
      ('kept', 'e', 'Kept', 1, 'hash-kept'), ('turned', 'e', 'Turned', 1, 'hash-old'), ('gone', 'e', 'Household Gone', 1, 'hash-gone');
    INSERT INTO Guest (eveningId, id, place, name, reply, child, portion, drinks, drives, invitationId) VALUES
      ('e', 'g1', 0, 'Stays', 'yes', 0, 1, 'unknown', 0, 'kept'), ('e', 'g2', 1, 'Zanzibara', 'yes', 0, 1, 'unknown', 0, 'gone');
    INSERT INTO GuestWords VALUES ('e', 'g2', 'Quittensaft');
    INSERT INTO User (id, name) VALUES ('u-lou', 'Lou'), ('u-ann', 'Ann');
    INSERT INTO Notice (memberId, kind, by, toldAt) VALUES ('${kim}', 'asked', 'mail', 'x'), ('${kim}', 'changed', 'mail', 'x');
    INSERT INTO PushDevice (id, memberId, endpoint, p256dh, auth, at) VALUES ('d1', '${kim}', 'one', '-', '-', 'x'), ('d2', '${kim}', 'two', '-', '-', 'x');`)
  const backup = keepBackup(file, `${folder}/elsewhere`, backupName(0), 3)
  run(`
    UPDATE User SET sessionVersion = 7, passwordHash = 'new' WHERE id = 'u-kim';
    UPDATE Member SET revokedAt = '2027-01-01' WHERE id = '${memberIn('e', 'noor')}';
    UPDATE Invitation SET tokenHash = 'hash-new' WHERE id = 'turned';
    DELETE FROM Guest WHERE id = 'g2';
    DELETE FROM Notice WHERE kind = 'asked';
    DELETE FROM PushDevice WHERE id = 'd1';
    UPDATE User SET email = 'lou@home.example', passwordHash = 'own', sessionVersion = 2 WHERE id = 'u-lou';
    UPDATE Invitation SET label = '', tokenHash = NULL, erasedAt = '2027-01-01' WHERE id = 'gone';
    INSERT INTO Evening (id, epoch, summary) VALUES ('later', 'x', '{}');`)
  expect(restoreFrom(backup)).toMatchObject({ evenings: 1, before: `${folder}/copies/before-restore-s.db` })
  expect(query(file, 'SELECT id, email, sessionVersion, passwordHash FROM User ORDER BY id')).toMatchObject([
    { id: 'u-ann', email: null },
    { id: 'u-kim', sessionVersion: 7, passwordHash: 'new' },
    // Came by a link, and has an account since: signs in with it.
    { id: 'u-lou', email: 'lou@home.example', sessionVersion: 2, passwordHash: 'own' },
    { id: 'u-noor', sessionVersion: 1, passwordHash: '-' },
  ])
  expect(query(file, 'SELECT id FROM Member WHERE revokedAt IS NULL')).toMatchObject([{ id: memberIn('e', 'kim') }])
  expect(query(file, 'SELECT id, tokenHash, label FROM Invitation ORDER BY id')).toMatchObject([
    { id: 'gone', tokenHash: null, label: '' },
    { id: 'kept', tokenHash: 'hash-kept', label: 'Kept' },
    { id: 'turned', tokenHash: null, label: 'Turned' },
  ])
  expect(query(file, 'SELECT id FROM Guest')).toMatchObject([{ id: 'g1' }])
  expect(query(file, 'SELECT kind FROM Notice')).toMatchObject([{ kind: 'changed' }])
  expect(query(file, 'SELECT id FROM PushDevice')).toMatchObject([{ id: 'd2' }])
  expect(/Zanzibara|Quittensaft/.test(readFileSync(file, 'latin1'))).toBe(false)
  expect(query(file, "SELECT id FROM Evening WHERE epoch = 'epoch-1' OR id = 'later'")).toEqual([])
})

test('DA4 what is erased goes out of every copy, and not a byte of it is left there', () => {
  const { folder, file, run } = scene()
  const copies = `${folder}/copies`
  mkdirSync(copies)
  // A copy of before there were guests.
  copyDatabase(file, `${copies}/old.db`)
  const old = new Database(`${copies}/old.db`)
  old.exec('DROP TABLE GuestWords; DROP TABLE Guest')
  old.close()
  run(`INSERT INTO Guest (eveningId, id, place, name, reply, child, portion, drinks, drives) VALUES
    ('e', 'g1', 0, 'Zanzibara', 'yes', 0, 1, 'unknown', 0);
    INSERT INTO GuestWords VALUES ('e', 'g1', 'Quittensaft')`)
  const backup = keepBackup(file, `${folder}/backups`, backupName(0), 3)
  expect(readFileSync(backup).includes('Quittensaft')).toBe(true)
  // Backups may lie in a folder of somebody's, with files of theirs.
  const mine = `${folder}/backups/mine.db`
  writeFileSync(mine, 'no database of ours'.repeat(1000))
  const erased = [{ table: 'Guest', where: { eveningId: 'e', id: 'g1' } }] as const
  cleanCopies({ copies, backups: `${folder}/backups` }, erased)
  cleanCopies({ copies: `${folder}/nowhere`, backups: `${folder}/nowhere` }, erased)
  expect(readFileSync(mine, 'utf8')).toBe('no database of ours'.repeat(1000))
  for (const name of [`${copies}/old.db`, backup]) {
    expect(isWhole(name)).toBe(true)
    expect([name, /Zanzibara|Quittensaft/.test(readFileSync(name, 'latin1'))]).toEqual([name, false])
  }
  writeFileSync(`${copies}/broken.db`, 'no database'.repeat(1000))
  const said = vi.spyOn(console, 'error').mockReturnValue(undefined)
  expect(() => cleanCopies({ copies, backups: copies }, [{ table: 'User', where: { id: 'u-kim' } }])).toThrow(
    `${copies}/broken.db`,
  )
  expect(said).toHaveBeenCalledOnce()
  said.mockRestore()
  expect(query(`${copies}/old.db`, 'SELECT id FROM User')).toMatchObject([{ id: 'u-noor' }])
})

test('DA3 what is no whole backup, or of a newer version, is not restored; a damaged database is kept beside', () => {
  const { folder, file, run, restoreFrom } = scene()
  const backup = keepBackup(file, `${folder}/backups`, backupName(0), 3)
  const before = contentOf(file)
  writeFileSync(`${folder}/text.db`, 'this is no database at all'.repeat(500))
  const cut = readFileSync(backup)
  cut.fill(7, 4096 * 2, 4096 * 9)
  writeFileSync(`${folder}/cut.db`, cut)
  const other = new Database(`${folder}/other.db`)
  other.exec('CREATE TABLE soup (id TEXT)')
  other.close()
  copyDatabase(backup, `${folder}/newer.db`)
  const newer = new Database(`${folder}/newer.db`)
  newer.exec("INSERT INTO _prisma_migrations VALUES ('29990101000000_later', 'x', NULL)")
  newer.close()
  for (const name of ['text.db', 'cut.db', 'other.db', 'newer.db', 'missing.db'])
    expect(() => restoreFrom(`${folder}/${name}`), name).toThrow(RefuseStart)
  expect(contentOf(file)).toEqual(before)

  run('PRAGMA wal_checkpoint(TRUNCATE)')
  const broken = readFileSync(file)
  broken.fill(7, 4096 * 2, 4096 * 9)
  writeFileSync(file, broken)
  expect(restoreFrom(backup)).toEqual({ evenings: 1, before: `${folder}/copies/before-restore-s.damaged` })
  expect(contentOf(file)).toEqual(before)
  expect(existsSync(`${folder}/copies/before-restore-s.damaged`)).toBe(true)
})

import { mkdirSync, readFileSync, statSync, writeFileSync } from 'node:fs'
import Database from 'libsql'
import { afterEach, expect, test, vi } from 'vitest'
import {
  failToStart,
  freePort,
  type HowToStart,
  newDataFolder,
  type StartedServer,
  startServer,
} from '#tests/support/start-server.ts'

// Each starts several processes.
vi.setConfig({ testTimeout: 120_000 })

const started: StartedServer[] = []
const start = async (how: HowToStart = {}): Promise<StartedServer> => {
  const server = await startServer(how)
  started.push(server)
  return server
}
afterEach(async () => {
  for (const server of started.splice(0)) await server.remove()
})

test('A1 A3 a second process on a data folder is refused and says which has it, one on a taken port too; a killed one leaves it free', async () => {
  const first = await start()
  const second = await failToStart({ dataFolder: first.dataFolder })
  expect(second.code).toBe(1)
  expect(second.output).toContain(`already runs on the data folder ${first.dataFolder}`)
  expect(second.output).toContain(readFileSync(`${first.dataFolder}/lock.pid`, 'utf8').trim())
  expect(second.output).not.toContain('    at ')
  const taken = await failToStart({ dataFolder: newDataFolder(), port: first.port })
  expect(taken.output).toContain(`Another program listens on port ${first.port} already`)
  expect(await first.kill('SIGKILL')).toBeNull()
  const third = await start({ dataFolder: first.dataFolder })
  expect(third.demo).toEqual(first.demo)
})

test('A2 secret and demo password are made once, for the eyes of this user alone; a stop is orderly: all is in the database file, the folder and the port are let go of', async () => {
  const first = await start()
  const [secret, password] = ['secret', 'demo-password'].map((name) => `${first.dataFolder}/${name}`) as [string, string]
  const before = [secret, password].map((file) => readFileSync(file, 'utf8'))
  for (const file of [secret, password]) expect(statSync(file).mode & 0o777).toBe(0o600)
  expect(before[0]?.trim().length).toBeGreaterThanOrEqual(43)
  expect(first.demo).toHaveLength(2)
  expect(await first.kill('SIGTERM')).toBe(0)
  const log = statSync(`${first.dataFolder}/tableward.db-wal`, { throwIfNoEntry: false })
  expect(log?.size ?? 0).toBe(0)
  const again = await start({ dataFolder: first.dataFolder, port: first.port })
  expect([secret, password].map((file) => readFileSync(file, 'utf8'))).toEqual(before)
  expect(await again.kill('SIGINT')).toBe(0)
})

test('A3 what cannot be a data folder is told with what to do, and nothing is made', async () => {
  const parent = newDataFolder()
  writeFileSync(`${parent}/file`, '')
  for (const [dataFolder, says] of [
    [`${parent}/file`, 'not a folder'],
    [`${parent}/file/deeper`, 'part of its path is a file'],
    [`${parent}/missing/deeper`, 'make that first'],
    ['/proc/tableward', 'make that first'],
  ] as const) {
    const refused = await failToStart({ dataFolder })
    expect(refused.code).toBe(1)
    expect(refused.output).toContain(dataFolder)
    expect(refused.output).toContain(says)
    expect(refused.output).not.toContain('    at ')
  }
})

test('A3 a damaged secret or database is told, and not replaced', async () => {
  const dataFolder = newDataFolder()
  writeFileSync(`${dataFolder}/secret`, 'short\n')
  const secret = await failToStart({ dataFolder })
  expect(secret.output).toContain('is not a secret of Tableward')
  expect(readFileSync(`${dataFolder}/secret`, 'utf8')).toBe('short\n')

  const other = newDataFolder()
  writeFileSync(`${other}/tableward.db`, 'this is no database, and long enough to be read as one'.repeat(100))
  const database = await failToStart({ dataFolder: other })
  expect(database.code).toBe(1)
  expect(database.output).toContain('its database file is not a database')
  expect(readFileSync(`${other}/tableward.db`, 'utf8')).toContain('this is no database')
})

test('A3 settings that cannot be understood are told one a line', async () => {
  const dataFolder = newDataFolder()
  const bad = await failToStart({ dataFolder, env: { PORT: '70000', NEXTAUTH_URL: 'example.org/x', TRUST_PROXY: 'yes' } })
  expect(bad.output.trim().split('\n').slice(1)).toEqual([
    '  PORT must be a whole number from 0 to 65535, not "70000"',
    '  NEXTAUTH_URL must be a web address without a path, such as https://dinner.example.org, not "example.org/x"',
    '  TRUST_PROXY must be 0 or 1, not "yes"',
  ])
})

test('A4 a database of a newer version is not touched', async () => {
  const server = await start({ env: { DEMO: '0' } })
  await server.kill()
  const file = `${server.dataFolder}/tableward.db`
  const db = new Database(file)
  db.exec(
    "INSERT INTO _prisma_migrations (id, checksum, migration_name, finished_at) VALUES ('x', 'x', '29990101000000_later', 1)",
  )
  db.close()
  const before = readFileSync(file)
  const refused = await failToStart({ dataFolder: server.dataFolder, port: await freePort() })
  expect(refused.code).toBe(1)
  expect(refused.output).toContain('made by a newer Tableward')
  expect(readFileSync(file).equals(before)).toBe(true)
})

test('A2 a start that was killed while the demo was being made is made good by the next', async () => {
  const dataFolder = newDataFolder()
  mkdirSync(dataFolder, { recursive: true })
  const first = await start({ dataFolder, env: { DEMO: '0' } })
  expect(first.demo).toEqual([])
  await first.kill()
  const db = new Database(`${dataFolder}/tableward.db`)
  db.exec("INSERT INTO User (id, email, name, passwordHash, demo) VALUES ('half', 'salma@demo.example', 'Salma', 'x', true)")
  db.exec("INSERT INTO Evening (id, epoch, summary) VALUES ('half', 'x', '{}')")
  db.close()
  const second = await start({ dataFolder })
  expect(second.demo.map(({ email }) => email)).toEqual(['salma@demo.example', 'piet@demo.example'])
  await second.kill()
  const after = new Database(`${dataFolder}/tableward.db`)
  expect(after.prepare('SELECT count(*) AS n FROM Evening').all()).toEqual([{ n: 1 }])
  expect(after.prepare('SELECT role, cook FROM Member ORDER BY role').all()).toEqual([
    { role: 'cook', cook: 'piet' },
    { role: 'host', cook: 'salma' },
  ])
  after.close()
})

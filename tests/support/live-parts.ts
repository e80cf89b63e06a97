import { randomUUID } from 'node:crypto'
import { rmSync } from 'node:fs'
import { openLimits } from '#server/auth/limits.ts'
import { hashPassword } from '#server/auth/passwords.ts'
import { atOnce, openBackups } from '#server/backup/open-backups.ts'
import { openDataFolder } from '#server/data-folder.ts'
import { migrateDatabase } from '#server/db/migrate.ts'
import { openDatabase } from '#server/db/open.ts'
import { followPlans } from '#server/evenings/summary.ts'
import { followClosings } from '#server/learning/remember.ts'
import { type Live, live, type Nights, type Planner, setLive } from '#server/live.ts'
import { openNights } from '#server/night/open-nights.ts'
import { openPlanner } from '#server/planner/open-planner.ts'
import { keysOf } from '#server/push/keys.ts'
import { root } from '#server/root.ts'
import { openRooms } from '#server/sync/open-rooms.ts'
import { newDataFolder } from './start-server.ts'

/** The server's parts in this process, on a data folder of its own: for asking its functions directly. */
export const openLiveParts = async (): Promise<Live & { readonly close: () => Promise<void> }> => {
  const path = newDataFolder()
  const folder = openDataFolder(path, null)
  process.env.NEXTAUTH_SECRET = folder.secret
  const { databaseFile } = folder
  await migrateDatabase({
    databaseFile,
    copies: folder.copies,
    schemaFile: `${root}prisma/schema.prisma`,
    migrations: `${root}prisma/migrations`,
    stamp: 'first',
  })
  const db = openDatabase(databaseFile)
  const rooms = await openRooms({
    databaseFile,
    log: console.error,
    greet: (id, evening) => planner.current(id, evening),
    fired: (id) => nights.fired(id),
  })
  const planner: Planner = await openPlanner({ db, rooms })
  const nights: Nights = await openNights({ db, rooms, planner })
  followPlans(db, rooms, console.error)
  followClosings(db, rooms, console.error)
  const backups = openBackups({
    dataFolder: path,
    databaseFile,
    copies: folder.copies,
    settings: { folder: `${path}/backups`, at: null, keep: 14 },
    carryOut: atOnce,
  })
  const parts: Live = {
    db,
    rooms,
    planner,
    nights,
    limits: openLimits(),
    push: { publicKey: keysOf(path).publicKey, tell: async () => undefined },
    address: 'http://localhost',
    root,
    backups,
    turns: new Map(),
    mail: null,
  }
  setLive(parts)
  return {
    ...parts,
    close: async () => {
      await nights.close()
      await rooms.close()
      await planner.close()
      await db.$disconnect()
      folder.release()
      rmSync(path, { recursive: true, force: true })
    },
  }
}

const sharedHash = hashPassword('a password for tests')

/** Somebody with an account; the password is "a password for tests". */
export const somebody = async (name: string): Promise<{ readonly id: string; readonly email: string; readonly name: string }> => {
  const id = randomUUID()
  const user = { id, name, email: `${name.toLowerCase()}-${id.slice(0, 8)}@test.example` }
  await live().db.user.create({ data: { ...user, passwordHash: await sharedHash } })
  return user
}

import http from 'node:http'
import { isZone } from '#lib/domain/zone.ts'
import { openLimits } from './auth/limits.ts'
import { openBackups } from './backup/open-backups.ts'
import { type DataFolder, openDataFolder } from './data-folder.ts'
import { migrateDatabase } from './db/migrate.ts'
import { openDatabase } from './db/open.ts'
import { type DemoAccount, demoAccounts, seedDemo } from './db/seed.ts'
import { parseEnv, type Settings } from './env.ts'
import { followPlans } from './evenings/summary.ts'
import { eraseOverdue } from './guests/erase-overdue.ts'
import { followClosings } from './learning/remember.ts'
import { live, type Nights, type Planner, setLive } from './live.ts'
import { openMail } from './mail.ts'
import { openNights } from './night/open-nights.ts'
import { tellDue } from './notify/tell-due.ts'
import { openPlanner } from './planner/open-planner.ts'
import { keysOf } from './push/keys.ts'
import { openPush } from './push/open-push.ts'
import { postOver } from './push/post.ts'
import { asRefusal, RefuseStart } from './refuse-start.ts'
import { root } from './root.ts'
import { systemClock } from './sync/clock.ts'
import { openRooms } from './sync/open-rooms.ts'
import { openUpkeep } from './upkeep.ts'
import { addresses } from './web/addresses.ts'
import { setForwarded } from './web/forwarded.ts'
import { listen } from './web/listen.ts'
import { openPages } from './web/pages.ts'
import { requestHandler } from './web/request-handler.ts'
import { openSyncGate } from './web/sync-gate.ts'

type OpenPages = typeof openPages

/** The whole server, in the order in which its parts need each other. Gives what stops it. */
export const startServer = async (
  variables: Readonly<Record<string, string | undefined>>,
  open: OpenPages = openPages,
): Promise<() => Promise<void>> => {
  const parsed = parseEnv(variables)
  if (!parsed.ok) throw new RefuseStart(`Tableward does not start:\n${parsed.error.map((why) => `  ${why}`).join('\n')}`)
  const settings = parsed.value
  const folder = openDataFolder(settings.dataFolder, settings.secret)
  try {
    return await startOn(settings, folder, open)
  } catch (cause) {
    throw asRefusal(folder.path, cause)
  }
}

/** Whom a push service may write to when the site has no public address: nobody (RFC 6761, 6.4). */
const NOBODY = 'mailto:nobody@tableward.invalid'

const startOn = async (settings: Settings, folder: DataFolder, open: OpenPages): Promise<() => Promise<void>> => {
  // Next's half of the process reads these; where the site is found, each request says by itself.
  process.env.NEXTAUTH_SECRET = folder.secret
  process.env.AUTH_TRUST_HOST = '1'
  delete process.env.NEXTAUTH_URL

  const { applied, copy } = await migrateDatabase({
    databaseFile: folder.databaseFile,
    copies: folder.copies,
    schemaFile: `${root}prisma/schema.prisma`,
    migrations: `${root}prisma/migrations`,
    stamp: `before-migration-${new Date().toISOString().replace(/[:.]/g, '-')}`,
  })
  if (copy) console.log(`The database was brought up to date (${applied.join(', ')}); a copy of it as it was: ${copy}`)

  const db = openDatabase(folder.databaseFile)
  const rooms = await openRooms({
    databaseFile: folder.databaseFile,
    log: (what) => console.error(what),
    greet: (eveningId, evening) => planner.current(eveningId, evening),
    fired: (eveningId) => nights.fired(eveningId),
  })
  const planner: Planner = await openPlanner({ db, rooms })
  const nights: Nights = await openNights({ db, rooms, planner })
  followPlans(db, rooms, (why) => console.error('a summary was not stored', why))
  followClosings(db, rooms, (why) => console.error('what a night said was not kept', why))

  const push = openPush({
    db,
    keys: keysOf(folder.path),
    contact: settings.publicAddress?.startsWith('https:') ? settings.publicAddress : NOBODY,
    post: postOver(),
    log: (...what) => console.error(...what),
  })
  nights.onFire((eveningId, fired) => push.call(eveningId, fired))
  nights.onAlarm((eveningId, alarm) => push.call(eveningId, alarm))

  const backups = openBackups({
    dataFolder: folder.path,
    databaseFile: folder.databaseFile,
    copies: folder.copies,
    settings: settings.backup,
  })

  const server = http.createServer()
  const port = await listen(server, settings)
  const found = addresses(settings.host, port, settings.publicAddress)
  setLive({
    db,
    rooms,
    planner,
    nights,
    limits: openLimits(),
    push,
    address: found[0] ?? '',
    root,
    backups,
    turns: new Map(),
    mail: openMail(settings),
  })

  const opening = open(settings, port)
  const gate = openSyncGate(rooms, settings, (why) => console.error('a socket was not let in', why))
  server.on(
    'request',
    requestHandler(async (request, response) => {
      const pages = await opening
      await pages.ready
      await pages.handle(request, response)
    }, settings),
  )
  server.on('upgrade', (request, socket, head) => {
    socket.on('error', () => socket.destroy())
    setForwarded(request, settings)
    if (request.url?.startsWith('/sync/')) gate.handleUpgrade(request, socket, head)
    else
      opening.then(
        // Whatever nobody takes would stay open.
        (pages) => pages.upgrade(request, socket, head) || socket.destroy(),
        () => socket.destroy(),
      )
  })
  if (settings.demo) await seedDemo(db, folder)
  const zone = Intl.DateTimeFormat().resolvedOptions().timeZone
  const upkeep = openUpkeep({
    clock: systemClock,
    chores: [
      { name: 'the backup', run: (nowMs) => backups.daily(nowMs, isZone(zone) ? zone : 'UTC') },
      { name: 'erasing what was kept long enough', run: eraseOverdue, atStart: true },
      { name: 'telling what is new', run: (nowMs) => tellDue(live(), nowMs) },
    ],
    log: (what, why) => console.error(what, why),
  })
  const pages = await opening
  await pages.ready
  announce(found, await demoAccounts(db, folder))

  return async () => {
    const closed = new Promise<void>((resolve) => server.close(() => resolve()))
    server.closeIdleConnections()
    await upkeep.close()
    await nights.close()
    await rooms.close()
    await gate.close()
    await planner.close()
    await push.idle()
    server.closeAllConnections()
    await closed
    await pages.close()
    // Whoever copies the database file of a stopped server has everything.
    await db.$queryRaw`PRAGMA wal_checkpoint(TRUNCATE)`
    await db.$disconnect()
    folder.release()
  }
}

/** The first line is what tests/support/start-server.ts waits for. */
const announce = ([first = '', ...others]: readonly string[], demo: readonly DemoAccount[]): void => {
  const lines = [`Tableward is at ${first}`]
  if (others.length > 0) lines.push(`From other devices: ${others.join(' or ')}`)
  for (const { email, password } of demo) lines.push(`Sign in as ${email} with ${password}`)
  console.log(lines.join('\n'))
}

import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { createServer } from 'node:http'
import type { AddressInfo } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { WebSocketServer } from 'ws'
import type { Evening } from '#lib/domain/evening.ts'
import type { OrderMessage } from '#lib/plan/wire.ts'
import { migrateDatabase } from '#server/db/migrate.ts'
import { openDatabase } from '#server/db/open.ts'
import type { Planner, Rooms, Seat } from '#server/live.ts'
import { openPlanner } from '#server/planner/open-planner.ts'
import { openRooms } from '#server/sync/open-rooms.ts'

const root = (name: string) => new URL(`../../../${name}`, import.meta.url).pathname

/** A migrated database without a row, made once: migrating takes longer than most tests. */
let empty: Promise<Uint8Array> | null = null
const migrated = (): Promise<Uint8Array> => {
  const make = async () => {
    const folder = mkdtempSync(join(tmpdir(), 'tableward-'))
    const databaseFile = join(folder, 'empty.db')
    await migrateDatabase({
      databaseFile,
      copies: join(folder, 'copies'),
      schemaFile: root('prisma/schema.prisma'),
      migrations: root('prisma/migrations'),
      stamp: 'test',
    })
    const bytes = readFileSync(databaseFile)
    rmSync(folder, { recursive: true })
    return bytes
  }
  empty ??= make()
  return empty
}

/** The real rooms behind a real port. The first part of the path says who comes: /noor/sync/ID. */
export interface AServer {
  port(): number
  rooms(): Rooms
  /** A cook who may come in; the host when it says so. */
  seat(name: string, role?: 'host' | 'cook', cook?: string | null): Promise<Seat>
  /** Ends the rooms as a stopping server does, and starts them again on the same port. */
  restart(): Promise<void>
  stop(): Promise<void>
  start(): Promise<void>
  /** As after a backup was put back: another document under the same name. */
  restore(evening: Evening, epoch: string): Promise<void>
  close(): Promise<void>
}

export const aServer = async (evening: Evening, { withPlanner = false } = {}): Promise<AServer> => {
  const folder = mkdtempSync(join(tmpdir(), 'tableward-'))
  const databaseFile = join(folder, 'test.db')
  writeFileSync(databaseFile, await migrated())
  const db = openDatabase(databaseFile)
  const seats = new Map<string, Seat>()
  let port = 0
  let end: () => Promise<void>

  const start = async (): Promise<Rooms> => {
    let planner: Planner | null = null
    const greet = async (id: string, plan: Evening): Promise<OrderMessage> =>
      planner ? planner.current(id, plan) : { kind: 'planning', hash: 'nobody plans here' }
    const opened = await openRooms({ databaseFile, log: () => undefined, greet })
    if (withPlanner) planner = await openPlanner({ db, rooms: opened })
    const sockets = new WebSocketServer({ noServer: true, maxPayload: 256 * 1024 })
    const server = createServer()
    server.on('upgrade', (request, socket, head) => {
      const seat = seats.get(request.url?.split('/')[1] ?? '')
      if (!seat) return void socket.destroy()
      sockets.handleUpgrade(request, socket, head, (ws) => opened.connect(ws, seat))
    })
    await new Promise<void>((resolve) => server.listen(port, '127.0.0.1', resolve))
    port = (server.address() as AddressInfo).port
    end = async () => {
      server.close()
      await opened.close()
      await planner?.close()
      for (const ws of sockets.clients) ws.terminate()
      await new Promise((resolve) => sockets.close(resolve))
    }
    return opened
  }
  const stop = () => end()

  await db.evening.create({ data: { id: evening.id, epoch: 'epoch-1', summary: '{}' } })
  let rooms = await start()
  await rooms.create(evening.id, evening)

  return {
    port: () => port,
    rooms: () => rooms,
    async seat(name, role = 'cook', cook = null) {
      await db.user.create({ data: { id: name, email: `${name}@example.org`, name, passwordHash: '-' } })
      await db.member.create({ data: { id: `m-${name}`, eveningId: evening.id, userId: name, role, cook } })
      const seat: Seat = { eveningId: evening.id, memberId: `m-${name}`, userId: name, name, role, cook }
      seats.set(name, seat)
      return seat
    },
    async restart() {
      await stop()
      rooms = await start()
    },
    stop,
    async start() {
      rooms = await start()
    },
    async restore(plan, epoch) {
      await stop()
      await db.planUpdate.deleteMany({ where: { eveningId: plan.id } })
      await db.planSnapshot.deleteMany({ where: { eveningId: plan.id } })
      await db.evening.update({ where: { id: plan.id }, data: { epoch } })
      rooms = await start()
      await rooms.create(plan.id, plan)
    },
    async close() {
      await stop()
      await db.$disconnect()
      rmSync(folder, { recursive: true, force: true })
    },
  }
}

// The server's side of the planner bench, in a process of its own: the real rooms, sockets, log and planner. Talks with its
// parent in messages.
import { openDatabase } from '#server/db/open.ts'
import { followPlans } from '#server/evenings/summary.ts'
import type { Planner } from '#server/live.ts'
import { openPlanner } from '#server/planner/open-planner.ts'
import { planDatabase } from '#tests/support/plan-database.ts'
import { startRoomServer } from '#tests/support/start-room-server.ts'
import { hostOf, openEvenings } from './planner-evenings.ts'

const database = planDatabase()
const opened = openEvenings()
for (const { evening } of opened) database.add(evening.id, [hostOf(evening)])
const db = openDatabase(database.file)
const server = await startRoomServer({
  databaseFile: database.file,
  log: (what) => console.error(what),
  greet: (id, evening) => planner.current(id, evening),
})
const planner: Planner = await openPlanner({ db, rooms: server.rooms })
followPlans(db, server.rooms, console.error)
for (const { evening } of opened) await server.rooms.create(evening.id, evening)

process.on('message', async (message) => {
  if (message === 'cpu') process.send?.({ cpu: process.cpuUsage() })
  if (message !== 'end') return
  await server.close()
  await planner.close()
  await db.$disconnect()
  database.remove()
  process.exit(0)
})
process.on('disconnect', () => process.exit(1))
process.send?.({ port: server.port })

// A process of its own with the real rooms on a real port, for tests that kill it.
import { startRoomServer } from './start-room-server.ts'

const [databaseFile] = process.argv.slice(2)
if (!databaseFile || !process.send) throw new Error('room-process.ts is forked with the database as its argument')
const server = await startRoomServer({ databaseFile, log: (what) => console.error(what) })
process.send({ port: server.port })

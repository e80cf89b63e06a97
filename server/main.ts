import { runServer } from './run-server.ts'
import { startServer } from './start-server.ts'

await runServer(() => startServer(process.env))

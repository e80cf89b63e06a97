import { runServer } from '#server/run-server.ts'
import { startServer } from '#server/start-server.ts'

// The real server with everything but the screens, so that it starts in a second and needs no build.
await runServer(() =>
  startServer(process.env, async () => ({
    ready: Promise.resolve(),
    handle: async (_request, response) => {
      response.writeHead(404).end()
    },
    upgrade: () => false,
    close: async () => undefined,
  })),
)

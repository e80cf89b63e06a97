// The server's side of the sync bench, in a process of its own so that its work can be told from the clients'.
// argv: relay | room | planner, then the evening's file. Talks with its parent in messages.
import { readFileSync } from 'node:fs'
import type { AddressInfo } from 'node:net'
import { type WebSocket, WebSocketServer } from 'ws'
import { parseEvening } from '#lib/domain/parse.ts'
import { aServer } from '#tests/unit/sync-client/a-server.ts'
import { COOKS } from './sync-load.ts'

/** Sends every frame on to all the others, and does nothing else. */
const openRelay = async (): Promise<number> => {
  const server = new WebSocketServer({ port: 0, host: '127.0.0.1' })
  const sockets = new Set<WebSocket>()
  server.on('connection', (socket) => {
    sockets.add(socket)
    socket.on('error', () => socket.terminate())
    socket.on('close', () => sockets.delete(socket))
    socket.on('message', (frame) => {
      for (const other of sockets) if (other !== socket) other.send(frame)
    })
  })
  await new Promise((resolve) => server.once('listening', resolve))
  return (server.address() as AddressInfo).port
}

const openRoom = async (file: string, withPlanner: boolean): Promise<number> => {
  const evening = parseEvening(JSON.parse(readFileSync(file, 'utf8')))
  if (!evening.ok) throw new Error(`${file} is not an evening`)
  const server = await aServer(evening.value, { withPlanner })
  for (let cook = 0; cook < COOKS; cook += 1) await server.seat(`cook-${cook}`, 'host')
  closing = server.close
  return server.port()
}

let closing: () => Promise<void> = async () => undefined
const [kind, file = ''] = process.argv.slice(2)
process.on('message', async (message) => {
  if (message === 'cpu') process.send?.({ cpu: process.cpuUsage() })
  if (message !== 'end') return
  await closing()
  process.exit(0)
})
process.on('disconnect', () => process.exit(1))
const port = kind === 'relay' ? await openRelay() : await openRoom(file, kind === 'planner')
process.send?.({ port })

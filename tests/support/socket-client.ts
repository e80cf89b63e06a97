import { WebSocket } from 'ws'
import { type SyncClient, syncClient } from './sync-client.ts'

/** A device on a real socket. */
export interface SocketClient {
  readonly client: SyncClient
  readonly socket: WebSocket
  /** The code with which the line ended. */
  readonly ended: Promise<number>
  readonly endedWith: number | null
  /** Resolves as soon as it holds, looked at whenever a frame comes; rejects when the line ends first. */
  until(holds: (client: SyncClient) => boolean): Promise<void>
  close(): void
}

/** Opens a line for a device (a new one, or one that has been here) at the address. */
export const socketClient = (
  address: string,
  client: SyncClient = syncClient(),
  headers: Readonly<Record<string, string>> = {},
): SocketClient => {
  const socket = new WebSocket(address, { perMessageDeflate: false, headers: { ...headers } })
  const waiting = new Set<{ holds: (client: SyncClient) => boolean; resolve: () => void; reject: (cause: Error) => void }>()
  let endedWith: number | null = null
  const look = () => {
    for (const one of waiting) {
      if (!one.holds(client)) continue
      waiting.delete(one)
      one.resolve()
    }
  }
  socket.on('open', () => {
    client.connect({ send: (frame) => socket.readyState === WebSocket.OPEN && socket.send(frame) })
  })
  socket.on('message', (data: Buffer) => {
    client.hear(new Uint8Array(data))
    look()
  })
  socket.on('error', () => socket.terminate())
  const ended = new Promise<number>((resolve) => {
    socket.on('close', (code) => {
      endedWith = code
      client.disconnect()
      for (const one of waiting) one.reject(new Error(`the line ended with ${code}`))
      waiting.clear()
      resolve(code)
    })
  })
  return {
    client,
    socket,
    ended,
    get endedWith() {
      return endedWith
    },
    until: (holds) =>
      new Promise((resolve, reject) => {
        if (holds(client)) resolve()
        else if (endedWith !== null) reject(new Error(`the line ended with ${endedWith}`))
        else waiting.add({ holds, resolve, reject })
      }),
    close: () => socket.close(),
  }
}

/** Everything that was sent is stored. */
export const isSaved = (client: SyncClient): boolean => client.hello !== null && client.sent > 0 && client.acked === client.sent
